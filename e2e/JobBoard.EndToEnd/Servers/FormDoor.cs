using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace JobBoard.EndToEnd.Servers;

/// <summary>Sends commands as the pages' forms do, without a browser: for what a story leaves to a script.</summary>
internal sealed partial class FormDoor(Uri url, IReadOnlyDictionary<string, string> pins) : IDisposable
{
    private readonly Dictionary<string, (HttpClient Client, string Token)> _people = new(StringComparer.Ordinal);

    /// <summary>Sends a command that is expected to be done.</summary>
    public async Task Do(string person, string kind, params (string Name, string Value)[] fields)
    {
        var answer = await Send(person, kind, fields);
        Assert.True(answer.GetProperty("outcome").GetString() == "done", $"{person}, {kind} {string.Join(' ', fields.Select(f => $"{f.Name}={f.Value}"))}: {answer}");
    }

    /// <summary>Sends a command; gives the answer.</summary>
    public async Task<JsonElement> Send(string person, string kind, params (string Name, string Value)[] fields)
    {
        var (client, token) = await SignedIn(person);
        using var content = new FormUrlEncodedContent(
        [
            .. fields.Select(f => KeyValuePair.Create(f.Name, f.Value)),
            new("command", Guid.CreateVersion7().ToString()), new("pin", pins[person]), new("__RequestVerificationToken", token),
        ]);
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/do/" + kind, UriKind.Relative)) { Content = content };
        request.Headers.Accept.ParseAdd("application/json");
        using var response = await client.SendAsync(request);
        return JsonDocument.Parse(await response.Content.ReadAsStringAsync()).RootElement.Clone();
    }

    private async Task<(HttpClient Client, string Token)> SignedIn(string person)
    {
        if (_people.TryGetValue(person, out var known)) return known;
        var client = new HttpClient(new HttpClientHandler { CookieContainer = new CookieContainer() }, disposeHandler: true) { BaseAddress = url };
        var page = await client.GetStringAsync(new Uri("/sign-in?person=" + person, UriKind.Relative));
        using var form = new FormUrlEncodedContent([new("person", person), new("pin", pins[person]), new("back", "/sign-in"), new("__RequestVerificationToken", Token().Match(page).Groups[1].Value)]);
        using var response = await client.PostAsync(new Uri("/sign-in", UriKind.Relative), form);
        var token = Token().Match(await response.Content.ReadAsStringAsync()).Groups[1].Value;
        Assert.True(response.IsSuccessStatusCode && token.Length > 0, $"{person} could not sign in: {response.StatusCode}");
        return _people[person] = (client, token);
    }

    public void Dispose()
    {
        foreach (var (client, _) in _people.Values) client.Dispose();
    }

    [GeneratedRegex("<meta name=\"antiforgery\" content=\"([^\"]+)\"")]
    private static partial Regex Token();
}
