using System.Collections.Immutable;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.EndToEnd.Screens;
using Microsoft.Playwright;

namespace JobBoard.EndToEnd.Crew;

/// <summary>A technician's hands on their device: the bay, which stays open, and a second tab for pages of single tasks.</summary>
internal sealed class Hands(Device device, IPage bay, IPage other, IReadOnlyCollection<Instrument> instruments)
{
    /// <summary>The device.</summary>
    public Device Device => device;

    /// <summary>Who works on it now.</summary>
    public string Person => device.Person;

    /// <summary>The bay, which stays open.</summary>
    public Screen Bay { get; } = new(bay, "bay");

    /// <summary>The second tab.</summary>
    public IPage Other => other;

    /// <summary>An element of the bay.</summary>
    public ILocator InBay(string selector) => bay.Locator(selector);

    /// <summary>Another person takes the device.</summary>
    public async Task ChangeTo(string person)
    {
        if (Person != person) await device.SignIn(bay, person);
    }

    /// <summary>Opens the form that starts a task and fills in its crew: on the bay where the task is offered, else on the task's own page.</summary>
    public async Task<ILocator> ToStart(string car, string task, ImmutableArray<string> crew)
    {
        var key = $"next-{car}-{task}";
        if (await bay.Locator("#" + key).CountAsync() > 0)
        {
            await device.Unfold(bay.Locator($"#{key}-ask"));
            await FillCrew(bay, $"#{key}-crew-", crew);
            return bay.Locator("#form-" + key);
        }

        return await ToStartOnItsPage(car, task, crew);
    }

    /// <summary>Opens the form that starts a task on the task's own page, where it is shown whether it can start or not.</summary>
    public async Task<ILocator> ToStartOnItsPage(string car, string task, ImmutableArray<string> crew)
    {
        await other.GotoAsync($"/cars/{car}/task/{task}");
        await device.Unfold(other.Locator("#ask-start"));
        await FillCrew(other, "#start-crew-", crew);
        return other.Locator("#form-start");
    }

    /// <summary>Types one reading of the task in hand and logs it.</summary>
    public async Task<Answer> Read(string car, string task, ReadingNeed need, string text, string? seenBy)
    {
        var key = $"reading-{car}-{task}-{need.Id}";
        await device.Unfold(bay.Locator("#" + key));
        await bay.Locator($"#{key}-value").FillAsync(text);
        var with = bay.Locator($"#{key}-instrument");
        if (await with.CountAsync() > 0) await with.SelectOptionAsync(Numbers.Tool(need, instruments)?.Id ?? "");
        if (need.SeenByTwo) await bay.Locator($"#{key}-seen-by").SelectOptionAsync(seenBy!);
        return await device.Send(bay.Locator($"#form-{key}"));
    }

    /// <summary>Signs the task in hand off.</summary>
    public async Task<Answer> SignOff(string car, string task)
    {
        await device.Unfold(bay.Locator($"#end-{car}-{task}-sign"));
        return await device.Send(bay.Locator($"#form-end-{car}-{task}-sign"));
    }

    /// <summary>Opens the form that leaves the task in hand part-done, and says how it was left where that is asked.</summary>
    public async Task<ILocator> ToLeave(string car, string task, string? how)
    {
        var form = bay.Locator($"#form-end-{car}-{task}-leave");
        await device.Unfold(bay.Locator($"#end-{car}-{task}-leave"));
        if (how is not null) await device.Choose(form.Locator($"input[name=how][value='{how}']"));
        return form;
    }

    /// <summary>Gives a second check on the bay.</summary>
    public async Task<Answer> Check(string car, string task)
    {
        var form = bay.Locator($"#form-check-{car}-{task}");
        await device.Unfold(bay.Locator($"#check-{car}-{task}-ask"));
        await device.Choose(form.Locator("input[name=passed][value=true]"));
        return await device.Send(form);
    }

    private static async Task FillCrew(IPage page, string start, ImmutableArray<string> crew)
    {
        for (var i = 0; i < crew.Length; i++)
        {
            var who = page.Locator(start + i);
            if (await who.CountAsync() > 0) await who.SelectOptionAsync(crew[i]);
        }
    }
}
