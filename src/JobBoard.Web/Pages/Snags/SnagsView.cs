using System.Collections.Immutable;
using System.Globalization;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.People;
using JobBoard.Domain.Plans;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Snags;

/// <summary>Snags as one person sees them, a list per car.</summary>
/// <param name="At">When this was evaluated, to the minute.</param>
/// <param name="Cars">The cars.</param>
/// <param name="NamesCars">Whether every list has its car's name above it.</param>
public sealed record SnagsView(DateTimeOffset At, ImmutableArray<SnagsOfCar> Cars, bool NamesCars)
{
    /// <summary>The snags of one car, or of all; none for a person or car that is gone.</summary>
    public static SnagsView Of(Picture picture, string personId, string? car = null)
    {
        var at = picture.Minute;
        if (!picture.Shop.People.TryGetValue(personId, out var me)) return new(at, [], car is null);
        return new(at, [.. picture.Shop.Cars.Values.Where(c => car is null || c.Id == car).Select(c => SnagsOfCar.Of(picture, c, me))], car is null);
    }
}

/// <summary>The snags of one car.</summary>
/// <param name="CarId">The car's id.</param>
/// <param name="Car">The car.</param>
/// <param name="NextId">The id the next snag gets from this person: two people who raise one in the same moment do not meet.</param>
/// <param name="MayFinish">Whether this person says that one was put right: an apprentice signs nothing off.</param>
/// <param name="Open">Still to be put right, oldest first.</param>
/// <param name="Done">Put right.</param>
public sealed record SnagsOfCar(string CarId, string Car, string NextId, bool MayFinish, ImmutableArray<SnagLine> Open, ImmutableArray<SnagLine> Done)
{
    internal static SnagsOfCar Of(Picture picture, CarBoard car, Person me)
    {
        var snags = car.Snags.Values.OrderBy(s => s.RaisedAt).ToLookup(s => s.DoneAt is not null, s => Line(picture, s));
        var next = NewIds.For(string.Create(CultureInfo.InvariantCulture, $"{me.Id} {car.Snags.Count + 1}"), car.Snags.ContainsKey, "snag");
        return new(car.Id, car.Name, next, MayPost.May<FinishSnag>(me.Position) && me.Position > Position.Apprentice, [.. snags[false]], [.. snags[true]]);
    }

    private static SnagLine Line(Picture picture, Snag snag) => new(
        snag.Id, snag.Words, picture.Shop.NameOf(snag.RaisedBy), picture.Local(snag.RaisedAt),
        snag.DoneAt is { } done ? $"{snag.HowDone} ({picture.Shop.NameOf(snag.DoneBy!)}, {ShopTime.Since(picture.Local(done), picture.Now)})" : null);
}

/// <summary>A snag. <paramref name="Done"/>: how it was put right, by whom and when; or nothing.</summary>
public sealed record SnagLine(string Id, string Words, string By, DateTimeOffset At, string? Done);
