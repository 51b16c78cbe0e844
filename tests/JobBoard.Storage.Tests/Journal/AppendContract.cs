using System.Text;
using JobBoard.Storage.History;
using JobBoard.Storage.Journal;
using JobBoard.Storage.Outcomes;

namespace JobBoard.Storage.Tests.Journal;

/// <summary>
/// What appending to a day book promises, case by case. A store of another kind is right when it passes this class;
/// nothing here knows how entries are kept.
/// </summary>
public abstract partial class AppendContract : IDisposable
{
    private const long Noon = 1_700_000_000_000;

    /// <summary>Opens the book of this test, the same one each time; a new book for every test.</summary>
    protected abstract IJournal Open(params IHistoryProjection[] projections);

    /// <summary>A projection that lets every append through and then makes the durable point fail, as long as it is told to.</summary>
    protected abstract IHistoryProjection FailingAtCommit(Func<bool> fail);

    public virtual void Dispose() => GC.SuppressFinalize(this);

    [Fact]
    public void A_new_book_is_empty_and_its_head_is_zero()
    {
        using var journal = Open();

        Assert.Equal(0, journal.Head());
        Assert.Empty(journal.Read());
        Assert.True(journal.VerifyChain().Holds);
    }

    [Fact]
    public void Numbers_run_from_one_without_gaps_over_all_streams()
    {
        using var journal = Open();

        Append(journal, Entry("car-1"), Entry("shop"));
        Append(journal, Entry("car-1"));

        Assert.Equal([1L, 2, 3], journal.Read().Select(r => r.Seq));
        Assert.Equal(3, journal.Head());
    }

    [Fact]
    public void Versions_run_from_one_within_each_stream()
    {
        using var journal = Open();

        Append(journal, Entry("car-1"), Entry("shop"), Entry("car-1"));
        Append(journal, Entry("shop"));

        Assert.Equal([1L, 1, 2, 2], journal.Read().Select(r => r.Version));
    }

    [Fact]
    public void An_entry_is_read_back_as_it_was_written()
    {
        using var journal = Open();
        var entry = new NewEntry("car-1", "SnagRaised", 3, """{"words":"Öse, 3 µm – «lose»"}""", "p-7", Noon - 5, Guid.NewGuid());

        var written = Commit(journal, group => group.Append(new(entry.CommandId, [1], "{}", "p-7", Noon), [entry])).Single();

        var read = journal.Read().Single();
        Assert.Equal(Text(written), Text(read));
        Assert.Equal(entry, new NewEntry(read.Stream, read.Kind, read.Schema, read.Body, read.Actor, read.OccurredAt, read.CommandId));
        Assert.Equal(Noon, read.RecordedAt);
        Assert.Equal(journal.ShopId, read.ShopId);
    }

    [Fact]
    public void Each_entry_carries_the_hash_of_the_one_before()
    {
        using var journal = Open();

        Append(journal, Entry("car-1"), Entry("car-1"));
        Append(journal, Entry("shop"));

        var rows = journal.Read().ToList();
        Assert.Equal(new byte[32], rows[0].PrevHash);
        Assert.Equal(rows[0].EntryHash, rows[1].PrevHash);
        Assert.Equal(rows[1].EntryHash, rows[2].PrevHash);
        Assert.Equal(rows[2].EntryHash, journal.VerifyChain().HeadHash);
        Assert.True(journal.VerifyChain().Holds);
    }

    [Fact]
    public void Equal_bodies_have_unequal_commitments()
    {
        using var journal = Open();

        Append(journal, Entry("car-1"), Entry("car-1"));

        var rows = journal.Read().ToList();
        Assert.Equal(rows[0].Body, rows[1].Body);
        Assert.NotEqual(rows[0].BodyCommitment, rows[1].BodyCommitment);
    }

    [Fact]
    public void Reading_starts_where_it_is_asked_to()
    {
        using var journal = Open();
        Append(journal, Entry("car-1"), Entry("shop"), Entry("car-1"), Entry("car-1"));

        Assert.Equal([3L, 4], journal.Read(3).Select(r => r.Seq));
        Assert.Empty(journal.Read(5));
        Assert.Equal([3L, 4], journal.ReadStream("car-1", 2).Select(r => r.Seq));
        Assert.Equal([1L, 3, 4], journal.ReadStream("car-1").Select(r => r.Seq));
        Assert.Empty(journal.ReadStream("car-2"));
    }

    [Fact]
    public void Commands_of_a_group_see_what_the_group_wrote_before()
    {
        using var journal = Open();
        using var group = journal.BeginGroup();
        var first = Command();

        group.Append(first, [Entry("car-1", first)]);

        Assert.Equal(1, group.Head);
        Assert.Equal(OutcomeMatch.SameContent, group.Find(first.CommandId, first.Hash).Match);
        var second = Command();
        var row = group.Append(second, [Entry("car-1", second)]).Single();
        Assert.Equal((2, 2), (row.Seq, row.Version));
    }

    [Fact]
    public void Readers_see_nothing_of_a_group_before_its_commit()
    {
        using var journal = Open();
        var command = Command();
        using var group = journal.BeginGroup();
        group.Append(command, [Entry("car-1", command)]);

        Assert.Equal(0, journal.Head());
        Assert.Empty(journal.Read());
        Assert.Equal(OutcomeMatch.Unknown, journal.Find(command.CommandId, command.Hash).Match);

        group.Commit();
        Assert.Equal(1, journal.Head());
        Assert.Equal(OutcomeMatch.SameContent, journal.Find(command.CommandId, command.Hash).Match);
    }

    [Fact]
    public void A_group_put_away_without_commit_leaves_nothing()
    {
        using var journal = Open();
        var command = Command();
        using (var group = journal.BeginGroup())
        {
            group.Append(command, [Entry("car-1", command)]);
        }

        Assert.Equal(0, journal.Head());
        Assert.Equal(OutcomeMatch.Unknown, journal.Find(command.CommandId, command.Hash).Match);
        Assert.Equal(1, Append(journal, Entry("car-1")).Single().Seq);
        Assert.Equal(1, journal.GroupsCommitted);
    }

    [Fact]
    public void A_commit_that_fails_leaves_nothing_of_any_command()
    {
        var fail = false;
        using var journal = Open(FailingAtCommit(() => fail));
        Append(journal, Entry("car-1"));
        var (accepted, refused) = (Command(), Command());

        fail = true;
        using (var group = journal.BeginGroup())
        {
            group.RecordRefusal(refused);
            group.Append(accepted, [Entry("car-1", accepted)]);
            Assert.Throws<CommitFailedException>(group.Commit);
        }

        Assert.Equal(1, journal.Head());
        Assert.Equal(OutcomeMatch.Unknown, journal.Find(accepted.CommandId, accepted.Hash).Match);
        Assert.Equal(OutcomeMatch.Unknown, journal.Find(refused.CommandId, refused.Hash).Match);
        Assert.Equal(1, journal.GroupsCommitted);
    }

    [Fact]
    public void The_same_command_goes_through_after_a_failed_commit()
    {
        var fail = true;
        using var journal = Open(FailingAtCommit(() => fail));
        var command = Command();
        using (var group = journal.BeginGroup())
        {
            group.Append(command, [Entry("car-1", command)]);
            Assert.Throws<CommitFailedException>(group.Commit);
        }

        fail = false;
        var row = Commit(journal, group => group.Append(command, [Entry("car-1", command)])).Single();

        Assert.Equal((1, 1), (row.Seq, row.Version));
        Assert.True(journal.VerifyChain().Holds);
    }

    [Fact]
    public void An_append_that_throws_leaves_the_others_of_its_group()
    {
        var throws = false;
        using var journal = Open(new Throwing(() => throws));
        var (good, bad, last) = (Command(), Command(), Command());
        using (var group = journal.BeginGroup())
        {
            group.Append(good, [Entry("car-1", good)]);
            throws = true;
            Assert.Throws<NotSupportedException>(() => group.Append(bad, [Entry("car-1", bad), Entry("shop", bad)]));
            throws = false;
            Assert.Equal(OutcomeMatch.Unknown, group.Find(bad.CommandId, bad.Hash).Match);
            group.Append(last, [Entry("car-1", last)]);
            group.Commit();
        }

        Assert.Equal([good.CommandId, last.CommandId], journal.Read().Select(r => r.CommandId));
        Assert.Equal([1L, 2], journal.Read().Select(r => r.Version));
        Assert.True(journal.VerifyChain().Holds);
    }

    [Fact]
    public void The_last_command_of_a_group_can_be_dropped()
    {
        using var journal = Open();
        var (kept, dropped) = (Command(), Command());
        using (var group = journal.BeginGroup())
        {
            group.Append(kept, [Entry("car-1", kept)]);
            group.Append(dropped, [Entry("car-1", dropped)]);
            group.DropLast();
            Assert.Equal(1, group.Head);
            Assert.Throws<InvalidOperationException>(group.DropLast);
            group.Commit();
        }

        Assert.Equal([kept.CommandId], journal.Read().Select(r => r.CommandId));
        Assert.Equal(OutcomeMatch.Unknown, journal.Find(dropped.CommandId, dropped.Hash).Match);
    }

    [Fact]
    public void An_entry_of_another_command_is_not_taken()
    {
        using var journal = Open();
        using var group = journal.BeginGroup();

        Assert.Throws<ArgumentException>(() => group.Append(Command(), [Entry("car-1", Command())]));

        Assert.Equal(0, group.Head);
    }

    [Theory]
    [InlineData("", "Noted", 1, "{}", "p-1")]
    [InlineData("car-1", "", 1, "{}", "p-1")]
    [InlineData("car-1", "Noted", 0, "{}", "p-1")]
    [InlineData("car-1", "Noted", 1, "", "p-1")]
    [InlineData("car-1", "Noted", 1, "{}", "")]
    public void An_entry_that_is_not_whole_is_not_taken(string stream, string kind, int schema, string body, string actor)
    {
        using var journal = Open();
        using var group = journal.BeginGroup();
        var command = Command();

        Assert.ThrowsAny<ArgumentException>(
            () => group.Append(command, [Entry("car-1", command), new(stream, kind, schema, body, actor, Noon, command.CommandId)]));

        Assert.Equal(0, group.Head);
        Assert.Equal(OutcomeMatch.Unknown, group.Find(command.CommandId, command.Hash).Match);
    }

    [Fact]
    public void A_second_group_waits_for_the_first_to_end()
    {
        using var journal = Open();
        using (journal.BeginGroup())
        {
            Assert.Throws<InvalidOperationException>(journal.BeginGroup);
            Assert.Throws<InvalidOperationException>(() => journal.PurgeOutcomes(0));
            Assert.Throws<InvalidOperationException>(journal.RebuildHistory);
        }

        journal.BeginGroup().Dispose();
    }

    [Fact]
    public void A_group_that_has_ended_takes_nothing_more()
    {
        using var journal = Open();
        var group = journal.BeginGroup();
        group.Commit();

        Assert.Throws<ObjectDisposedException>(() => group.RecordRefusal(Command()));
        Assert.Throws<ObjectDisposedException>(group.Commit);
        group.Dispose();
        Assert.Equal(1, journal.GroupsCommitted);
    }

    [Fact]
    public void A_book_opened_again_reads_the_same()
    {
        var command = Command();
        List<string> before;
        Guid id;
        using (var journal = Open())
        {
            Append(journal, Entry("car-1"), Entry("shop"));
            Commit(journal, group => group.Append(command, [Entry("car-1", command)]));
            (before, id) = ([.. journal.Read().Select(Text)], journal.JournalId);
        }

        using var again = Open();
        Assert.Equal(before, again.Read().Select(Text));
        Assert.Equal(id, again.JournalId);
        Assert.Equal(3, again.Find(command.CommandId, command.Hash).Outcome!.FirstSeq);
        Assert.Equal(4, Append(again, Entry("car-1")).Single().Seq);
        Assert.True(again.VerifyChain().Holds);
    }

    /// <summary>Everything of a row in one text, for comparing.</summary>
    protected static string Text(JournalRow row)
    {
        var text = new StringBuilder().AppendJoin('|', row.ShopId, row.Seq, row.Stream, row.Version, row.Kind, row.Schema, row.Body, row.Actor);
        text.Append('|').AppendJoin('|', row.OccurredAt, row.RecordedAt, row.CommandId);
        foreach (var bytes in (byte[][])[row.BodySalt, row.BodyCommitment, row.PrevHash, row.EntryHash])
        {
            text.Append('|').Append(Convert.ToHexString(bytes));
        }

        return text.ToString();
    }

    private static CommandOutcome Command(long at = Noon) => new(Guid.NewGuid(), [1, 2, 3], """{"words":"as decided"}""", "p-1", at);

    private static NewEntry Entry(string stream, CommandOutcome? command = null) =>
        new(stream, "Noted", 1, "{}", "p-1", Noon - 60_000, command?.CommandId ?? Guid.Empty);

    private static IReadOnlyList<JournalRow> Append(IJournal journal, params NewEntry[] entries)
    {
        var command = Command();
        return Commit(journal, group => group.Append(command, [.. entries.Select(e => e with { CommandId = command.CommandId })]));
    }

    private static T Commit<T>(IJournal journal, Func<IAppendGroup, T> write)
    {
        using var group = journal.BeginGroup();
        var result = write(group);
        group.Commit();
        return result;
    }

    private static void Commit(IJournal journal, Action<IAppendGroup> write) => Commit(journal, group =>
    {
        write(group);
        return 0;
    });

    private sealed class Throwing(Func<bool> now) : IHistoryProjection
    {
        public string Name => "throwing";

        public string Stamp => "1";

        public IReadOnlyList<HistoryTable> Tables => [];

        public void Apply(HistoryTarget target, JournalRow row)
        {
            if (now() && row.Stream == "shop")
            {
                throw new NotSupportedException();
            }
        }
    }
}
