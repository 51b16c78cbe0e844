using System.Security.Claims;

namespace JobBoard.Web.SignIn;

/// <summary>Whether a sign-in still stands: a PIN that was changed, a person who left and a wall link that was withdrawn end it.</summary>
public sealed class Standing(Viewers viewers, PinBook pins, WallLinks walls)
{
    /// <summary>Whether this one does.</summary>
    public bool Stands(ClaimsPrincipal user) => viewers.Of(user) switch
    {
        PersonViewer person => pins.Mark(person.Id) is { } mark && mark == Viewers.PinMark(user),
        WallViewer wall => walls.Stands(wall.TokenId),
        _ => false,
    };
}
