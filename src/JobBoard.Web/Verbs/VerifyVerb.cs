using System.Globalization;
using JobBoard.Web.Hosting;

namespace JobBoard.Web.Verbs;

/// <summary><c>jobboard verify</c>: whether every entry of the day book follows from the one before.</summary>
internal static class VerifyVerb
{
    public static async Task<int> Run(Options options, TextWriter output)
    {
        using var book = ClosedShop.Open(options["data"]);
        var check = book.Journal.VerifyChain();
        await output.WriteLineAsync(check.FirstBreak is { } broken
            ? string.Create(CultureInfo.InvariantCulture, $"{book.Folder.Path}: entry {broken.Seq}: {broken.Words}. {check.Entries} entries before it follow.")
            : string.Create(CultureInfo.InvariantCulture, $"{book.Folder.Path}: all {check.Entries} entries follow. Head {Convert.ToHexStringLower(check.HeadHash)}."))
            .ConfigureAwait(false);
        return check.Holds ? 0 : 1;
    }
}
