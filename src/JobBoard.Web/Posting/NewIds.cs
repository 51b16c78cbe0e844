using JobBoard.Domain.Plans;

namespace JobBoard.Web.Posting;

/// <summary>Ids for new things: their name in lower-case letters, digits and hyphens, with a number where one has it already.</summary>
public static class NewIds
{
    /// <summary>An id that is not taken.</summary>
    /// <param name="name">What people call it.</param>
    /// <param name="taken">Whether something has that id already.</param>
    /// <param name="otherwise">The id where the name has no letter or digit that an id can have.</param>
    public static string For(string name, Func<string, bool> taken, string otherwise) => PlanIds.For(name, taken, otherwise);
}
