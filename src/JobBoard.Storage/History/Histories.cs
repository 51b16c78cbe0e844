using JobBoard.Domain.Entries;
using JobBoard.Storage.Journal;

namespace JobBoard.Storage.History;

/// <summary>The history a running shop keeps: hours, past readings, who did what.</summary>
public static class Histories
{
    /// <summary>All of it, to be given to the journal when it is opened.</summary>
    public static IReadOnlyList<IHistoryProjection> All { get; } = [new HoursHistory(), new ReadingsHistory(), new WhoDidWhat()];

    /// <summary>What an entry says, or null when its body was taken out.</summary>
    /// <exception cref="UnknownEntryException">The entry was written by a newer program.</exception>
    internal static Fact? FactOf(JournalRow row) => row.IsBlanked ? null : EntryKinds.Read(row.Kind, row.Schema, row.Body);

    internal static string IdOf(Guid command) => command.ToString("D");
}
