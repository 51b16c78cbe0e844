using System.Diagnostics;
using Microsoft.Playwright;

namespace JobBoard.EndToEnd.Screens;

/// <summary>Something a screen has to show: text in an element, or that it is gone.</summary>
/// <param name="Screen">The screen.</param>
/// <param name="Selector">The element.</param>
/// <param name="Text">Words in it; any when null.</param>
/// <param name="Gone">That it is no longer there instead.</param>
internal sealed record Sight(Screen Screen, string Selector, string? Text = null, bool Gone = false);

/// <summary>A page that stays open and is looked at.</summary>
internal sealed record Screen(IPage Page, string Name);

/// <summary>How long changes take to show on screens, from the tap that made them.</summary>
internal sealed class Delays
{
    private static readonly TimeSpan GivesUpAfter = TimeSpan.FromSeconds(30);

    private readonly List<(string What, double Milliseconds)> _all = [];
    private int _keys;

    /// <summary>What was measured.</summary>
    public IReadOnlyList<(string What, double Milliseconds)> All => _all;

    /// <summary>The delay that so large a share keeps below.</summary>
    public double At(double share)
    {
        var sorted = _all.Select(d => d.Milliseconds).Order().ToArray();
        return sorted.Length == 0 ? 0 : sorted[Math.Min(sorted.Length - 1, (int)Math.Ceiling(share * sorted.Length) - 1)];
    }

    /// <summary>Lets the screens watch for what is about to change; nothing of it may be so already.</summary>
    public async Task<Watched> Watch(IReadOnlyCollection<Sight> sights)
    {
        var keyed = sights.Select(s => (Sight: s, Key: $"w{++_keys}")).ToArray();
        var already = await Task.WhenAll(keyed.GroupBy(k => k.Sight.Screen).Select(g => g.Key.Page.EvaluateAsync<string[]>(
            "list => jobboardEyes.watch(list)",
            g.Select(k => new { key = k.Key, selector = k.Sight.Selector, text = k.Sight.Text, gone = k.Sight.Gone }).ToArray())));
        var early = already.SelectMany(keys => keys).Select(key => keyed.First(k => k.Key == key).Sight).Select(s => $"{s.Screen.Name}, {s.Selector} \"{s.Text}\"");
        Assert.Empty(early);
        return new(this, keyed);
    }

    /// <summary>Sights being waited for.</summary>
    internal sealed class Watched(Delays delays, (Sight Sight, string Key)[] sights)
    {
        /// <summary>Waits until all are shown, and notes how long after the tap each was.</summary>
        /// <param name="what">What changed.</param>
        /// <param name="posted">When the tap was posted, as the page that sent it saw it.</param>
        public Task Shown(string what, double posted) => Task.WhenAll(sights.GroupBy(s => s.Sight.Screen).Select(g => Shown(what, posted, g.Key, [.. g])));

        private async Task Shown(string what, double posted, Screen screen, (Sight Sight, string Key)[] mine)
        {
            var since = Stopwatch.GetTimestamp();
            while (true)
            {
                var met = await screen.Page.EvaluateAsync<double[]>("keys => jobboardEyes.met(keys)", mine.Select(m => m.Key).ToArray());
                if (Array.TrueForAll(met, m => m >= 0))
                {
                    lock (delays._all) delays._all.AddRange(met.Select(m => ($"{what} on {screen.Name}", m - posted)));
                    return;
                }

                if (Stopwatch.GetElapsedTime(since) > GivesUpAfter) await Fail(what, screen, mine, met);
                await Task.Delay(60);
            }
        }

        private static async Task Fail(string what, Screen screen, (Sight Sight, string Key)[] mine, double[] met)
        {
            var missing = mine.Where((_, i) => met[i] < 0).Select(m => m.Sight).First();
            var shows = await screen.Page.Locator(missing.Selector).AllTextContentsAsync();
            Assert.Fail($"{what}: {screen.Name} does not show {(missing.Gone ? "that it is gone: " : "")}{missing.Selector} \"{missing.Text}\". It shows: {(shows.Count == 0 ? "nothing" : string.Join(" | ", shows))}");
        }
    }
}
