using JobBoard.Shop.Running;
using JobBoard.Storage.Folder;
using JobBoard.Web.Live;

namespace JobBoard.Web.Paper;

/// <summary>
/// Writes the evening's sheets by itself when the shop's time reaches it, into <c>paper/YYYY-MM-DD</c> of the data folder; at a
/// start the last evening's where they are missing. What does not work is said on the owner's page and tried again.
/// </summary>
public sealed class EveningPaper(ShopRunner runner, Fragments fragments, PaperFolder paper, PaperTimes times, PaperPlace place, ILogger<EveningPaper> log) : BackgroundService
{
    private static readonly TimeSpan LooksEvery = TimeSpan.FromSeconds(5);
    private volatile string? _failure;

    /// <summary>Where the sheets are.</summary>
    public string Root => place.Root;

    /// <summary>When they are written, in words.</summary>
    public string When => times.Words(runner.State);

    /// <summary>Why the last evening's are missing, or nothing.</summary>
    public string? Failure => _failure;

    /// <summary>Writes what is due and missing; does nothing where there is no car.</summary>
    public async Task Look()
    {
        var picture = fragments.Picture();
        if (picture.Shop.Cars.IsEmpty || times.LastDue(picture.Shop, picture.Now) is not { } day || Directory.Exists(PaperFolder.Of(Root, day))) return;
        try
        {
            await paper.Write(picture, PaperFolder.Of(Root, day), PaperWords.ByItself).ConfigureAwait(false);
            PaperFolder.Tidy(Root);
            _failure = null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            if (_failure != e.Message) log.LogError(e, "The sheets of {Day} could not be written.", day);
            _failure = e.Message;
        }
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var every = new PeriodicTimer(LooksEvery);
        do await Look().ConfigureAwait(false);
        while (await every.WaitForNextTickAsync(stoppingToken).ConfigureAwait(false));
    }
}

/// <summary>Where the evening's sheets go.</summary>
/// <param name="Root">The folder above those of the days.</param>
public sealed record PaperPlace(string Root)
{
    /// <summary>In a shop's data folder.</summary>
    public static PaperPlace In(string data) => new(Path.Combine(data, "paper"));
}
