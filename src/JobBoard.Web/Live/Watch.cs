using System.Diagnostics;
using JobBoard.Shop.Running;

namespace JobBoard.Web.Live;

/// <summary>A fragment that somebody watches: what they were last sent.</summary>
internal sealed class Watch(FragmentId id)
{
    private readonly SemaphoreSlim _gate = new(1, 1);
    private readonly Lock _count = new();
    private string? _html;
    private int _watchers;
    private bool _closed;

    public FragmentId Id => id;

    /// <summary>How long it took to render last; the quick ones go first, so that a stop is not behind a map.</summary>
    public TimeSpan Took { get; private set; }

    /// <summary>One connection more; false when it was closed meanwhile and a new one has to be made.</summary>
    public bool TryEnter()
    {
        lock (_count)
        {
            if (_closed) return false;
            _watchers++;
            return true;
        }
    }

    /// <summary>One connection less.</summary>
    public void Leave()
    {
        lock (_count) _watchers--;
    }

    /// <summary>Closes it when nobody watches any more; says whether it is closed.</summary>
    public bool CloseIfEmpty()
    {
        lock (_count) return _closed |= _watchers == 0;
    }

    /// <summary>Renders it; says what changed, or nothing when it is as it was. One at a time, so that turns and html go together.</summary>
    public async Task<(FragmentPush Now, bool Changed)> Render(Fragments fragments, Picture picture)
    {
        await _gate.WaitAsync().ConfigureAwait(false);
        try
        {
            var begun = Stopwatch.GetTimestamp();
            var html = await fragments.Render(id, picture).ConfigureAwait(false);
            Took = Stopwatch.GetElapsedTime(begun);
            var changed = html != _html;
            if (changed) (_html, Turn) = (html, Turn + 1);
            return (FragmentPush.Of(id, picture.Head, Turn, html), changed);
        }
        finally
        {
            _gate.Release();
        }
    }

    /// <summary>How often it has changed since it was first watched.</summary>
    public long Turn { get; private set; }
}

/// <summary>A fragment as it is pushed.</summary>
/// <param name="JournalId">The day book: another one than the page's means load again.</param>
/// <param name="Seq">The last entry in the picture.</param>
/// <param name="At">The shop's time of the picture, Unix milliseconds.</param>
/// <param name="Id">Which fragment.</param>
/// <param name="Turn">Counts its changes: one left out is a gap.</param>
/// <param name="Html">What it looks like now.</param>
public sealed record FragmentPush(Guid JournalId, long Seq, long At, string Id, long Turn, string Html)
{
    internal static FragmentPush Of(FragmentId id, Head head, long turn, string html) =>
        new(head.JournalId, head.Seq, head.At.ToUnixTimeMilliseconds(), id.ToString(), turn, html);
}

/// <summary>Sent every two seconds: the feed is alive, and everything up to this entry has been pushed.</summary>
/// <param name="JournalId">The day book.</param>
/// <param name="Build">The program: another one than the page's means load again.</param>
/// <param name="Seq">The last entry that was pushed.</param>
/// <param name="At">The shop's time, Unix milliseconds.</param>
/// <param name="Pace">How many times as fast as a device's the shop's time runs; 1 but in a paced demo.</param>
public sealed record Beat(Guid JournalId, string Build, long Seq, long At, int Pace = 1);
