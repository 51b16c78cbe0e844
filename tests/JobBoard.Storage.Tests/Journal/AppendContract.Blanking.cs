using JobBoard.Storage.Journal;
using JobBoard.Storage.Outcomes;

namespace JobBoard.Storage.Tests.Journal;

/// <summary>The one way in which a body goes.</summary>
public abstract partial class AppendContract
{
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

    private static NewEntry Blanks(CommandOutcome command, string named) =>
        new("shop", "TextTakenOut", 1, $$"""{"blanks":{{named}}}""", "p-1", Noon, command.CommandId);

    private static JournalRow Blank(IJournal journal, params long[] seqs)
    {
        var command = Command();
        return Commit(journal, group => group.Blank(command, Blanks(command, $"[{string.Join(',', seqs)}]"), seqs));
    }
}
