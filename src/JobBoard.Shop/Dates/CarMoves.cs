using System.Collections.Immutable;
using JobBoard.Domain.Entries;

namespace JobBoard.Shop.Dates;

/// <summary>What moved a car's date since this morning.</summary>
/// <param name="Since">The instant it is counted from: midnight of the shop's day, or when the car was taken in.</param>
/// <param name="Before">The end of everything as it was then; nothing where it was not known.</param>
/// <param name="After">The end of everything as it is now; nothing where it is not known.</param>
/// <param name="Net">Shop hours by which it moved, above zero for later; nothing where one of the two is not known.</param>
/// <param name="Moves">Each thing that moved it, in order of time.</param>
public sealed record CarMoves(DateTimeOffset Since, DateTimeOffset? Before, DateTimeOffset? After, TimeSpan? Net, ImmutableArray<CarMove> Moves);

/// <summary>One thing that moved it: an entry, or time that went by.</summary>
/// <param name="At">When.</param>
/// <param name="By">Shop hours, above zero for later; nothing where the date stopped or began to be known.</param>
/// <param name="Fact">What was entered; nothing where time alone moved it.</param>
/// <param name="Actor">Who entered it; empty where time alone moved it.</param>
/// <param name="Node">Where time alone moved it: the first open step of what set the date then.</param>
/// <param name="WasInHand">Where time alone moved it: whether that step was in hand.</param>
/// <param name="RestsOn">Parts on which the date rests since, where it is no longer known.</param>
public sealed record CarMove(DateTimeOffset At, TimeSpan? By, Fact? Fact, string Actor, string? Node, bool WasInHand, ImmutableArray<string> RestsOn);
