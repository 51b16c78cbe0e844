using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Web.Live;
using JobBoard.Web.Posting;

namespace JobBoard.Web.Pages.Cars.ForCustomer;

/// <summary>What the shop tells and asks the customer of a car.</summary>
public sealed record ForCustomerView
{
    /// <summary>When this was evaluated, to the minute.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The car's id; empty when it is gone.</summary>
    public string CarId { get; init; } = "";

    /// <summary>The date given now, or nothing.</summary>
    public DateTimeOffset? Given { get; init; }

    /// <summary>What the customer was asked: open first, then the newest.</summary>
    public ImmutableArray<AskedRow> Asked { get; init; } = [];

    /// <summary>Notes the customer sees, and those that may be shown; the newest first.</summary>
    public ImmutableArray<NoteRow> Notes { get; init; } = [];

    /// <summary>Notes nobody marked for the customer, the newest first.</summary>
    public ImmutableArray<NoteRow> Internal { get; init; } = [];

    /// <summary>The shop's number; empty for none.</summary>
    public string Phone { get; init; } = "";

    /// <summary>The shop's mail address; empty for none.</summary>
    public string Mail { get; init; } = "";

    /// <summary>Whether this position sets how customers reach the shop.</summary>
    public bool MaySetContact { get; init; }

    /// <summary>For one position.</summary>
    public static ForCustomerView Of(Picture picture, string carId, Position position)
    {
        if (!picture.Shop.Cars.TryGetValue(carId, out var car)) return new() { At = picture.Minute };
        var notes = car.Notes.Reverse().ToLookup(n => n.Chosen || n.ForCustomer, n => Row(picture, n));
        return new()
        {
            At = picture.Minute,
            CarId = carId,
            Given = car.DateGiven is { } given ? picture.Local(given) : null,
            Asked = [.. car.Asks.Values.OrderByDescending(a => a.IsOpen).ThenByDescending(a => a.AskedAt).Select(a => Row(picture, a))],
            Notes = [.. notes[true]],
            Internal = [.. notes[false]],
            Phone = picture.Shop.Phone,
            Mail = picture.Shop.Mail,
            MaySetContact = MayPost.May<SetContact>(position),
        };
    }

    private static NoteRow Row(Picture picture, Note note) => new(note.Seq, note.Words, picture.Shop.NameOf(note.By), picture.Local(note.At), note.Chosen);

    private static AskedRow Row(Picture picture, CustomerAsk ask) => new()
    {
        Id = ask.Id,
        Words = ask.Words,
        By = ask.By,
        AskedBy = picture.Shop.NameOf(ask.AskedBy),
        AskedAt = picture.Local(ask.AskedAt),
        Answer = ask.Answer,
        AnsweredBy = ask.AnsweredBy is null ? null : picture.Shop.NameOf(ask.AnsweredBy),
        AnsweredAt = ask.AnsweredAt is { } at ? picture.Local(at) : null,
    };
}

/// <summary>A note, to be chosen or taken off the customer's page.</summary>
/// <param name="Seq">What it is called by.</param>
/// <param name="Words">The note.</param>
/// <param name="By">Who wrote it.</param>
/// <param name="At">When.</param>
/// <param name="Chosen">Whether the customer sees it.</param>
public sealed record NoteRow(long Seq, string Words, string By, DateTimeOffset At, bool Chosen);

/// <summary>What the customer was asked.</summary>
public sealed record AskedRow
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>What is needed.</summary>
    public required string Words { get; init; }

    /// <summary>The day it is needed by, or nothing.</summary>
    public DateOnly? By { get; init; }

    /// <summary>Who asked.</summary>
    public required string AskedBy { get; init; }

    /// <summary>When.</summary>
    public required DateTimeOffset AskedAt { get; init; }

    /// <summary>The answer; nothing while it is open.</summary>
    public string? Answer { get; init; }

    /// <summary>Who took it.</summary>
    public string? AnsweredBy { get; init; }

    /// <summary>When.</summary>
    public DateTimeOffset? AnsweredAt { get; init; }
}
