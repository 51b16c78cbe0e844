using System.Security.Claims;

namespace JobBoard.Web.SignIn;

/// <summary>Whether a sign-in still stands: a PIN that was changed, a person who left and a link that was withdrawn or ran out end it.</summary>
public sealed class Standing(Viewers viewers, PinBook pins, WallLinks walls, CustomerLinks customers)
{
    /// <summary>Whether this one does.</summary>
    public bool Stands(ClaimsPrincipal user) => viewers.Of(user) switch
    {
        PersonViewer person => pins.Mark(person.Id) is { } mark && mark == Viewers.PinMark(user),
        WallViewer wall => walls.Stands(wall.TokenId),
        CustomerViewer customer => customers.CarOf(customer.LinkId) is not null,
        _ => false,
    };
}
