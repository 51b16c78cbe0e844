using JobBoard.EndToEnd.Browsers;
using JobBoard.EndToEnd.Crew;
using JobBoard.EndToEnd.Screens;
using Microsoft.Playwright;

namespace JobBoard.EndToEnd.Pages;

/// <summary>Every page of the demo at every width, with all that folds unfolded: nothing goes off to the side, no text is cut or covered by other text, targets are large enough for a glove.</summary>
[Collection(DemoShopTests.Name)]
public class GeometryTests(Chromium chromium, DemoShop demo)
{
    private static readonly (int Width, int Height)[] Sizes = [(360, 780), (412, 915), (820, 1180), (1440, 900), (1920, 1080), (3840, 2160)];

    // The floor and the picture of when a car is ready have tests of their own geometry.
    private static readonly string[] Drawn = ["/floor"];

    // What a technician sees of a page is at most what the owner sees, but for these.
    private static readonly string[] Technicians = ["/bay", "/cars/heron-coupe/task/lower-in", "/cars/siskin-pick-up/key-check", "/holds"];

    [Theory]
    [InlineData("inga")]
    [InlineData("marit")]
    public async Task Nothing_is_cut_or_covered(string person)
    {
        var browser = await chromium.Browser();
        var server = await demo.Server;
        await using var device = await Device.Open(browser, server.Url, Size.Desk, new Traffic(), server.Pins);
        var page = await device.Page("/sign-in");
        await device.SignIn(page, person);
        var paths = person == "marit" ? [.. PageTests.Everybodys.Except(Drawn), "/sign-in", .. PageTests.Foremans, .. PageTests.Owners] : Technicians;
        var faults = new List<string>();

        foreach (var path in paths)
        {
            Assert.Equal((path, 200), (path, (await page.GotoAsync(path))!.Status));
            await page.EvaluateAsync("() => document.fonts.ready.then(() => { for (const fold of document.querySelectorAll('main details')) fold.open = true; return true; })");
            foreach (var (width, height) in Sizes)
            {
                await page.SetViewportSizeAsync(width, height);
                faults.AddRange((await page.EvaluateAsync<string[]>(Look)).Select(f => $"{path} at {width}: {f}"));
            }
        }

        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    [Fact]
    public async Task Faults_are_seen()
    {
        var browser = await chromium.Browser();
        var page = await browser.NewPageAsync(new() { ViewportSize = new() { Width = 360, Height = 780 } });
        await page.SetContentAsync("""
            <body style="margin:0"><main>
            <p id="wide" style="width:500px">wide wide wide wide wide wide wide wide wide wide wide wide wide wide wide</p>
            <p id="cut" style="width:60px;overflow:hidden;white-space:nowrap">much too long for this</p>
            <p id="under">under</p><p id="over" style="margin-top:-34px">over</p>
            <button id="small">x</button>
            </main></body>
            """);

        var faults = string.Join('\n', await page.EvaluateAsync<string[]>(Look));
        await page.CloseAsync();

        foreach (var expected in new[] { "goes off to the side", "text beyond the edge: wide", "text is cut: cut", "lies over", "a target of" }) Assert.Contains(expected, faults, StringComparison.Ordinal);
    }

    /// <summary>Looks at the page as it is laid out. Things that lie over the page on purpose (bars that stick) and drawings are left out.</summary>
    private const string Look = """
        () => {
          const faults = [];
          const root = document.documentElement;
          if (root.scrollWidth > innerWidth) faults.push(`goes off to the side by ${root.scrollWidth - innerWidth} px`);
          const over = (e) => { for (; e && e !== document.body; e = e.parentElement) if (["sticky", "fixed", "absolute"].includes(getComputedStyle(e).position)) return true; return false; };
          const scrolls = (e) => { for (; e && e !== document.body; e = e.parentElement) if (["auto", "scroll"].includes(getComputedStyle(e).overflowX)) return true; return false; };
          const name = (e) => `${e.closest("[id]")?.id ?? ""} "${e.textContent.trim().slice(0, 40)}"`;
          const boxes = [];
          const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          for (let node = walk.nextNode(); node; node = walk.nextNode()) {
            const e = node.parentElement;
            if (!node.data.trim() || !e.checkVisibility({ contentVisibilityAuto: true }) || e.closest("svg, script, style, template, select, .visually-hidden, .skip-link") || over(e)) continue;
            const range = document.createRange();
            range.selectNodeContents(node);
            const free = scrolls(e);
            for (const r of range.getClientRects()) {
              if (r.width < 1 || r.height < 1) continue;
              if (!free && (r.right > innerWidth + 1 || r.left < -1)) faults.push(`text beyond the edge: ${name(e)}`);
              boxes.push({ r, e, free });
            }
            const cut = e.scrollWidth > e.clientWidth + 1 && ["hidden", "clip"].includes(getComputedStyle(e).overflowX);
            if (cut && e.clientWidth > 0) faults.push(`text is cut: ${name(e)}`);
          }
          boxes.sort((a, b) => a.r.top - b.r.top);
          for (let i = 0; i < boxes.length; i++) {
            for (let j = i + 1; j < boxes.length && boxes[j].r.top < boxes[i].r.bottom - 3; j++) {
              const [a, b] = [boxes[i], boxes[j]];
              if (a.e === b.e || a.free || b.free) continue;
              const [w, h] = [Math.min(a.r.right, b.r.right) - Math.max(a.r.left, b.r.left), Math.min(a.r.bottom, b.r.bottom) - Math.max(a.r.top, b.r.top)];
              if (w > 2 && h > 4) faults.push(`${name(a.e)} lies over ${name(b.e)}`);
            }
          }
          for (const e of document.querySelectorAll("button, summary, select, a.button, input:not([type=hidden])")) {
            if (!e.checkVisibility({ contentVisibilityAuto: true }) || e.closest("svg")) continue;
            const target = e.matches("[type=radio], [type=checkbox]") ? e.closest("label") ?? e : e;
            const r = target.getBoundingClientRect();
            if (r.height < 47.5 || r.width < 47.5) faults.push(`a target of ${Math.round(r.width)} by ${Math.round(r.height)} px: ${name(e)} ${e.name ?? ""}`);
          }
          return [...new Set(faults)].slice(0, 12);
        }
        """;
}
