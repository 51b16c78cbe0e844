using System.Collections.Immutable;
using JobBoard.Domain.Boards;
using JobBoard.Domain.People;

namespace JobBoard.Web.Pages.Shared;

/// <summary>
/// What the bar at the top says. A page puts it into <c>ViewData["TopBar"]</c>; a page without one (sign-in, wall, customer) has no bar.
/// </summary>
public sealed record TopBarView
{
    /// <summary>"Bay 1 · Heron coupe", or the shop's name.</summary>
    public required string Where { get; init; }

    /// <summary>The signed-in person's first name, or nothing.</summary>
    public string? Person { get; init; }

    /// <summary>Where a tap on the name leads: quick change of person.</summary>
    public string ChangePerson { get; init; } = "/sign-in";

    /// <summary>The screens this person may open, in order.</summary>
    public ImmutableArray<TopBarScreen> Screens { get; init; } = Everyone;

    /// <summary>The path of the present screen, such as <c>/bay</c>.</summary>
    public string? Here { get; init; }

    /// <summary>The screens of the car this is about, or nothing.</summary>
    public CarScreens? Car { get; init; }

    /// <summary>The bar of a screen of a car. <paramref name="here"/>: its path below the car's, such as <c>/key-check</c>; empty for the work.</summary>
    public static TopBarView OfCar(CarBoard car, Person? person, string here) => new()
    {
        Where = car.Name,
        Person = person?.Name,
        Here = $"/cars/{car.Id}{here}",
        Car = person is null ? null : CarScreens.Of(car, person.Position),
    };

    /// <summary>The screens in their order; a page may leave some out by position.</summary>
    public static ImmutableArray<TopBarScreen> Everyone { get; } =
    [
        new("/floor", "Floor"),
        new("/bay", "Bay"),
        new("/cars", "Cars"),
        new("/holds", "Holds"),
        new("/parts", "Parts"),
        new("/snags", "Snags"),
        new("/people-and-places", "People and places"),
    ];
}

/// <summary>A screen in the bar.</summary>
public sealed record TopBarScreen(string Path, string Name);
