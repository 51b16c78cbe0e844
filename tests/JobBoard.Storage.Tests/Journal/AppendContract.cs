using System.Text;
using JobBoard.Storage.History;
using JobBoard.Storage.Journal;
using JobBoard.Storage.Outcomes;

namespace JobBoard.Storage.Tests.Journal;

/// <summary>
/// What appending to a day book promises, case by case. A store of another kind is right when it passes this class;
/// nothing here knows how entries are kept.
/// </summary>
public abstract class AppendContract : IDisposable
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
    public void The_same_command_again_finds_its_first_answer()
    {
        using var journal = Open();
        var command = Command();
        Commit(journal, group => group.Append(command, [Entry("car-1", command), Entry("shop", command)]));

        var found = journal.Find(command.CommandId, [.. command.Hash]);

        Assert.Equal(OutcomeMatch.SameContent, found.Match);
        Assert.Equal(new StoredOutcome(command.CommandId, true, command.Outcome, 1, 2, command.Actor, command.At), found.Outcome);
    }

    [Fact]
    public void A_refusal_is_kept_and_the_book_does_not_change()
    {
        using var journal = Open();
        var command = Command();
        Commit(journal, group => group.RecordRefusal(command));

        var found = journal.Find(command.CommandId, command.Hash);

        Assert.Equal(new StoredOutcome(command.CommandId, false, command.Outcome, null, null, command.Actor, command.At), found.Outcome);
        Assert.Equal(0, journal.Head());
    }

    [Fact]
    public void The_same_id_with_other_content_is_told_apart()
    {
        using var journal = Open();
        var command = Command();
        Commit(journal, group => group.RecordRefusal(command));

        var found = journal.Find(command.CommandId, [9, 9]);

        Assert.Equal(new OutcomeLookup(OutcomeMatch.OtherContent, null), found);
    }

    [Fact]
    public void A_command_with_an_outcome_cannot_be_written_again()
    {
        using var journal = Open();
        var command = Command();
        Commit(journal, group => group.Append(command, [Entry("car-1", command)]));
        using var group = journal.BeginGroup();

        Assert.Throws<InvalidOperationException>(() => group.Append(command, [Entry("car-1", command)]));
        Assert.Throws<InvalidOperationException>(() => group.RecordRefusal(command with { Hash = [7] }));
        group.Commit();

        Assert.Equal(1, journal.Head());
    }

    [Fact]
    public void An_accepted_command_may_change_nothing()
    {
        using var journal = Open();
        var command = Command();

        Assert.Empty(Commit(journal, group => group.Append(command, [])));

        Assert.Equal(0, journal.Head());
        Assert.Equal(
            new StoredOutcome(command.CommandId, true, command.Outcome, null, null, command.Actor, command.At),
            journal.Find(command.CommandId, command.Hash).Outcome);
    }

    [Fact]
    public void Outcomes_before_an_instant_are_forgotten_entries_stay()
    {
        using var journal = Open();
        var (old, recent) = (Command(Noon), Command(Noon + 1));
        Commit(journal, group => group.Append(old, [Entry("car-1", old)]));
        Commit(journal, group => group.RecordRefusal(recent));

        Assert.Equal(1, journal.PurgeOutcomes(Noon + 1));

        Assert.Equal(OutcomeMatch.Unknown, journal.Find(old.CommandId, old.Hash).Match);
        Assert.Equal(OutcomeMatch.SameContent, journal.Find(recent.CommandId, recent.Hash).Match);
        Assert.Equal(1, journal.Head());
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

    [Fact]
    public void A_blanked_body_is_gone_and_the_chain_holds()
    {
        using var journal = Open();
        Append(journal, Entry("car-1"), Entry("car-1"), Entry("shop"));
        var before = journal.Read().ToList();

        var row = Blank(journal, 1, 2);

        var after = journal.Read().ToList();
        Assert.Equal(4, row.Seq);
        Assert.Equal(["", "", "{}"], after.Take(3).Select(r => r.Body));
        Assert.True(after[0].IsBlanked && after[1].IsBlanked && !after[2].IsBlanked);
        Assert.Equal(before.Select(r => Text(r with { Body = "", BodySalt = [] })), after.Take(3).Select(r => Text(r with { Body = "", BodySalt = [] })));
        Assert.True(journal.VerifyChain().Holds);
    }

    [Fact]
    public void A_blanking_that_is_dropped_leaves_the_body()
    {
        using var journal = Open();
        Append(journal, Entry("car-1"));
        using (var group = journal.BeginGroup())
        {
            var command = Command();
            group.Blank(command, Blanks(command, "1"), [1]);
            group.DropLast();
            group.Commit();
        }

        Assert.Equal(["{}"], journal.Read().Select(r => r.Body));
        Assert.True(journal.VerifyChain().Holds);
    }

    [Theory]
    [InlineData("1", 2L)]
    [InlineData("[1, 2]", 1L)]
    [InlineData("9", 9L)]
    [InlineData("0", 0L)]
    [InlineData("3", 3L)]
    [InlineData("4", 4L)]
    [InlineData("null", 1L)]
    public void A_blanking_that_does_not_fit_is_not_taken(string named, long seq)
    {
        using var journal = Open();
        Append(journal, Entry("car-1"), Entry("car-1"), Entry("car-1"));
        Blank(journal, 3);
        var before = journal.Read().Select(Text).ToList();
        using (var group = journal.BeginGroup())
        {
            var command = Command();
            Assert.Throws<ArgumentException>(() => group.Blank(command, Blanks(command, named), [seq]));
            group.Commit();
        }

        Assert.Equal(before, journal.Read().Select(Text));
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

    private static NewEntry Blanks(CommandOutcome command, string named) =>
        new("shop", "TextTakenOut", 1, $$"""{"blanks":{{named}}}""", "p-1", Noon, command.CommandId);

    private static IReadOnlyList<JournalRow> Append(IJournal journal, params NewEntry[] entries)
    {
        var command = Command();
        return Commit(journal, group => group.Append(command, [.. entries.Select(e => e with { CommandId = command.CommandId })]));
    }

    private static JournalRow Blank(IJournal journal, params long[] seqs)
    {
        var command = Command();
        return Commit(journal, group => group.Blank(command, Blanks(command, $"[{string.Join(',', seqs)}]"), seqs));
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
