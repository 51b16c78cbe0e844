using System.Text.Json;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Tests.Histories.Oracle;

namespace JobBoard.Domain.Tests.Histories;

/// <summary>
/// One made-up history of a shop: everything sent goes through the program and past the oracle. Without
/// <paramref name="refusalsToo"/> only what was let happen is judged, not what was refused and why.
/// </summary>
public sealed class History(int seed, int number, RuleBook rules, Tally tally, bool refusalsToo = true)
{
    private const int Steps = 65;

    private readonly Dice _dice = Dice.For(seed, number);
    private readonly Picture _picture = new();
    private readonly List<(DateTimeOffset At, Envelope Envelope, Decision Decision)> _told = [];
    private readonly List<Entry> _entries = [];
    private ShopState _shop = ShopState.Empty;
    private DateTimeOffset _now;

    /// <summary>Nothing when the rules held, else what was seen, with all that is needed to see it again.</summary>
    public string? Run()
    {
        _now = new DateTimeOffset(2026, 6, 1 + _dice.Below(5), 6, 0, 0, TimeSpan.Zero);
        var sender = new Sender(_dice, _picture);
        foreach (var command in new ShopMaker(_dice, _now).Commands().Concat(Coming()).ToList())
            if (Send(new Envelope(_dice.Guid(), ShopMaker.Owner, _now, null, command), counted: false) is { } early) return early;
        for (var cars = _dice.Between(2, 3); cars > 0; cars--)
            if (Send(new Envelope(_dice.Guid(), ShopMaker.Foreman, _now, null, sender.NewCar(0)), counted: true) is { } taking) return taking;
        for (var step = 0; step < Steps; step++)
        {
            Wait();
            if (Send(sender.Next(_now, _shop.Seq), counted: true) is { } failure) return failure;
        }

        tally.History();
        return FoldedAgain();
    }

    private IEnumerable<Command> Coming() => new[] { "boss", "fore", "tess", "appie" }.Select(p => new ComeIn(p));

    /// <summary>Time goes on: mostly by little, past lags and the night now and then.</summary>
    private void Wait()
    {
        var seconds = _dice.Below(100) switch
        {
            < 50 => _dice.Between(2, 50),
            < 84 => _dice.Between(60, 1200),
            < 94 => _dice.Between(1200, 7200),
            < 98 => _dice.Between(7200, 20000),
            _ => _dice.Between(40000, 90000),
        };
        _now = _now.AddSeconds(seconds);
    }

    private string? Send(Envelope envelope, bool counted)
    {
        var name = envelope.Command.GetType().Name;
        var judge = new Judge(_picture, envelope, _now);
        var decision = Rules.Deciding.Decide(_shop, envelope, _now, rules);
        _told.Add((_now, envelope, decision));
        if (decision is Decision.Refused refused)
        {
            if (counted) tally.Refused(name, refused.Reasons.Select(r => r.Rule));
            return refusalsToo ? Told(judge.OfRefusal(refused)) : null;
        }

        if (counted) tally.Accepted(name);
        var entries = ((Decision.Accepted)decision).Facts.Select((fact, i) =>
            new Entry(_shop.Seq + 1 + i, fact.Stream, envelope.Actor, Rules.Deciding.When(envelope, _now), _now, envelope.Id, fact)).ToList();
        foreach (var entry in entries) _shop = Folding.Apply(_shop, entry);
        _entries.AddRange(entries);
        return Told(Judged(judge, entries));
    }

    private static string? Judged(Judge judge, List<Entry> entries)
    {
        try
        {
            return judge.OfAcceptance(entries);
        }
        catch (Exception e) when (e is KeyNotFoundException or InvalidOperationException)
        {
            return $"what happened makes no sense: {e}";
        }
    }

    private string? Told(string? violation) => violation is null ? null : string.Join(
        Environment.NewLine,
        _told.TakeLast(25).Select(t => $"{t.At:dd HH:mm:ss} {t.Envelope.Actor} {t.Envelope.Id:N}: {t.Envelope.Command.GetType().Name} {JsonSerializer.Serialize(t.Envelope.Command, t.Envelope.Command.GetType(), PlanJson.Options)} -> {Say(t.Decision)}")
            .Prepend($"history {number} of seed {seed}, command {_told.Count}: {violation}"));

    private static string Say(Decision decision) => decision switch
    {
        Decision.Refused refused => "refused: " + string.Join("; ", refused.Reasons.Select(r => r.Rule + " (" + r.About + ")")),
        Decision.Accepted accepted => string.Join("; ", accepted.Facts.Select(f => EntryKinds.KindOf(f) + " " + EntryKinds.Write(f))),
        _ => "?",
    };

    /// <summary>The day book folded again from its beginning gives the same shop.</summary>
    private string? FoldedAgain()
    {
        var again = _entries.Aggregate(ShopState.Empty, Folding.Apply);
        return Dump.Of(again) == Dump.Of(_shop) ? null : Told("folded again, the day book gives another shop");
    }
}
