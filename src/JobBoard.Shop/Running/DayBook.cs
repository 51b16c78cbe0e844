using System.Text.Json;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Entries;
using JobBoard.Storage;
using JobBoard.Storage.Journal;

namespace JobBoard.Shop.Running;

/// <summary>Between the day book as it is kept and entries as the Domain knows them.</summary>
public static class DayBook
{
    /// <summary>The state that the whole committed day book folds to.</summary>
    /// <exception cref="UnknownEntryException">It was written by a newer program.</exception>
    public static ShopState Fold(IJournal journal) => journal.Read().Aggregate(ShopState.Empty, Apply);

    /// <summary>Folds one entry as it is kept. A blanked one only takes its number: what it said is gone.</summary>
    public static ShopState Apply(ShopState state, JournalRow row) => row.IsBlanked
        ? state with { Seq = row.Seq, RecordedAt = At(row.RecordedAt) }
        : Folding.Apply(state, ToEntry(row));

    /// <summary>The entry in the Domain's words.</summary>
    /// <exception cref="StorageException">Its body is not as this program writes it.</exception>
    public static Entry ToEntry(JournalRow row)
    {
        try
        {
            return new(row.Seq, row.Stream, row.Actor, At(row.OccurredAt), At(row.RecordedAt), row.CommandId, EntryKinds.Read(row.Kind, row.Schema, row.Body));
        }
        catch (JsonException error)
        {
            throw new StorageException($"Entry {row.Seq} of the day book ({row.Kind}) cannot be read: {error.Message} 'jobboard verify' says whether the book is damaged.", error);
        }
    }

    /// <summary>What is to be written for a fact.</summary>
    internal static NewEntry ToNew(Fact fact, string actor, DateTimeOffset occurredAt, Guid commandId)
    {
        var kind = EntryKinds.KindOf(fact);
        return new NewEntry(fact.Stream, kind, EntryKinds.SchemaOf(kind), EntryKinds.Write(fact), actor, occurredAt.ToUnixTimeMilliseconds(), commandId);
    }

    private static DateTimeOffset At(long milliseconds) => DateTimeOffset.FromUnixTimeMilliseconds(milliseconds);
}
