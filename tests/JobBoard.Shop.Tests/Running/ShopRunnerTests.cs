using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Domain.Rules;
using JobBoard.Domain.Work;
using JobBoard.Shop.Running;

namespace JobBoard.Shop.Tests.Running;

/// <summary>One queue, one writer, each command once, and a restart that changes nothing.</summary>
public class ShopRunnerTests
{
    [Fact]
    public async Task Waiting_commands_share_one_commit()
    {
        await using var shop = await LiveShop.Start();
        Task<Outcome>[] sent;
        long before;
        using (await shop.HoldWriter())
        {
            before = shop.Journal.GroupsCommitted;
            sent = [.. Enumerable.Range(0, 10).Select(i => shop.Send("ada", new SetPerson($"p-{i}", $"P {i}", Position.Technician)))];
        }

        var outcomes = await Task.WhenAll(sent);

        Assert.All(outcomes, o => Assert.IsType<Outcome.Accepted>(o));
        Assert.Equal(before + 1, shop.Journal.GroupsCommitted);
    }

    [Fact]
    public async Task Each_decides_on_what_the_one_before_left()
    {
        await using var shop = await (await LiveShop.Start()).WithCar(LiveShop.Plan(LiveShop.Task("a")));
        var seen = shop.State.Seq;
        Task<Outcome> first, second;
        using (await shop.HoldWriter())
        {
            first = shop.Send("inga", LiveShop.Begin("a", "inga"), seen);
            second = shop.Send("sol", LiveShop.Begin("a", "sol"), seen);
        }

        Assert.IsType<Outcome.Accepted>(await first);
        var refused = Assert.IsType<Outcome.Refused>(await second);
        Assert.Contains(refused.Reasons, r => r.Rule == RuleBook.Ids.Stale && shop.State.Say(r.Words).Contains("Inga", StringComparison.Ordinal));
        Assert.Equal("inga", Assert.Single(shop.State.Cars["heron"].Tasks["a"].Crew).Person);
    }

    [Fact]
    public async Task The_same_command_twice_is_done_once()
    {
        await using var shop = await LiveShop.Start();
        var letter = shop.Letter("ada", new SetPerson("tove", "Tove", Position.Technician));

        var first = await shop.Runner.Send(letter);
        var head = shop.State.Seq;
        var second = await shop.Runner.Send(letter with { OccurredAt = letter.OccurredAt.AddMinutes(1) });

        Assert.Equal(first, second);
        Assert.Equal(head, shop.State.Seq);
        Assert.Equal(head, shop.Journal.Head());
    }

    [Fact]
    public async Task Sent_twice_within_one_group_it_is_done_once()
    {
        await using var shop = await LiveShop.Start();
        var letter = shop.Letter("ada", new SetPerson("tove", "Tove", Position.Technician));
        Task<Outcome> first, second;
        using (await shop.HoldWriter()) (first, second) = (shop.Runner.Send(letter), shop.Runner.Send(letter));

        Assert.IsType<Outcome.Accepted>(await first);
        Assert.Equal(await first, await second);
    }

    [Fact]
    public async Task The_same_id_for_something_else_is_refused()
    {
        await using var shop = await LiveShop.Start();
        var letter = shop.Letter("ada", new SetPerson("tove", "Tove", Position.Technician));
        await shop.Runner.Send(letter);
        var head = shop.State.Seq;

        var other = await shop.Runner.Send(letter with { Command = new SetPerson("tove", "Tova", Position.Technician) });
        var byAnother = await shop.Runner.Send(letter with { Actor = "inga" });
        var seenOther = await shop.Runner.Send(letter with { Seen = 3 });

        Assert.IsType<Outcome.OtherContent>(other);
        Assert.IsType<Outcome.OtherContent>(byAnother);
        Assert.IsType<Outcome.OtherContent>(seenOther);
        Assert.Equal(head, shop.State.Seq);
    }

    [Fact]
    public async Task A_refusal_is_kept_through_a_restart()
    {
        await using var shop = await (await LiveShop.Start()).WithCar(LiveShop.Plan(LiveShop.Task("a")));
        var letter = shop.Letter("inga", new SignOffTask { Car = "heron", Task = "a" });
        var first = Assert.IsType<Outcome.Refused>(await shop.Runner.Send(letter));

        await shop.Restart();
        await shop.Does("inga", LiveShop.Begin("a", "inga"));
        var second = Assert.IsType<Outcome.Refused>(await shop.Runner.Send(letter));

        Assert.Equal(first.Reasons.Select(r => r.Words), second.Reasons.Select(r => r.Words));
    }

    [Fact]
    public async Task A_failed_commit_keeps_nothing_and_no_outcome()
    {
        await using var shop = await LiveShop.Start();
        var (before, head) = (LiveShop.Picture(shop.State), shop.Journal.Head());
        var letters = Enumerable.Range(0, 3).Select(i => shop.Letter("ada", new SetPerson($"p-{i}", $"P {i}", Position.Technician))).ToArray();
        Execute(shop, BreakCommits);

        var failed = await Task.WhenAll(letters.Select(shop.Runner.Send));

        Assert.All(failed, o => Assert.IsType<Outcome.Unavailable>(o));
        Assert.Equal(before, LiveShop.Picture(shop.State));
        Assert.Equal(head, shop.Journal.Head());

        Execute(shop, "DROP TRIGGER break_commits");
        var again = await Task.WhenAll(letters.Select(shop.Runner.Send));
        Assert.All(again, o => Assert.IsType<Outcome.Accepted>(o));
    }

    [Fact]
    public async Task Restart_equals_uninterrupted()
    {
        await using var shop = await (await LiveShop.Start()).WithCar(LiveShop.Plan(LiveShop.Task("a"), LiveShop.Task("b")));
        await shop.Does("inga", LiveShop.Begin("a", "inga"));
        shop.Clock.Advance(TimeSpan.FromMinutes(42.123));
        await shop.Does("inga", new LeavePartDone { Car = "heron", Task = "a" });
        await shop.Does("sol", new RaiseStop(Domain.Holds.StopScope.Car, "fuel weep at the filter") { Car = "heron" });
        await shop.Does("ada", new GiveDate(LiveShop.Monday.AddDays(9), "asked for") { Car = "heron" });
        var before = LiveShop.Picture(shop.State);

        await shop.Restart();

        Assert.Equal(before, LiveShop.Picture(shop.State));
        Assert.True(shop.Journal.VerifyChain().Holds);
    }

    [Fact]
    public async Task Time_never_goes_back()
    {
        await using var shop = await LiveShop.Start();
        await shop.Does("ada", new GoOut("ada"));
        var recorded = shop.State.RecordedAt;

        shop.Clock.AdjustTime(LiveShop.Monday.AddDays(-1));
        await shop.Does("ada", new ComeIn("ada"));

        Assert.Equal(recorded, shop.State.RecordedAt);
    }

    [Fact]
    public async Task Late_word_keeps_when_it_happened()
    {
        await using var shop = await (await LiveShop.Start()).WithCar(LiveShop.Plan(LiveShop.Task("a")));
        shop.Clock.Advance(TimeSpan.FromHours(3));
        var letter = shop.Letter("sol", new RaiseSnag("scratch", "scratch on the sill") { Car = "heron" }) with { OccurredAt = LiveShop.Monday.AddHours(1) };

        await shop.Runner.Send(letter);

        Assert.Equal(LiveShop.Monday.AddHours(1), shop.State.Cars["heron"].Snags["scratch"].RaisedAt);
        Assert.Equal(LiveShop.Monday.AddHours(3), shop.State.RecordedAt);
    }

    [Fact]
    public async Task The_head_moves_once_for_each_commit()
    {
        await using var shop = await LiveShop.Start();
        var moved = 0;
        shop.Runner.HeadMoved += () => Interlocked.Increment(ref moved);

        await shop.Does("ada", new GoOut("ada"));
        await shop.Send("ada", new GoOut("nobody"));
        await shop.Does("ada", new ComeIn("ada"));

        Assert.Equal(2, Volatile.Read(ref moved));
    }

    [Fact]
    public async Task Nothing_is_taken_after_the_shop_has_closed()
    {
        await using var shop = await LiveShop.Start();
        await shop.Runner.DisposeAsync();

        Assert.IsType<Outcome.Unavailable>(await shop.Send("ada", new GoOut("ada")));
    }

    // The commit itself fails: a reference that is only checked there leads nowhere.
    private const string BreakCommits =
        """
        CREATE TABLE nowhere (id INTEGER PRIMARY KEY);
        CREATE TABLE leads (id INTEGER REFERENCES nowhere (id) DEFERRABLE INITIALLY DEFERRED);
        CREATE TRIGGER break_commits AFTER INSERT ON journal BEGIN INSERT INTO leads VALUES (1); END;
        """;

    private static void Execute(LiveShop shop, string sql)
    {
        using var raw = shop.Raw();
        using var command = raw.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
