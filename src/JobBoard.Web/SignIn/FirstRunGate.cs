namespace JobBoard.Web.SignIn;

/// <summary>While the owner is still to be made every page leads to the one that makes them.</summary>
internal sealed class FirstRunGate(RequestDelegate next)
{
    private static readonly string[] Open = ["/first", "/health", "/css", "/js", "/lib", "/mark.svg", "/error", "/gallery"];

    public Task Invoke(HttpContext http, FirstRun first)
    {
        if (!first.IsNeeded || Open.Any(p => http.Request.Path.StartsWithSegments(p))) return next(http);
        http.Response.Redirect("/first");
        return Task.CompletedTask;
    }
}
