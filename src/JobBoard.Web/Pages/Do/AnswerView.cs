using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Rules;
using JobBoard.Web.Pages.Shared;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Do;

/// <summary>The answer to a posted form, in words.</summary>
public sealed record AnswerView
{
    /// <summary>What became of it, in a sentence.</summary>
    public required string Title { get; init; }

    /// <summary>Everything it waits on.</summary>
    public ImmutableArray<AnswerReason> Reasons { get; init; } = [];

    /// <summary>Fields to put right.</summary>
    public ImmutableArray<FieldFault> Faults { get; init; } = [];

    /// <summary>Whether the PIN is asked for.</summary>
    public bool AsksPin { get; init; }

    /// <summary>The words for an outcome; people by name, times in the shop's.</summary>
    public static AnswerView Of(Posted posted, ShopState shop, DateTimeOffset now) => posted switch
    {
        Posted.Done => new() { Title = "Done." },
        Posted.Refused refused => new() { Title = "Not done. It waits on:", Reasons = [.. refused.Reasons.Select(r => AnswerReason.Of(r, shop, now))] },
        Posted.Invalid invalid => new() { Title = "Not done. Put this right:", Faults = invalid.Faults },
        Posted.PinAsked pin => new() { Title = pin.Words ?? "Type your PIN once more for this.", AsksPin = true },
        Posted.NotTaken none => new() { Title = none.Words },
        _ => throw new InvalidOperationException($"No words for {posted.GetType().Name}."),
    };
}

/// <summary>One thing that is waited on.</summary>
/// <param name="Words">What is missing.</param>
/// <param name="Who">Who can put it right, by name; or nothing.</param>
/// <param name="When">When it ends by itself, in the shop's time; or nothing.</param>
public sealed record AnswerReason(string Words, string? Who, string? When)
{
    /// <summary>A reason in words.</summary>
    public static AnswerReason Of(WaitingOn reason, ShopState shop, DateTimeOffset now)
    {
        var zone = ShopZone.Of(shop);
        var who = string.Join(" or ", reason.Who.Select(shop.NameOf));
        var when = reason.When is { } at ? ShopTime.Since(TimeZoneInfo.ConvertTime(at, zone), TimeZoneInfo.ConvertTime(now, zone)) : null;
        return new(shop.Say(reason.Words), who.Length == 0 ? null : who, when);
    }
}
