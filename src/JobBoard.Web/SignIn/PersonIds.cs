using JobBoard.Domain.Boards;
using JobBoard.Web.Posting;

namespace JobBoard.Web.SignIn;

/// <summary>Ids for new people: their name in lower-case letters and hyphens, with a number where somebody has it already.</summary>
public static class PersonIds
{
    /// <summary>An id nobody in the shop has.</summary>
    public static string For(string name, ShopState shop) => NewIds.For(name, shop.People.ContainsKey, "person");
}
