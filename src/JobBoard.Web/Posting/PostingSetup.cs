namespace JobBoard.Web.Posting;

/// <summary>Puts posting together.</summary>
internal static class PostingSetup
{
    public static void AddPosting(this IServiceCollection services)
    {
        services.AddSingleton<CommandDesk>();
        services.AddAntiforgery(options =>
        {
            options.HeaderName = "X-Antiforgery";
            options.Cookie.Name = "jobboard-form";
            options.Cookie.SameSite = SameSiteMode.Strict;
            options.SuppressXFrameOptionsHeader = true;
        });
    }
}
