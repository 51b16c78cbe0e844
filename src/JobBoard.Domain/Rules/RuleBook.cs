using System.Collections.Frozen;

namespace JobBoard.Domain.Rules;

/// <summary>A rule of the shop by name, with its words.</summary>
public sealed record Rule(string Id, string Words);

/// <summary>
/// The rules in force. The program always works with <see cref="Full"/>; a test may switch one off to see its proof fail.
/// </summary>
public sealed class RuleBook
{
    private readonly FrozenSet<string> _off;

    private RuleBook(FrozenSet<string> off) => _off = off;

    /// <summary>Every rule.</summary>
    public static RuleBook Full { get; } = new(FrozenSet<string>.Empty);

    /// <summary>All rules by name.</summary>
    public static IReadOnlyList<Rule> All { get; } =
    [
        new(Ids.Position, "Each command asks for a least position: apprentice, technician, foreman, owner."),
        new(Ids.Stale, "An intent is refused when others changed what it touches since its sender looked."),
        new(Ids.TaskState, "A task starts once at a time: not while in hand, for second check, or signed off and standing."),
        new(Ids.Link, "What comes before is signed off (finish-start) or started (start-start); a lead is met while the earlier one is in hand with no more than the lead remaining."),
        new(Ids.Lag, "A lag runs from the end of the work, in shop hours or clock hours."),
        new(Ids.HoldPoint, "Work does not pass a hold point before it is released."),
        new(Ids.Stop, "Nothing starts under a stop but making safe."),
        new(Ids.ReadingHold, "A reading out, or too close where the limit says so, holds what rests on it."),
        new(Ids.Lapsed, "A lapsed sign-off or release stops counting for what comes after."),
        new(Ids.AgainOrNot, "After an undone task everything not started waits on \"again or not?\"."),
        new(Ids.Condition, "Needed conditions hold, met by what is done, never by what is planned."),
        new(Ids.InWork, "An item in work meets nobody else's need."),
        new(Ids.TakesAway, "A start does not take away what work in hand rests on."),
        new(Ids.PartRight, "Parts are checked right before the task starts."),
        new(Ids.KeepApart, "Dangers that must keep apart never stand at once; a danger stands until made safe."),
        new(Ids.Place, "The place is known and has room."),
        new(Ids.Gear, "Gear is free, reaches the car, is rated for the load and in date."),
        new(Ids.People, "Enough people are in and qualified for their duties."),
        new(Ids.InHandElsewhere, "A person has one task in hand, unless it only wants a look now and then."),
        new(Ids.ApprenticeBeside, "An apprentice works only beside their named person on the same task."),
        new(Ids.HowLeft, "Whoever goes on has acknowledged how it was left; where asked, it is said when leaving."),
        new(Ids.OwnSignOff, "A person signs off their own work; the foreman may for the crew."),
        new(Ids.ApprenticeSigns, "An apprentice signs nothing off."),
        new(Ids.Evidence, "Sign-off wants every reading taken, in limits, not lapsed, and seen by two where asked."),
        new(Ids.FinishLink, "Finish-finish and start-finish links govern sign-off."),
        new(Ids.OwnCheck, "A second check is by another person, qualified, never for own work."),
        new(Ids.OwnRelease, "Nobody releases a hold, stop or reading for their own work."),
        new(Ids.ReleaseOrder, "A hold is released when all before it is done and stands."),
        new(Ids.Call, "The key is turned on a call: everybody in has answered go, and nothing behind it has changed since."),
        new(Ids.Handover, "Handover wants nothing off, temporary, held, lapsed or missing."),
        new(Ids.MadeSafeFirst, "A stop is released only after made safe, which answers each standing danger."),
        new(Ids.ClashStop, "A fact that joins dangers that must keep apart, or takes away what work in hand rests on, raises a stop."),
        new(Ids.Lapse, "Evidence lapses when work that changes or touches what it stands on starts, or at an outside change."),
        new(Ids.ByReading, "A danger that ends by a reading never ends otherwise."),
        new(Ids.PlanFault, "A plan with faults is refused whole; a change is refused for faults it adds."),
        new(Ids.Pinned, "A car is moved only while no work is in hand on it and nothing pins it."),
        new(Ids.TakeBack, "Only one's own command of the last minute is taken back, and only while nothing was built on it."),
    ];

    /// <summary>The same without one rule: for tests.</summary>
    public RuleBook Without(string rule) =>
        All.Any(r => r.Id == rule) ? new([.. _off, rule]) : throw new ArgumentException($"There is no rule '{rule}'.", nameof(rule));

    /// <summary>Whether a rule is in force.</summary>
    public bool Has(string rule) => !_off.Contains(rule);

    /// <summary>Ids of the rules.</summary>
    public static class Ids
    {
        public const string Position = "position";
        public const string Stale = "changed-since-you-looked";
        public const string TaskState = "task-state";
        public const string Link = "link";
        public const string Lag = "lag";
        public const string HoldPoint = "hold-point";
        public const string Stop = "stop";
        public const string ReadingHold = "reading-hold";
        public const string Lapsed = "lapsed";
        public const string AgainOrNot = "again-or-not";
        public const string Condition = "condition";
        public const string InWork = "in-work";
        public const string TakesAway = "takes-away";
        public const string PartRight = "part-right";
        public const string KeepApart = "keep-apart";
        public const string Place = "place";
        public const string Gear = "gear";
        public const string People = "people";
        public const string InHandElsewhere = "in-hand-elsewhere";
        public const string ApprenticeBeside = "apprentice-beside";
        public const string HowLeft = "how-left";
        public const string OwnSignOff = "own-sign-off";
        public const string ApprenticeSigns = "apprentice-signs";
        public const string Evidence = "evidence";
        public const string FinishLink = "finish-link";
        public const string OwnCheck = "own-check";
        public const string OwnRelease = "own-release";
        public const string ReleaseOrder = "release-order";
        public const string Call = "call";
        public const string Handover = "handover";
        public const string MadeSafeFirst = "made-safe-first";
        public const string ClashStop = "clash-stop";
        public const string Lapse = "lapse";
        public const string ByReading = "by-reading";
        public const string PlanFault = "plan-fault";
        public const string Pinned = "pinned";
        public const string TakeBack = "take-back";

        /// <summary>Bad input: a field that makes no sense. Not a rule that can be switched off.</summary>
        public const string Input = "input";
    }
}
