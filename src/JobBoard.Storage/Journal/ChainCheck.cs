namespace JobBoard.Storage.Journal;

/// <summary>What reading the whole book found.</summary>
/// <param name="Entries">Entries that follow from the first, up to the break if there is one.</param>
/// <param name="HeadHash">Hash of the last entry that follows; written down elsewhere it shows later whether the end was cut off.</param>
/// <param name="FirstBreak">The first broken place, or null.</param>
public sealed record ChainCheck(long Entries, byte[] HeadHash, ChainBreak? FirstBreak)
{
    /// <summary>True when every entry follows from the one before.</summary>
    public bool Holds => FirstBreak is null;
}

/// <summary>A place where the book does not follow.</summary>
/// <param name="Seq">Number of the entry, or the number that is missing.</param>
/// <param name="Words">What is wrong there.</param>
public sealed record ChainBreak(long Seq, string Words);

/// <summary>Walks entries in order and stops at the first that does not follow.</summary>
internal sealed class ChainWalk(string shopId, IReadOnlySet<long> blanked)
{
    private readonly Dictionary<string, long> _versions = [];
    private byte[] _last = ChainHash.Start;
    private long _seq;

    public ChainCheck Run(IEnumerable<StoredRow> rows)
    {
        foreach (var row in rows)
        {
            if (Fault(row) is { } words)
            {
                return new ChainCheck(_seq, _last, new ChainBreak(row.Seq > _seq + 1 ? _seq + 1 : row.Seq, words));
            }

            (_seq, _last, _versions[row.Stream]) = (row.Seq, row.EntryHash, row.Version);
        }

        return new ChainCheck(_seq, _last, null);
    }

    private string? Fault(StoredRow row)
    {
        if (row.Seq != _seq + 1)
        {
            return "this number is missing";
        }

        if (row.ShopId != shopId)
        {
            return "the entry belongs to another shop";
        }

        if (row.Version != _versions.GetValueOrDefault(row.Stream) + 1)
        {
            return $"the version does not follow in stream {row.Stream}";
        }

        return HashFault(row);
    }

    private string? HashFault(StoredRow row)
    {
        if (!row.PrevHash.AsSpan().SequenceEqual(_last))
        {
            return "the hash of the entry before it is not the one it was written after";
        }

        if (!row.EntryHash.AsSpan().SequenceEqual(ChainHash.Entry(row)))
        {
            return "the entry is not as it was written";
        }

        if (row.BodySalt.Length == 0)
        {
            return row.Body.Length == 0 && blanked.Contains(row.Seq) ? null : "the body was taken out without an entry that says so";
        }

        return row.BodyCommitment.AsSpan().SequenceEqual(ChainHash.Commitment(row.BodySalt, row.Body)) ? null : "the body is not as it was written";
    }
}
