using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Plans;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Shared;

namespace JobBoard.Web.Pages.Cars.Car;

/// <summary>The notes on a car, newest first.</summary>
/// <param name="CarId">The car's id.</param>
/// <param name="At">When this was evaluated, to the minute.</param>
/// <param name="Notes">The notes.</param>
public sealed record CarNotesView(string CarId, DateTimeOffset At, ImmutableArray<CarNote> Notes)
{
    /// <summary>The notes of a car; none when it is gone.</summary>
    public static CarNotesView Of(Picture picture, string carId)
    {
        var at = picture.Minute;
        if (!picture.Shop.Cars.TryGetValue(carId, out var car)) return new(carId, at, []);
        var index = PlanIndex.Of(car.Plan);
        return new(carId, at, [.. car.Notes.Reverse().Select(n => new CarNote(n.Words, picture.Shop.NameOf(n.By), picture.Local(n.At), n.Task is null ? null : index.NameOf(n.Task), CustomerWord(n)))]);
    }

    private static string? CustomerWord(Note note) => note.Chosen ? "the customer sees it" : note.ForCustomer ? "may be shown to the customer" : null;
}

/// <summary>A note.</summary>
/// <param name="Words">The note.</param>
/// <param name="By">Who wrote it.</param>
/// <param name="At">When.</param>
/// <param name="Task">The task it is about, or nothing.</param>
/// <param name="Customer">Whether the customer sees it or may, in words; nothing where it stays in the shop.</param>
public sealed record CarNote(string Words, string By, DateTimeOffset At, string? Task, string? Customer);
