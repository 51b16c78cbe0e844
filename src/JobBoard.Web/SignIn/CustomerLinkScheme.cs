using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace JobBoard.Web.SignIn;

/// <summary>
/// Lets the holder of a customer's link into the live feed, and nowhere else. The page sends the token of its own address as a
/// bearer token, which a web socket can only send in its query; no cookie is set or needed.
/// </summary>
internal sealed class CustomerLinkScheme(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, CustomerLinks links)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    /// <summary>The scheme's name.</summary>
    public const string Name = "customer-link";

    private const string Bearer = "Bearer ";

    /// <inheritdoc/>
    protected override Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var header = Request.Headers.Authorization.ToString();
        var token = header.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase) ? header[Bearer.Length..].Trim() : Request.Query["access_token"].ToString();
        if (token.Length == 0) return Task.FromResult(AuthenticateResult.NoResult());
        if (links.Find(token) is not { } link) return Task.FromResult(AuthenticateResult.Fail("This link no longer works."));
        var until = new AuthenticationProperties { ExpiresUtc = DateTimeOffset.FromUnixTimeMilliseconds(link.Token.ExpiresAt!.Value) };
        return Task.FromResult(AuthenticateResult.Success(new(Viewers.ForCustomer(link.Id), until, Name)));
    }
}
