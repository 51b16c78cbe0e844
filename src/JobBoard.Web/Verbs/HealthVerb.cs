namespace JobBoard.Web.Verbs;

/// <summary><c>jobboard health</c>: asks a running server whether it is well.</summary>
internal static class HealthVerb
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    public static async Task<int> Run(Options options, TextWriter output)
    {
        var listen = options["listen"] is { } text ? ListenAddress.Read(text) : ListenAddress.Usual;
        var address = listen.Host is "0.0.0.0" or "::" ? ListenAddress.Usual with { Port = listen.Port } : listen;
        using var client = new HttpClient { Timeout = Patience };
        try
        {
            using var answer = await client.GetAsync(new Uri(address.Url + "/health")).ConfigureAwait(false);
            await output.WriteLineAsync(answer.IsSuccessStatusCode ? "well" : $"{address.Url} answered {(int)answer.StatusCode}.").ConfigureAwait(false);
            return answer.IsSuccessStatusCode ? 0 : 1;
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
        {
            await output.WriteLineAsync($"{address.Url} does not answer: {e.Message}").ConfigureAwait(false);
            return 1;
        }
    }
}
