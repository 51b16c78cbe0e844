using JobBoard.Storage.Outcomes;

namespace JobBoard.Storage.Tests.Journal;

/// <summary>Each command has one outcome.</summary>
public abstract partial class AppendContract
{
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
}
