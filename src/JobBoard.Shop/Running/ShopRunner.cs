using System.Threading.Channels;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Rules;
using JobBoard.Storage;
using JobBoard.Storage.Journal;

namespace JobBoard.Shop.Running;

/// <summary>
/// The running shop: one queue, one writer. Commands are decided one after another; those that wait share one commit, each
/// deciding on the tentative state left by the one before. Readers see committed state only.
/// </summary>
public sealed class ShopRunner : IAsyncDisposable
{
    /// <summary>Commands that may wait; more are answered as unavailable.</summary>
    public const int QueueLength = 4096;

    /// <summary>Outcomes are kept this long.</summary>
    public static readonly TimeSpan OutcomesKept = TimeSpan.FromDays(90);

    private const int GroupLimit = 64;

    private readonly Channel<Waiting> _queue = Channel.CreateBounded<Waiting>(new BoundedChannelOptions(QueueLength) { SingleReader = true });
    private readonly IJournal _journal;
    private readonly RuleBook _rules;
    private readonly TimeProvider _shopClock;
    private readonly Thread _writer;
    private readonly TaskCompletionSource _ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile ShopState _state;
    private DateTimeOffset _purgedAt;

    private ShopRunner(IJournal journal, RuleBook rules, TimeProvider shopClock, ShopState state)
    {
        (_journal, _rules, _shopClock, _state) = (journal, rules, shopClock, state);
        _writer = new Thread(Write) { IsBackground = true, Name = "day book" };
    }

    /// <summary>Raised after each commit, and by <see cref="Pulse"/>; carries nothing and must be taken lightly: it runs on the writer's thread.</summary>
    public event Action? HeadMoved;

    /// <summary>The committed state of the shop.</summary>
    public ShopState State => _state;

    /// <summary>The shop's time now: never before the last entry.</summary>
    public DateTimeOffset Now => NowAfter(_state);

    /// <summary>The committed head, evaluated now.</summary>
    public Head Head
    {
        get
        {
            var state = _state;
            return new Head(_journal.JournalId, state.Seq, NowAfter(state));
        }
    }

    /// <summary>The day book's id.</summary>
    public Guid JournalId => _journal.JournalId;

    /// <summary>The rules in force.</summary>
    public RuleBook Rules => _rules;

    /// <summary>Reads the day book, folds it and starts taking commands.</summary>
    /// <param name="journal">The day book; the runner is its only writer from now on and does not dispose it.</param>
    /// <param name="rules">The rules in force.</param>
    /// <param name="shopClock">The shop's time.</param>
    /// <exception cref="Domain.Entries.UnknownEntryException">The day book was written by a newer program.</exception>
    public static ShopRunner Start(IJournal journal, RuleBook rules, TimeProvider shopClock)
    {
        var runner = new ShopRunner(journal, rules, shopClock, DayBook.Fold(journal));
        runner._writer.Start();
        return runner;
    }

    /// <summary>Sends a command and waits until it is decided and, when accepted, on the disk.</summary>
    public Task<Outcome> Send(Envelope envelope) => Send(new Waiting(envelope, null));

    /// <summary>Sends a command of a made-up past: decided and recorded at a time that may lie before now, but not before the last entry.</summary>
    internal Task<Outcome> SendAt(Envelope envelope, DateTimeOffset at) => Send(new Waiting(envelope, at));

    private Task<Outcome> Send(Waiting waiting)
    {
        return _queue.Writer.TryWrite(waiting)
            ? waiting.Answer.Task
            : Task.FromResult<Outcome>(new Outcome.Unavailable("Too many commands wait, or the shop is closing down. Nothing was changed; send it again."));
    }

    /// <summary>Committed entries from a number on, as they are kept; for looking back. Never on the path of a command.</summary>
    public IEnumerable<JournalRow> Entries(long fromSeq) => _journal.Read(fromSeq);

    /// <summary>Raises <see cref="HeadMoved"/> without an entry: time alone has changed the picture.</summary>
    internal void Signal() => HeadMoved?.Invoke();

    /// <summary>Takes no more commands, answers those that wait and ends the writer.</summary>
    public async ValueTask DisposeAsync()
    {
        _queue.Writer.TryComplete();
        await _ended.Task.ConfigureAwait(false);
    }

    private void Write()
    {
        var group = new List<Waiting>(GroupLimit);
        while (_queue.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
        {
            group.Clear();
            while (group.Count < GroupLimit && _queue.Reader.TryRead(out var waiting)) group.Add(waiting);
            WriteGroup(group);
        }

        _ended.SetResult();
    }

    private void WriteGroup(List<Waiting> waiting)
    {
        try
        {
            var before = _state.Seq;
            PurgeDaily();
            using (var group = _journal.BeginGroup())
            {
                var decided = new GroupDecision(group, _rules, _state);
                foreach (var one in waiting) one.Decided = decided.Decide(one.Envelope, NowAfter(decided.State, one.At), one.Answer);
                group.Commit();
                _state = decided.State;
            }

            foreach (var one in waiting) one.Answer.TrySetResult(one.Decided!);
            if (_state.Seq > before) Signal();
        }
        catch (StorageException error)
        {
            var answer = new Outcome.Unavailable("The day book could not be written; nothing was changed. Send it again. (" + error.Message + ")");
            foreach (var one in waiting) one.Answer.TrySetResult(answer);
        }
    }

    private void PurgeDaily()
    {
        var now = NowAfter(_state);
        if (now - _purgedAt < TimeSpan.FromDays(1)) return;
        _purgedAt = now;
        _journal.PurgeOutcomes((now - OutcomesKept).ToUnixTimeMilliseconds());
    }

    // Whole milliseconds, as the day book keeps them: what is folded now equals what is folded after a restart.
    private DateTimeOffset NowAfter(ShopState state, DateTimeOffset? at = null)
    {
        var now = DateTimeOffset.FromUnixTimeMilliseconds((at ?? _shopClock.GetUtcNow()).ToUnixTimeMilliseconds());
        return now < state.RecordedAt ? state.RecordedAt : now;
    }

    private sealed class Waiting(Envelope envelope, DateTimeOffset? at)
    {
        public Envelope Envelope => envelope;

        public DateTimeOffset? At => at;

        public TaskCompletionSource<Outcome> Answer { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Outcome? Decided { get; set; }
    }
}
