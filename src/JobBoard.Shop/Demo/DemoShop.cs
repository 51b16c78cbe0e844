using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Commands;
using JobBoard.Shop.Running;
using JobBoard.Shop.Templates;

namespace JobBoard.Shop.Demo;

/// <summary>The demo shop as seed files of commands (<see cref="DemoFile"/>), sent file by file in the order of their names.</summary>
/// <param name="folder">The seed files.</param>
/// <param name="templates">Plans that <c>take-in-car</c> may name.</param>
public sealed class DemoShop(string folder, TemplateShelf templates) : IDemo
{
    /// <inheritdoc/>
    public async Task<ImmutableSortedDictionary<string, string>> Load(ShopRunner runner, ShopClock clock)
    {
        var files = Files();
        var times = Times(files, clock);
        foreach (var command in files.SelectMany(f => f.Commands)) await Send(runner, clock, times, command).ConfigureAwait(false);
        clock.Set(times.Now);
        return files.SelectMany(f => f.Pins).ToImmutableSortedDictionary(p => p.Key, p => p.Value, StringComparer.Ordinal);
    }

    private List<DemoFile> Files()
    {
        if (!Directory.Exists(folder)) throw new DemoException($"The seed files are not there: {folder}.");
        return [.. Directory.GetFiles(folder, "*.json").Order(StringComparer.Ordinal).Select(DemoFile.Read)];
    }

    private static DemoTimes Times(List<DemoFile> files, ShopClock clock)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById(files.Select(f => f.Zone).FirstOrDefault(z => z is not null) ?? "Etc/UTC");
        var real = new DemoTimes(clock.GetUtcNow(), zone);
        return files.Select(f => f.Now).FirstOrDefault(n => n is not null) is { } now ? new DemoTimes(real.Read(now), zone) : real;
    }

    private async Task Send(ShopRunner runner, ShopClock clock, DemoTimes times, DemoCommand command)
    {
        var envelope = Envelope(times, command);
        clock.Hold(times.Read(command.At));
        switch (await runner.Send(envelope).ConfigureAwait(false))
        {
            case Outcome.Accepted: return;
            case Outcome.Refused refused:
                var reasons = string.Join("; ", refused.Reasons.Select(r => $"{r.Words} [{r.Rule}]"));
                throw new DemoException($"{command.Place} ({command.Kind}) was refused: {reasons}");
            case var other: throw new DemoException($"{command.Place} ({command.Kind}): {other}");
        }
    }

    private Envelope Envelope(DemoTimes times, DemoCommand command)
    {
        try
        {
            return new(command.Id, command.Actor, times.Read(command.Occurred ?? command.At), null, CommandJson.Read(command.Kind, WithPlan(command.Members)));
        }
        catch (Exception e) when (e is CommandFormatException or FormatException)
        {
            throw new DemoException($"{command.Place} ({command.Kind}): {e.Message}", e);
        }
    }

    private JsonObject WithPlan(JsonObject members)
    {
        if (members["plan"] is not JsonValue name) return members;
        var id = name.GetValue<string>();
        var plan = templates.Find(id) ?? throw new CommandFormatException($"There is no template '{id}'.");
        members["plan"] = JsonSerializer.SerializeToNode(plan, PlanJson.Options);
        return members;
    }
}
