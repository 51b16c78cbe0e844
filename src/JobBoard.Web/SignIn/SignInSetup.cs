using JobBoard.Web.Pages.Missing;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;

namespace JobBoard.Web.SignIn;

/// <summary>Puts sign-in together.</summary>
internal static class SignInSetup
{
    private static readonly TimeSpan Lasts = TimeSpan.FromHours(12);
    private static readonly TimeSpan WallLasts = TimeSpan.FromDays(90);

    public static void AddShopSignIn(this IServiceCollection services)
    {
        services.AddSingleton<Viewers>().AddSingleton<PinBook>().AddSingleton<DevicePatience>().AddSingleton<SignInDesk>();
        services.AddSingleton<FirstRun>().AddSingleton<WallLinks>().AddSingleton<CustomerLinks>().AddSingleton<Standing>();
        services.AddSingleton<IAuthorizationHandler, Policies.Handler>();
        services.AddAuthorization(Policies.Add);
        services.AddAuthentication(Viewers.Scheme).AddCookie(Viewers.Scheme, SetCookie).AddScheme<AuthenticationSchemeOptions, CustomerLinkScheme>(CustomerLinkScheme.Name, null);
    }

    public static void MapWallLink(this IEndpointRouteBuilder app) => app.MapGet(
        "/wall/{token}",
        async (string token, HttpContext http, WallLinks walls) =>
            await walls.Enter(http, token).ConfigureAwait(false) ? Results.Redirect("/floor") : MissingWords.Answer(http, "This wall link does not open anything. Ask the owner for a new one."))
        .AllowAnonymous();

    private static void SetCookie(CookieAuthenticationOptions cookie)
    {
        cookie.Cookie.Name = "jobboard";
        cookie.Cookie.HttpOnly = true;
        cookie.Cookie.SameSite = SameSiteMode.Lax;
        cookie.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        cookie.ExpireTimeSpan = Lasts;
        cookie.SlidingExpiration = true;
        cookie.LoginPath = "/sign-in";
        cookie.AccessDeniedPath = "/sign-in";
        cookie.ReturnUrlParameter = "back";
        cookie.Events.OnSigningIn = context =>
        {
            if (context.Properties.IsPersistent) context.Properties.ExpiresUtc = context.HttpContext.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow() + WallLasts;
            return Task.CompletedTask;
        };
        cookie.Events.OnValidatePrincipal = Validate;
    }

    private static Task Validate(CookieValidatePrincipalContext context)
    {
        if (!context.HttpContext.RequestServices.GetRequiredService<Standing>().Stands(context.Principal!)) context.RejectPrincipal();
        return Task.CompletedTask;
    }
}
