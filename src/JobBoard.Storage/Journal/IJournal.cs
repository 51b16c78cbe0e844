using JobBoard.Storage.Outcomes;

namespace JobBoard.Storage.Journal;

/// <summary>
/// A shop's day book. One writer, one group at a time; any number of readers, which see committed entries only.
/// All calls are plain and synchronous. Time and ids come from the caller.
/// </summary>
public interface IJournal : IDisposable
{
    /// <summary>The shop whose book this is.</summary>
    string ShopId { get; }

    /// <summary>Made at random when the book was made; another id means another book.</summary>
    Guid JournalId { get; }

    /// <summary>Groups made durable since the book was opened.</summary>
    long GroupsCommitted { get; }

    /// <summary>The last committed number; 0 when the book is empty.</summary>
    long Head();

    /// <summary>Committed entries from a number on, in order. What is read stays as it was when reading began.</summary>
    IEnumerable<JournalRow> Read(long fromSeq = 1);

    /// <summary>Committed entries of one stream from a version on, in order.</summary>
    IEnumerable<JournalRow> ReadStream(string stream, long fromVersion = 1);

    /// <summary>What was answered to a command, as committed.</summary>
    OutcomeLookup Find(Guid commandId, byte[] hash);

    /// <summary>Opens the one transaction in which waiting commands are written.</summary>
    /// <exception cref="InvalidOperationException">A group is already open.</exception>
    IAppendGroup BeginGroup();

    /// <summary>Reads the whole book and reports the first place where numbers or hashes do not follow.</summary>
    ChainCheck VerifyChain();

    /// <summary>Forgets outcomes given before an instant (Unix milliseconds); says how many. Entries stay.</summary>
    int PurgeOutcomes(long before);

    /// <summary>Fills every history table anew beside the live one, then swaps them.</summary>
    void RebuildHistory();
}

/// <summary>
/// Waiting commands that share one durable point. Each append or refusal has its own savepoint: one that throws leaves the
/// others as they were. Disposed without a commit, nothing is kept.
/// </summary>
public interface IAppendGroup : IDisposable
{
    /// <summary>The last number, tentative entries of this group included.</summary>
    long Head { get; }

    /// <summary>What was answered to a command, tentative answers of this group included.</summary>
    OutcomeLookup Find(Guid commandId, byte[] hash);

    /// <summary>Writes an accepted command: its entries and its outcome. No entries means it was accepted and nothing had to change.</summary>
    /// <returns>The entries with number, version and hashes.</returns>
    /// <exception cref="InvalidOperationException">The command already has an outcome; ask <see cref="Find"/> first.</exception>
    /// <exception cref="ArgumentException">An entry is not whole, or names another command.</exception>
    IReadOnlyList<JournalRow> Append(CommandOutcome command, IReadOnlyList<NewEntry> entries);

    /// <summary>Writes a refused command's outcome; the book itself does not change.</summary>
    /// <exception cref="InvalidOperationException">The command already has an outcome; ask <see cref="Find"/> first.</exception>
    void RecordRefusal(CommandOutcome command);

    /// <summary>
    /// Takes the bodies of earlier entries out for ever, and writes the entry that says so. Its body is a JSON object whose
    /// <c>blanks</c> is the number, or the list of numbers, in <paramref name="seqs"/>. History is rebuilt with it.
    /// </summary>
    /// <returns>The entry that says so.</returns>
    /// <exception cref="ArgumentException">A number names no earlier entry, one already blanked, or one that is itself a blanking.</exception>
    JournalRow Blank(CommandOutcome command, NewEntry entry, IReadOnlyList<long> seqs);

    /// <summary>Takes back the last append, refusal or blanking of this group, for a caller whose own folding of it failed.</summary>
    void DropLast();

    /// <summary>The durable point. When it returns, everything is on the disk; when it throws, nothing is kept.</summary>
    /// <exception cref="CommitFailedException">Nothing was kept and no command has an outcome.</exception>
    void Commit();
}
