using System.Globalization;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Work;
using JobBoard.EndToEnd.Servers;

namespace JobBoard.EndToEnd.Crew;

/// <summary>Does what a story leaves out, by the same commands as people, one task after another.</summary>
internal sealed class Script(FormDoor door, ShopState shop, CrewBook crews, string car)
{
    private static readonly string[] Checkers = ["inga", "sol", "oskar", "marit"];

    /// <summary>How many commands it has sent.</summary>
    public int Sent { get; private set; }

    /// <summary>Starts a task, takes its readings, signs it off, and has it checked.</summary>
    public async Task Do(PlanTask task)
    {
        var crew = crews.For(task, []);
        var lead = crew[0];
        var duties = Crewing.Slots(task).Zip(crew).SelectMany((d, i) => new[] { At(i, "person", d.Second), At(i, "duty", d.First.Duty) });
        await Send(lead, "start-task", [("car", car), ("task", task.Id), .. duties]);
        foreach (var need in task.Readings) await Read(lead, task, need);
        await Send(lead, "sign-off-task", [("car", car), ("task", task.Id)]);
        foreach (var hazard in task.Hazards.Where(h => shop.Hazards[h.Hazard].Ends == Domain.Hazards.HazardEnd.WhenMadeSafe))
            await Send(lead, "make-hazard-safe", [("car", car), ("hazard", $"{task.Id}/{hazard.Hazard}"), ("how", "Pressure let down, key out")]);
        if (!task.SecondCheck) return;
        var checker = Checkers.First(p => !crew.Contains(p) && crews.Is(p, task.SecondCheckQualification));
        await Send(checker, "second-check", [("car", car), ("task", task.Id), ("passed", "true"), ("why", "")]);
    }

    /// <summary>Releases a hold point.</summary>
    public Task Release(HoldPoint hold) =>
        Send("oskar", "release-hold", [("car", car), ("hold", hold.Id), ("why", "Seen: " + hold.Asks), ("evidence", "looked at with the crew")]);

    private async Task Read(string by, PlanTask task, ReadingNeed need)
    {
        var fields = new List<(string, string)> { ("car", car), ("task", task.Id), ("reading", need.Id), ("text", Numbers.InLimits(need)), ("unit", need.Unit) };
        if (Numbers.Tool(need, shop.Instruments.Values) is { } tool) fields.Add(("instrument", tool.Id));
        if (need.SeenByTwo) fields.Add(("seenBy", by == "jarle" ? "petra" : "jarle"));
        await Send(by, "log-reading", [.. fields]);
    }

    private async Task Send(string person, string kind, (string Name, string Value)[] fields)
    {
        await door.Do(person, kind, fields);
        Sent++;
    }

    private static (string, string) At(int index, string member, string value) => (string.Create(CultureInfo.InvariantCulture, $"crew[{index}].{member}"), value);
}
