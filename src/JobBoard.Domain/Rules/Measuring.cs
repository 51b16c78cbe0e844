using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Items;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Readings;
using JobBoard.Domain.Work;
using JobBoard.Engineering.Measures;

namespace JobBoard.Domain.Rules;

/// <summary>Logging readings, and releasing one that holds.</summary>
internal static class Measuring
{
    public static void Log(Ask ask, LogReading command)
    {
        if (ask.Task(command) is not { } q) return;
        var need = q.Task.Readings.FirstOrDefault(r => r.Id == command.Reading);
        if (need is null)
        {
            ask.Bad("reading", $"{q.Task.Name} has no reading '{command.Reading}'.");
            return;
        }

        var instrument = command.Instrument is { } id ? ask.Shop.Instruments.GetValueOrDefault(id) : null;
        if (command.Instrument is not null && instrument is null) ask.Bad("instrument", $"There is no instrument '{command.Instrument}'.");
        if (command.SeenBy is { } second) CheckSeenBy(ask, second);
        var number = NumberOfRecord.Read(command.Text, command.Unit, need.Name);
        if (!number.Ok) ask.Bad("value", number.Words!);
        if (ask.Reasons.Count > 0) return;
        var judged = Limits.Judge(need, number.Number!, instrument, ask.At);
        if (judged.Ok) Record(ask, q, need, command, number.Number!, judged);
        else ask.Bad("unit", judged.Problem!);
    }

    private static void CheckSeenBy(Ask ask, string second)
    {
        if (second == ask.Actor) ask.Bad("seenBy", "The second person is another person.");
        else if (!ask.Shop.People.TryGetValue(second, out var person) || person.Left) ask.Bad("seenBy", $"There is nobody '{second}' in this shop.");
    }

    private static void Record(Ask ask, TaskQuestion q, ReadingNeed need, LogReading command, NumberOfRecord number, ReadingJudged judged)
    {
        var key = q.Task.Id + "/" + need.Id;
        ask.Facts.Add(new ReadingLogged(need.Id, number.Text, number.Value, number.Unit, judged.InLimitUnit, judged.Uncertainty, judged.Verdict, judged.Because, command.Instrument, command.SeenBy, ask.Now - ask.At > TimeSpan.FromMinutes(1))
        {
            Car = q.Car.Id,
            Task = q.Task.Id,
        });
        if (ask.Has(RuleBook.Ids.Lapse) && (Lapsing.Since(ask, q, need.StandsOn) ?? Lapsing.OfEarlierLife(ask, q)) is { } lapse)
        {
            ask.Facts.Add(new EvidenceLapsed(EvidenceKind.Reading, key, lapse) { Car = q.Car.Id });
        }
        else if (judged.Verdict == Verdict.InLimits && !(HoldRules.LastTaken(q.Car, key)?.At > ask.At))
        {
            ask.Facts.AddRange(q.Car.Standing.Where(s => s.EndsByReading == key && s.Since <= ask.At).Select(s => new HazardEndedByReading(s.Id, key) { Car = q.Car.Id }));
        }
    }

    public static void Release(Ask ask, ReleaseReading command)
    {
        if (ask.Task(command) is not { } q) return;
        var need = q.Task.Readings.FirstOrDefault(r => r.Id == command.Reading);
        var holding = need is null ? null : HoldRules.Holding(q.Car, q.Task, need);
        if (holding is null)
        {
            ask.Bad("reading", $"No reading '{command.Reading}' of {q.Task.Name} holds anything.");
            return;
        }

        if (string.IsNullOrWhiteSpace(command.Why)) ask.Bad("why", "Say why it may stand although it is not in limits.");
        if (Finishing.OwnWork(q.Car, q.Task.Id).Contains(ask.Actor)) ask.Refuse(RuleBook.Ids.OwnRelease, "Nobody releases a reading of their own work.", about: "actor");
        if (ask.Reasons.Count == 0) ask.Facts.Add(new ReadingReleased(need!.Id, holding.Seq, command.Why.Trim()) { Car = q.Car.Id, Task = q.Task.Id });
    }
}
