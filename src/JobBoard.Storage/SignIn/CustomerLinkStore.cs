using Dapper;

namespace JobBoard.Storage.SignIn;

/// <summary>The cars of customers' links, by the link's id.</summary>
public sealed class CustomerLinkStore(ShopDatabase database)
{
    /// <summary>Every car that a link was made for.</summary>
    public IReadOnlyDictionary<string, string> All() => database.Read(connection => connection
        .Query<(string Id, string Car)>("SELECT token_id, car FROM customer_links")
        .ToDictionary(row => row.Id, row => row.Car, StringComparer.Ordinal));

    /// <summary>Says which car a link that exists is about. Once: a link never changes its car.</summary>
    public void Set(string id, string car) => database.Write(connection => connection.Execute(
        "INSERT INTO customer_links (token_id, car) VALUES (@id, @car)", new { id, car }));
}
