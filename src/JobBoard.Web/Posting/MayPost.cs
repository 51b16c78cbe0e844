using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Runtime.CompilerServices;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;

namespace JobBoard.Web.Posting;

/// <summary>
/// Which position may send which command at all, as the rules say it (<see cref="Admission.Least"/>); pages show no button for
/// what one may not send. Whether it can be done now is a further question, and also for the rules.
/// </summary>
public static class MayPost
{
    private static readonly ConcurrentDictionary<Type, Position> Least = new();

    private static readonly FrozenSet<Type> AsksPin =
        new[] { typeof(ReleaseHold), typeof(ReleaseStop), typeof(ReleaseReading), typeof(LetThrough), typeof(SecondCheck) }.ToFrozenSet();

    /// <summary>Whether a position may send a command.</summary>
    public static bool May(Position position, Type command) => position >= LeastFor(command);

    /// <summary>Whether a position may send a command.</summary>
    public static bool May<TCommand>(Position position)
        where TCommand : Command => May(position, typeof(TCommand));

    /// <summary>The least position that may send a command. The rule looks at the type alone, so an empty one answers it.</summary>
    public static Position LeastFor(Type command) =>
        Least.GetOrAdd(command, type => Admission.Least((Command)RuntimeHelpers.GetUninitializedObject(type)));

    /// <summary>Whether a command asks for a PIN typed within the last five minutes: releases, second checks, the key check.</summary>
    public static bool AsksFreshPin(Type command) => AsksPin.Contains(command);
}
