using JobBoard.Domain.Plans;
using JobBoard.Web.SignIn;

namespace JobBoard.Web.Live;

/// <summary>Who a fragment is rendered for, once for all of them.</summary>
public enum AudienceKind
{
    /// <summary>Everybody in the shop and the walls.</summary>
    Floor,

    /// <summary>People of one position who look at one car.</summary>
    Car,

    /// <summary>One person.</summary>
    Person,

    /// <summary>The holder of one customer's link.</summary>
    Customer,
}

/// <summary>One audience: <c>floor</c>, <c>car/CAR/POSITION</c>, <c>person/ID</c> or <c>customer/LINK</c>.</summary>
public sealed record Audience
{
    private Audience(AudienceKind kind, string? car = null, Position? position = null, string? personId = null, string? linkId = null) =>
        (Kind, Car, Position, PersonId, LinkId) = (kind, car, position, personId, linkId);

    /// <summary>Which kind.</summary>
    public AudienceKind Kind { get; }

    /// <summary>The car, for <see cref="AudienceKind.Car"/>.</summary>
    public string? Car { get; }

    /// <summary>The position, for <see cref="AudienceKind.Car"/>.</summary>
    public Position? Position { get; }

    /// <summary>The person, for <see cref="AudienceKind.Person"/>.</summary>
    public string? PersonId { get; }

    /// <summary>The link, for <see cref="AudienceKind.Customer"/>.</summary>
    public string? LinkId { get; }

    /// <summary>Everybody in the shop and the walls.</summary>
    public static Audience Floor { get; } = new(AudienceKind.Floor);

    /// <summary>Its name in the protocol.</summary>
    public string Key => Kind switch
    {
        AudienceKind.Floor => "floor",
        AudienceKind.Car => $"car/{Car}/{Position!.Value.ToString().ToLowerInvariant()}",
        AudienceKind.Customer => "customer/" + LinkId,
        _ => "person/" + PersonId,
    };

    /// <summary>People of one position who look at a car.</summary>
    public static Audience OfCar(string car, Position position) => new(AudienceKind.Car, car, position);

    /// <summary>One person.</summary>
    public static Audience OfPerson(string id) => new(AudienceKind.Person, personId: id);

    /// <summary>The holder of a customer's link.</summary>
    public static Audience OfCustomer(string linkId) => new(AudienceKind.Customer, linkId: linkId);

    /// <summary>Reads a key; nothing when it is none.</summary>
    public static Audience? Read(string key) => key.Split('/') switch
    {
        ["floor"] => Floor,
        ["car", { Length: > 0 } car, var position] when Enum.TryParse<Position>(position, ignoreCase: true, out var p) && Enum.IsDefined(p) => OfCar(car, p),
        ["person", { Length: > 0 } id] => OfPerson(id),
        ["customer", { Length: > 0 } link] => OfCustomer(link),
        _ => null,
    };

    /// <summary>Whether somebody belongs to it.</summary>
    public bool Admits(Viewer viewer) => viewer switch
    {
        WallViewer => Kind == AudienceKind.Floor,
        CustomerViewer customer => Kind == AudienceKind.Customer && customer.LinkId == LinkId,
        PersonViewer person => Kind switch
        {
            AudienceKind.Floor => true,
            AudienceKind.Car => person.Person.Position == Position,
            AudienceKind.Person => person.Id == PersonId,
            _ => false,
        },
        _ => false,
    };
}
