using JobBoard.Shop.Dates;
using JobBoard.Shop.Running;

namespace JobBoard.Web.Live;

/// <summary>Puts the live feed together.</summary>
internal static class LiveSetup
{
    public static void AddLive(this IServiceCollection services)
    {
        services.AddSingleton<Markup>().AddSingleton<Fragments>().AddSingleton<PageFrame>().AddSingleton<Doorkeeper>().AddSingleton<DateBook>().AddSingleton(s => new MovedBook(s.GetRequiredService<ShopRunner>(), s.GetRequiredService<DateBook>()));
        foreach (var fragment in typeof(LiveSetup).Assembly.GetTypes().Where(t => t is { IsAbstract: false, IsInterface: false } && t.IsAssignableTo(typeof(IFragment))))
        {
            services.AddSingleton(typeof(IFragment), fragment);
        }

        services.AddSingleton<LivePublisher>().AddHostedService(s => s.GetRequiredService<LivePublisher>());
        services.AddSignalR(options =>
        {
            options.KeepAliveInterval = TimeSpan.FromSeconds(5);
            options.ClientTimeoutInterval = TimeSpan.FromSeconds(15);
            options.MaximumReceiveMessageSize = 32 * 1024;
        });
    }

    public static void MapLive(this IEndpointRouteBuilder app) => app.MapHub<LiveHub>("/live", options =>
    {
        options.TransportSendTimeout = TimeSpan.FromSeconds(2);
        options.CloseOnAuthenticationExpiration = true;
    });
}
