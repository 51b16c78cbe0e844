using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Places;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Engineering.Measures;

namespace JobBoard.Shop.Demo;

/// <summary>What the crew reads, and with what: numbers in limits, instruments that the plan asks for and that are in date.</summary>
internal sealed class CrewReadings(CrewSession session)
{
    /// <summary>Readings of a task that are not taken, or were before something made them lapse.</summary>
    public static IEnumerable<ReadingNeed> Missing(CarBoard car, PlanTask task) =>
        task.Readings.Where(r => !car.Readings.GetValueOrDefault(task.Id + "/" + r.Id, []).Any(had => had.LapsedBy is null && (had.Verdict != Verdict.Out || had.Released is not null)));

    /// <summary>Logs one reading: what was ordered, the whole row of it, or a number in limits.</summary>
    public async Task Log(string car, PlanTask task, ReadingNeed need, string by)
    {
        foreach (var text in Texts(car, task, need))
        {
            var instrument = Instrument(need, text);
            await session.Do(by, new LogReading(need.Id, text, need.Unit) { Car = car, Task = task.Id, Instrument = instrument?.Id, SeenBy = SeenBy(car, task, need, by) })
                .ConfigureAwait(false);
        }
    }

    private string? SeenBy(string car, PlanTask task, ReadingNeed need, string by)
    {
        if (!need.SeenByTwo) return null;
        var crew = session.Shop.Cars[car].Tasks[task.Id].Crew.Select(m => m.Person);
        return crew.Concat(session.In.Select(p => p.Id)).FirstOrDefault(p => p != by);
    }

    private ImmutableArray<string> Texts(string car, PlanTask task, ReadingNeed need) =>
        session.Orders.Readings.TryGetValue($"{car}/{task.Id}/{need.Id}", out var texts) ? texts : [InLimits(need, session.Luck($"{car}/{task.Id}/{need.Id}"))];

    /// <summary>A number in limits with the instrument taken; the middle, or well inside the one limit, if luck takes it too near.</summary>
    private string InLimits(ReadingNeed need, double luck)
    {
        var tries = new[] { luck, (luck + 1) / 3, 0.5 }.Select(l => Text(need, l));
        return tries.FirstOrDefault(t => Judge(need, t, Instrument(need, t)) == Verdict.InLimits) ?? Text(need, 0.5);
    }

    private static string Text(ReadingNeed need, double luck)
    {
        var share = (decimal)luck;
        var value = (need.Min, need.Max) switch
        {
            ({ } min, { } max) => min + ((max - min) * (0.3m + (0.4m * share))),
            ({ } min, null) => min == 0 ? 4 + (8 * share) : min * (1.06m + (0.2m * share)),
            (null, { } max) => max * (0.35m + (0.4m * share)),
            _ => 1 + share,
        };
        return Math.Round(value, Decimals(need), MidpointRounding.ToEven).ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>Pieces are counted; else three figures that count.</summary>
    private static int Decimals(ReadingNeed need)
    {
        var size = Math.Abs(need.Max ?? need.Min ?? 1);
        return need.Unit == "pcs" ? 0 : size switch { >= 100 => 0, >= 10 => 1, >= 1 => 2, >= 0.1m => 3, _ => 4 };
    }

    private Verdict? Judge(ReadingNeed need, string text, Instrument? instrument) =>
        NumberOfRecord.Read(text, need.Unit, need.Name).Number is { } number && Limits.Judge(need, number, instrument, session.Now) is { Ok: true } judged ? judged.Verdict : null;

    /// <summary>The instrument named by the plan's words for the tool, in date where the limit asks for it, that can tell the unit.</summary>
    private Instrument? Instrument(ReadingNeed need, string text) => session.Shop.Instruments.Values
        .Where(i => need.Tool.Contains(i.Name, StringComparison.OrdinalIgnoreCase) && (!need.Calibrated || i.CalibratedUntil > session.Now))
        .OrderByDescending(i => i.Name.Length).ThenBy(i => i.Id, StringComparer.Ordinal)
        .FirstOrDefault(i => Judge(need, text, i) is not null);
}
