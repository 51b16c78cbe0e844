using JobBoard.Shop.Running;
using JobBoard.Shop.Templates;
using JobBoard.Web.Live;
using JobBoard.Web.Pages.Missing;
using JobBoard.Web.Pages.Plans;
using JobBoard.Web.Paper;
using JobBoard.Web.Posting;
using JobBoard.Web.SignIn;
using JobBoard.Web.Verbs;
using Microsoft.AspNetCore.DataProtection;

namespace JobBoard.Web.Hosting;

/// <summary>The web server over a running shop.</summary>
public static class BoardHost
{
    /// <summary>Builds the server; it is not started and does not own the shop.</summary>
    public static WebApplication Build(RunningShop shop, ListenAddress listen, PaperTimes? paper = null)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(BoardHost).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
        });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.UseUrls(listen.Url);
        builder.WebHost.ConfigureKestrel(k => k.AddServerHeader = false);
        builder.Logging.AddFilter("Microsoft", LogLevel.Warning).AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        AddServices(builder.Services, shop);
        builder.Services.AddSingleton(paper ?? PaperTimes.Read(null)).AddSingleton(PaperPlace.In(shop.Folder)).AddSingleton<PaperFolder>();
        builder.Services.AddSingleton<EveningPaper>().AddHostedService(s => s.GetRequiredService<EveningPaper>());
        var app = builder.Build();
        Configure(app);
        return app;
    }

    private static void AddServices(IServiceCollection services, RunningShop shop)
    {
        services.AddSingleton(shop.Runner).AddSingleton(shop.Clock).AddSingleton(shop.SystemClock).AddSingleton(shop.Database);
        services.AddSingleton<PlanLooks>().AddSingleton(new TemplateBook(new TemplateShelf(SeedData.Templates), () => shop.Runner.State));
        services.AddDataProtection().SetApplicationName("jobboard").PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(shop.Folder, "keys")));
        services.AddHttpContextAccessor();
        services.AddRazorPages().AddMvcOptions(o => o.Filters.Add<MissingWords.Filter>());
        services.AddRazorComponents();
        services.AddShopSignIn();
        services.AddPosting();
        services.AddLive();
    }

    private static void Configure(WebApplication app)
    {
        app.UseExceptionHandler("/error");
        app.UseMiddleware<SafeHeaders>();
        app.UseStatusCodePagesWithReExecute("/missing");
        app.UseMiddleware<FirstRunGate>();
        app.UseRouting();
        app.UseAuthentication();
        app.UseAuthorization();
        app.MapStaticAssets().AllowAnonymous();
        app.MapGet("/health", (ShopRunner runner) => Results.Text($"well {runner.State.Seq}")).AllowAnonymous();
        app.MapGet("/", (HttpContext http, Viewers viewers) => Results.Redirect(viewers.Of(http.User) is WallViewer ? "/floor" : "/bay"))
            .RequireAuthorization(Policies.Look);
        app.MapPlanLooks();
        app.MapWallLink();
        app.MapLive();
        app.MapRazorPages();
    }
}
