using System.Globalization;
using JobBoard.Web.Hosting;

namespace JobBoard.Web.Verbs;

/// <summary><c>jobboard rebuild</c>: the history tables anew from the day book.</summary>
internal static class RebuildVerb
{
    public static async Task<int> Run(Options options, TextWriter output)
    {
        using var book = ClosedShop.Open(options["data"]);
        book.Journal.RebuildHistory();
        await output.WriteLineAsync(string.Create(
            CultureInfo.InvariantCulture, $"History of {book.Folder.Path} rebuilt from {book.Journal.Head()} entries.")).ConfigureAwait(false);
        return 0;
    }
}
