using System.Collections.Immutable;

namespace JobBoard.Web.Pages.PeopleAndPlaces;

/// <summary>Hours, places and things of the shop, as one person sees them.</summary>
public sealed record PlacesView
{
    /// <summary>The shop's name.</summary>
    public string Shop { get; init; } = "";

    /// <summary>Its time zone.</summary>
    public string Zone { get; init; } = "";

    /// <summary>Its hours, a line per stretch of days; none where it counts as always open.</summary>
    public ImmutableArray<string> Hours { get; init; } = [];

    /// <summary>Days it is closed that are not over.</summary>
    public ImmutableArray<string> Closed { get; init; } = [];

    /// <summary>The map; nothing without places.</summary>
    public ShopMapView? Map { get; init; }

    /// <summary>Places by name.</summary>
    public ImmutableArray<PlaceLine> Places { get; init; } = [];

    /// <summary>Things of the shop itself.</summary>
    public ImmutableArray<ShopItemLine> Items { get; init; } = [];

    /// <summary>Whether the reader sets all this.</summary>
    public bool MayChange { get; init; }
}

/// <summary>The shop to scale, in centimetres, x to the right, y down.</summary>
/// <param name="Width">Of the whole.</param>
/// <param name="Height">Of the whole.</param>
/// <param name="Places">The places.</param>
/// <param name="Sweeps">The floor loads can pass over.</param>
public sealed record ShopMapView(double Width, double Height, ImmutableArray<MapPlace> Places, ImmutableArray<MapBox> Sweeps);

/// <summary>A rectangle on the map in centimetres.</summary>
public sealed record MapBox(string Id, double X, double Y, double Width, double Height);

/// <summary>A place on the map with its lines of text.</summary>
public sealed record MapPlace(MapBox Box, ImmutableArray<MapText> Lines);

/// <summary>A line of text on the map: where its baseline starts.</summary>
public sealed record MapText(string Text, double X, double Y, bool IsCar);

/// <summary>A place in words.</summary>
public sealed record PlaceLine(string Id, string Name, string Kind, string Size, string Holds, ImmutableArray<PlaceCar> Cars, ImmutableArray<string> InHand);

/// <summary>A car that stands at a place.</summary>
public sealed record PlaceCar(string Id, string Name);

/// <summary>A thing of the shop.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Condition">The condition it is in.</param>
/// <param name="Others">Conditions it can be changed to.</param>
/// <param name="Dangers">What stands while it is in which condition.</param>
public sealed record ShopItemLine(string Id, string Name, string Condition, ImmutableArray<string> Others, ImmutableArray<string> Dangers);
