using JobBoard.Domain.Plans;
using Microsoft.AspNetCore.Authorization;

namespace JobBoard.Web.SignIn;

/// <summary>Who may open a page. A page that says nothing is for every signed-in person.</summary>
public static class Policies
{
    /// <summary>Signed-in people and walls.</summary>
    public const string Look = "look";

    /// <summary>The live feed: signed-in people, walls and customers by their link. What each may watch is the feed's to say.</summary>
    public const string Feed = "feed";

    /// <summary>Signed-in people of any position.</summary>
    public const string Person = "person";

    /// <summary>Foreman and owner.</summary>
    public const string Foreman = "foreman";

    /// <summary>The owner.</summary>
    public const string Owner = "owner";

    internal static void Add(AuthorizationOptions options)
    {
        options.AddPolicy(Look, p => p.AddRequirements(new Seen(null)));
        options.AddPolicy(Feed, p => p.AddAuthenticationSchemes(Viewers.Scheme, CustomerLinkScheme.Name).AddRequirements(new Seen(null, Customers: true)));
        foreach (var (name, least) in new[] { (Person, Position.Apprentice), (Foreman, Position.Foreman), (Owner, Position.Owner) })
        {
            options.AddPolicy(name, p => p.AddRequirements(new Seen(least)));
        }

        options.DefaultPolicy = options.FallbackPolicy = options.GetPolicy(Person)!;
    }

    /// <summary>At least this position; nothing lets walls in too, and customers where it says so.</summary>
    internal sealed record Seen(Position? Least, bool Customers = false) : IAuthorizationRequirement;

    internal sealed class Handler(Viewers viewers) : AuthorizationHandler<Seen>
    {
        protected override Task HandleRequirementAsync(AuthorizationHandlerContext context, Seen requirement)
        {
            var may = viewers.Of(context.User) switch
            {
                PersonViewer person => requirement.Least is null || person.Person.Position >= requirement.Least,
                WallViewer => requirement.Least is null,
                CustomerViewer => requirement.Customers,
                _ => false,
            };
            if (may) context.Succeed(requirement);
            return Task.CompletedTask;
        }
    }
}
