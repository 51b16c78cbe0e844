using System.Globalization;
using JobBoard.Shop.Dates;
using JobBoard.Shop.Running;
using JobBoard.Web.Hosting;
using JobBoard.Web.Live;
using JobBoard.Web.Paper;

namespace JobBoard.Web.Verbs;

/// <summary><c>jobboard paper</c>: the sheets of all cars and of the shop, by hand.</summary>
internal static class PaperVerb
{
    public static async Task<int> Run(string[] args, TextWriter output)
    {
        if (args.Length == 0 || args[^1].StartsWith('-')) throw new CommandLineException("'paper' needs the folder to write into as its last word: jobboard paper [--data DIR] OUT.");
        var (options, folder) = (Options.Read("paper", args[..^1], "data"), args[^1]);
        if (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any() && !File.Exists(Path.Combine(folder, PaperFolder.Style)))
            throw new CommandLineException($"{folder} has other things in it: name a new folder, or one with sheets.");
        using var book = ClosedShop.Open(options["data"]);
        var state = DayBook.Fold(book.Journal);
        var now = TimeProvider.System.GetUtcNow();
        var picture = new Picture(state, new Head(book.Journal.JournalId, state.Seq, now < state.RecordedAt ? state.RecordedAt : now), new DateBook());
        await using var services = new ServiceCollection().AddLogging().BuildServiceProvider();
        var sheets = await new PaperFolder(new Markup(services, services.GetRequiredService<ILoggerFactory>())).Write(picture, folder, PaperWords.ByHand).ConfigureAwait(false);
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{sheets} sheets in {Path.GetFullPath(folder)}. Open and print them in any browser; no server is needed.")).ConfigureAwait(false);
        return 0;
    }
}
