using CsCheck;

namespace JobBoard.Scheduling.Tests;

/// <summary>Random small networks of every kind against <see cref="SlowDates"/>, to the second.</summary>
public class RandomNetworkTests
{
    private const int Minute = 60 / SlowShop.Step;
    private const int MostFloat = 200 * Minute;

    private static readonly DateTimeOffset Monday = new(2026, 3, 2, 0, 0, 0, TimeSpan.Zero);
    private static readonly TimeZoneInfo NewYork = TimeZoneInfo.FindSystemTimeZoneById("America/New_York");

    /// <summary>Short hours, so that work runs over nights: forty minutes a day, twenty on Saturday. Clocks change on 8 March.</summary>
    private static readonly (DayOfWeek Day, int From, int To)[] Hours =
    [
        .. Enum.GetValues<DayOfWeek>().Where(d => d is not (DayOfWeek.Sunday or DayOfWeek.Saturday))
            .SelectMany(d => new[] { (d, 480, 505), (d, 510, 525) }),
        (DayOfWeek.Saturday, 600, 620),
    ];

    private static readonly SlowShop Shop = new(Monday, 50, NewYork, IsOpen);

    private static readonly WorkCalendar Calendar = new(NewYork, Hours.Select(h =>
        new WeeklyOpening(h.Day, new OpenSpan(TimeSpan.FromMinutes(h.From), TimeSpan.FromMinutes(h.To)))));

    private static readonly Gen<SlowTask> AnyTask = Gen.Select(
        Gen.Frequency((1, Gen.Const(0)), (3, Gen.Int[1, 90])), Gen.Int[0, 9], Gen.Int[0, 4000], Gen.Int[0, 2000], Gen.Int[3000, 9000],
        (work, status, start, length, part) => status switch
        {
            0 => new SlowTask(0, Status.SignedOff, (3000 + start) * Minute, (3000 + start + length) * Minute),
            1 => new SlowTask(work * Minute, Status.InHand, (3000 + start) * Minute),
            2 => new SlowTask(work * Minute, NotBefore: (part + 4000) * Minute),
            _ => new SlowTask(work * Minute),
        });

    private static readonly Gen<(SlowTask[] Tasks, SlowLink[] Links)> AnyPlan =
        from tasks in AnyTask.Array[2, 7]
        from links in AnyLink(tasks.Length).Array[1, 10]
        select (tasks, links);

    private static readonly int Now = 7000 * Minute;

    [Fact]
    public void Early_dates_are_those_of_the_oracle() => AnyPlan.Sample(plan =>
    {
        var (slow, dates) = Both(plan);

        for (var task = 0; task < plan.Tasks.Length; task++)
        {
            Assert.Equal(
                (task, Shop.Instant(slow.Starts[task]), Shop.Instant(slow.Finishes[task])),
                (task, dates[task].EarlyStart, dates[task].EarlyFinish));
        }

        Assert.Equal(Shop.Instant(slow.End), dates.End);
    });

    [Fact]
    public void Floats_are_those_of_the_oracle() => AnyPlan.Sample(plan =>
    {
        var (slow, dates) = Both(plan);

        for (var task = 0; task < plan.Tasks.Length; task++)
        {
            if (plan.Tasks[task].Status == Status.SignedOff)
                continue;
            Assert.Equal((task, "total", Supremum(slow.TotalFloat(task, slow.End, MostFloat))), (task, "total", Ticks(dates[task].TotalFloat)));
            Assert.Equal((task, "free", Supremum(slow.FreeFloat(task, MostFloat))), (task, "free", Ticks(dates[task].FreeFloat)));
        }
    }, iter: 150);

    [Fact]
    public void Date_given_takes_its_float_as_the_oracle_does() => Gen.Select(AnyPlan, Gen.Int[-3000, 3000]).Sample((plan, shift) =>
    {
        var slow = new SlowDates(Shop, plan.Tasks, plan.Links, Now);
        var given = slow.End + shift * Minute;
        var (_, dates) = Both(plan, Shop.Instant(given));

        for (var task = 0; task < plan.Tasks.Length; task++)
        {
            if (plan.Tasks[task].Status != Status.SignedOff)
                Assert.Equal((task, Supremum(slow.TotalFloat(task, Math.Min(given, slow.End), MostFloat))), (task, Ticks(dates[task].TotalFloat)));
        }
    }, iter: 150);

    [Fact]
    public void Early_is_never_after_late_nor_free_above_total() => AnyPlan.Sample(plan =>
    {
        var (_, dates) = Both(plan);

        for (var task = 0; task < plan.Tasks.Length; task++)
        {
            var it = dates[task];
            Assert.True(it.EarlyStart <= it.LateStart && it.EarlyFinish <= it.LateFinish, $"task {task}: {it}");
            Assert.True(plan.Tasks[task].Status == Status.SignedOff || (it.FreeFloat >= 0 && it.FreeFloat <= it.TotalFloat), $"task {task}: {it}");
            Assert.False(it.MissesDateGiven);
        }
    }, iter: 2000);

    /// <summary>The second waits for the first to finish; the third hangs on when the second started, and that has happened.</summary>
    [Fact]
    public void Chain_ends_at_a_start_that_has_happened()
    {
        SlowTask[] tasks = [new(0), new(0, Status.InHand, Now - 60 * Minute), new(90 * Minute)];
        SlowLink[] links = [new(1, 0, FromFinish: true, ToFinish: true, 0, false), new(2, 1, FromFinish: false, ToFinish: false, 5000 * Minute, true)];

        var (_, dates) = Both((tasks, links));

        Assert.Equal([(1, -1), (2, 1)], dates.Chain().Select(step => (step.Task, step.Link)));
    }

    [Fact]
    public void Chain_without_elapsed_lags_has_no_slack() => AnyPlan.Sample(plan =>
    {
        var links = plan.Links.Select(link => link with { Elapsed = false, Lag = link.Elapsed ? 0 : link.Lag }).ToArray();

        var (_, dates) = Both((plan.Tasks, links));

        var chain = dates.Chain();
        Assert.Equal(dates.End, dates[chain[^1].Task].EarlyFinish);
        Assert.Equal(-1, chain[0].Link);
        Assert.All(chain, step => Assert.True(plan.Tasks[step.Task].Status != Status.NotStarted || dates[step.Task].TotalFloat == 0));
        Assert.All(chain.Skip(1).Zip(chain), pair => Assert.Equal((pair.Second.Task, pair.First.Task), (links[pair.First.Link].After, links[pair.First.Link].Task)));
    }, iter: 2000);

    private static (SlowDates Slow, Dates Dates) Both((SlowTask[] Tasks, SlowLink[] Links) plan, long? given = null)
    {
        var network = Network.Build(plan.Tasks.Length, plan.Links.Select(Fast).ToArray());
        var times = new TaskTimes(network) { DateGiven = given };
        for (var task = 0; task < plan.Tasks.Length; task++)
            Fill(times, task, plan.Tasks[task]);
        return (new SlowDates(Shop, plan.Tasks, plan.Links, Now), CriticalPath.Compute(times, Calendar, Shop.Instant(Now)));
    }

    private static void Fill(TaskTimes times, int task, SlowTask it)
    {
        times.SetWork(task, it.Work * SlowShop.Step);
        if (it.Status == Status.SignedOff)
            times.SetSignedOff(task, Shop.Instant(it.Start), Shop.Instant(it.Finish));
        if (it.Status == Status.InHand)
            times.SetInHand(task, Shop.Instant(it.Start), it.Work * SlowShop.Step);
        if (it.NotBefore > 0)
            times.SetNotBefore(task, Shop.Instant(it.NotBefore));
    }

    private static Link Fast(SlowLink link) => new(
        link.Task,
        link.After,
        (link.FromFinish, link.ToFinish) switch
        {
            (true, false) => LinkKind.FinishStart,
            (false, false) => LinkKind.StartStart,
            (true, true) => LinkKind.FinishFinish,
            _ => LinkKind.StartFinish,
        },
        link.Lag * SlowShop.Step,
        link.Elapsed ? LagClock.Elapsed : LagClock.Working);

    private static Gen<SlowLink> AnyLink(int tasks) => Gen.Select(
        Gen.Int[1, tasks - 1], Gen.Int[0, 1000], Gen.Bool, Gen.Bool, Gen.Int[0, 2], Gen.Int[-40, 60], Gen.Int[-400, 4000],
        (task, after, fromFinish, toFinish, lag, working, elapsed) => new SlowLink(
            task, after % task, fromFinish, toFinish, lag == 0 ? 0 : lag == 1 ? working * Minute : elapsed * Minute, lag == 2));

    /// <summary>
    /// All times are whole minutes and pushes go by half minutes: an odd push that is kept while the next even one is not means
    /// that the even one is the bound, reached from below.
    /// </summary>
    private static int Supremum(int ticks) => Math.Abs(ticks) % 2 == 1 ? ticks + 1 : ticks;

    private static int Ticks(long? seconds) => (int)Math.Clamp(seconds!.Value / SlowShop.Step, -MostFloat, MostFloat);

    private static bool IsOpen(DateTime local)
    {
        var minute = local.Hour * 60 + local.Minute;
        return Hours.Any(h => h.Day == local.DayOfWeek && h.From <= minute && minute < h.To);
    }
}
