using CsCheck;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Plans;

public class PlanIndexTests
{
    private static readonly Aspect Tight = new("line", "tight");
    private static readonly Aspect Bonded = new("line", "bonded");

    [Fact]
    public void Closure_equals_the_naive_one_when_random() =>
        Gen.Select(Gen.Int[2, 90], Gen.Int[0, 200], Gen.Int[0, 1_000_000]).Sample((count, links, seed) =>
        {
            var random = new Random(seed);
            var pairs = Enumerable.Range(0, links).Select(_ => (random.Next(count), random.Next(count)))
                .Where(p => p.Item1 < p.Item2).ToArray();
            AssertClosure(count, pairs);
        });

    [Fact]
    public void Closure_equals_the_naive_one_when_circular() =>
        Gen.Select(Gen.Int[1, 20], Gen.Int[0, 40], Gen.Int[0, 1_000_000]).Sample((count, links, seed) =>
        {
            var random = new Random(seed);
            AssertClosure(count, [.. Enumerable.Range(0, links).Select(_ => (random.Next(count), random.Next(count)))]);
        });

    [Fact]
    public void Order_puts_every_node_after_all_before_it() =>
        Gen.Select(Gen.Int[2, 90], Gen.Int[0, 200], Gen.Int[0, 1_000_000]).Sample((count, links, seed) =>
        {
            var random = new Random(seed);
            var pairs = Enumerable.Range(0, links).Select(_ => (random.Next(count), random.Next(count)))
                .Where(p => p.Item1 != p.Item2).Select(p => (Math.Max(p.Item1, p.Item2), Math.Min(p.Item1, p.Item2))).ToArray();
            var index = PlanIndex.Of(Network(count, pairs));
            var place = index.InOrder.Select((id, at) => (id, at)).ToDictionary(p => p.id, p => p.at);
            Assert.Equal(count, place.Count);
            Assert.All(pairs, p => Assert.True(place["n" + p.Item1] < place["n" + p.Item2]));
        });

    [Fact]
    public void Only_finish_start_links_without_lead_give_order()
    {
        var index = PlanIndex.Of(new Plan
        {
            Id = "p",
            Name = "p",
            Tasks = [Work("a"), Work("b")],
            Holds = [new HoldPoint { Id = "h", Name = "h", Stage = "s" }],
            Links =
            [
                new Link("h", "a"), new Link("b", "a", LinkKind.StartStart), new Link("b", "a", Lag: -10),
                new Link("b", "nobody"), new Link("nobody", "a"),
            ],
        });

        Assert.True(index.IsAfter("h", "a"));
        Assert.False(index.IsAfter("b", "a"));
        Assert.False(index.IsAfter("a", "a"));
        Assert.False(index.IsAfter("a", "nobody"));
        Assert.Equal([LinkKind.StartStart, LinkKind.FinishStart], index.LinksInto("b").Select(l => l.Kind));
        Assert.Equal(["h", "b", "b"], index.LinksFrom("a").Select(l => l.Task));
        Assert.Empty(index.LinksInto("nobody"));
    }

    [Fact]
    public void First_counts_when_ids_are_doubled()
    {
        var index = PlanIndex.Of(new Plan
        {
            Id = "p",
            Name = "p",
            Tasks = [Work("a"), Work("a") with { Name = "second" }],
            Holds = [new HoldPoint { Id = "a", Name = "hold", Stage = "s" }],
        });

        Assert.Equal(["a"], index.Nodes);
        Assert.Equal("a", index.Task("a")!.Name);
        Assert.Null(index.Hold("a"));
    }

    [Fact]
    public void Evidence_and_disturbance_found_by_aspect()
    {
        var index = PlanIndex.Of(Leak());

        Assert.Equal(["test", "test/fall"], index.EvidenceOn("line/tight").Select(e => e.Node + (e.Reading is null ? "" : "/" + e.Reading)));
        Assert.Equal(["release"], index.EvidenceOn("line/bonded").Select(e => e.Node));
        Assert.Equal(["line/tight", "line/bonded"], index.Disturbs("open"));
        Assert.Equal(["line/tight"], index.Disturbs("wipe"));
        Assert.Equal(["open", "wipe"], index.DisturbedBy("line/tight"));
        Assert.Equal(["again"], index.TakenAgainBy("test"));
        Assert.Equal(["open"], index.Changers("line").Select(c => c.Task.Id));
    }

    [Theory]
    [InlineData("test", "open", true)]
    [InlineData("test", "again", true)]
    [InlineData("test", "wipe", false)] // after it, but taken again before
    [InlineData("test", "test", false)]
    [InlineData("release", "open", false)] // nothing takes it again
    [InlineData("again", "open", false)] // before it
    public void Lapse_is_by_plan_when_taken_again_after(string evidence, string disturber, bool byPlan) =>
        Assert.Equal(byPlan, PlanIndex.Of(Leak()).LapsesByPlan(evidence, disturber));

    [Fact]
    public void Same_index_when_asked_twice()
    {
        var plan = Leak();

        Assert.Same(PlanIndex.Of(plan), PlanIndex.Of(plan));
    }

    private static Plan Leak() => new()
    {
        Id = "p",
        Name = "p",
        Items = [new Item { Id = "line", Name = "line", Conditions = ["closed"], AtTakeIn = "closed", AsForTheRoad = "closed", Aspects = ["tight", "bonded"] }],
        Tasks =
        [
            Work("test") with { Readings = [new ReadingNeed { Id = "fall", Name = "fall", Unit = "kPa", StandsOn = [Tight] }] },
            Work("open") with { Changes = [new Change("line", "closed", "closed")] },
            Work("again") with { TakesAgain = ["test"] },
            Work("wipe") with { Touches = [Tight] },
        ],
        Holds = [new HoldPoint { Id = "release", Name = "release", Stage = "s", StandsOn = [Bonded] }],
        Links = [new Link("release", "test"), new Link("open", "release"), new Link("again", "open"), new Link("wipe", "again")],
    };

    private static void AssertClosure(int count, (int Earlier, int Later)[] pairs)
    {
        var reach = new bool[count, count];
        foreach (var (earlier, later) in pairs)
            reach[earlier, later] = true;
        for (var k = 0; k < count; k++)
            for (var i = 0; i < count; i++)
                for (var j = 0; j < count; j++)
                    reach[i, j] |= reach[i, k] && reach[k, j];

        var index = PlanIndex.Of(Network(count, pairs));
        for (var i = 0; i < count; i++)
        {
            Assert.Equal(Enumerable.Range(0, count).Where(j => reach[i, j]).Select(j => "n" + j), index.AllAfter("n" + i));
            Assert.Equal(Enumerable.Range(0, count).Where(j => reach[j, i]).Select(j => "n" + j), index.AllBefore("n" + i));
            for (var j = 0; j < count; j++)
                Assert.Equal(reach[i, j], index.IsAfter("n" + j, "n" + i));
        }
    }

    private static Plan Network(int count, IEnumerable<(int Earlier, int Later)> pairs) => new()
    {
        Id = "p",
        Name = "p",
        Tasks = [.. Enumerable.Range(0, count).Select(n => Work("n" + n))],
        Links = [.. pairs.Select(p => new Link("n" + p.Later, "n" + p.Earlier))],
    };

    private static PlanTask Work(string id) => new() { Id = id, Name = id, Stage = "s", Estimate = new Estimate(1, 2, 3) };
}
