namespace JobBoard.Domain.Entries;

/// <summary>Footprint keys: what a fact or a command touches, for "changed since you looked" and for taking back.</summary>
public static class Foot
{
    public static string Person(string id) => "person:" + id;

    public static string Presence(string id) => "presence:" + id;

    public static string Place(string id) => "place:" + id;

    public static string Car(string id) => "car:" + id;

    public static string Plan(string car) => "car:" + car + "/plan";

    /// <summary>A task and a hold point share one name space.</summary>
    public static string Node(string car, string id) => "car:" + car + "/node:" + id;

    public static string Task(string car, string id) => Node(car, id);

    public static string Item(string car, string id) => "car:" + car + "/item:" + id;

    public static string ShopItem(string id) => "item:" + id;

    public static string Part(string car, string id) => "car:" + car + "/part:" + id;

    public static string Hazard(string car, string id) => "car:" + car + "/hazard:" + id;

    public static string Snag(string car, string id) => "car:" + car + "/snag:" + id;

    /// <summary>What the customer was asked.</summary>
    public static string Ask(string car, string id) => "car:" + car + "/ask:" + id;

    /// <summary>A note, by the entry that wrote it.</summary>
    public static string Note(string car, long entry) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"car:{car}/note:{entry}");

    public static string Template(string id) => "template:" + id;

    public static string Stop(string id) => "stop:" + id;
}
