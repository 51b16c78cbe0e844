using System.Diagnostics;
using System.Text.Json;
using JobBoard.Domain.Boards;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Rules;
using JobBoard.Shop.Dates;
using JobBoard.Shop.Demo;
using JobBoard.Shop.Templates;

namespace JobBoard.Benchmarks;

/// <summary>
/// What follows an entry: it is folded, every task of its car that could be started is asked what it waits on, and the car's
/// dates are worked out anew. Over the entries of the demo shop: its cars are of the real template, its crew has carried them to
/// where they stand. All of them once as warm-up, then again from the beginning until enough are measured.
/// </summary>
internal static class EvaluateVerb
{
    private static readonly DateTimeOffset Now = new(2026, 3, 4, 9, 30, 0, TimeSpan.Zero);

    public static async Task<int> Run(Options options)
    {
        var count = options.Number("entries", 1000);
        var (entries, loading) = await Load();
        Console.Error.WriteLine($"evaluate: {entries.Count} entries; once over all of them as warm-up, then until {count} of cars are measured");
        Replay(entries, new());
        var times = new Times();
        while (times.Fold.Count < count) Replay(entries, times);
        Print(times, loading);
        return 0;
    }

    private static async Task<(List<Entry> Entries, double Milliseconds)> Load()
    {
        var seed = SeedData();
        var shelf = new TemplateShelf(Path.Combine(seed, "plans"));
        var shop = new ShopInMemory();
        var began = Stopwatch.GetTimestamp();
        await new DemoShop(seed, shelf.Find).Load(shop.Door, Now);
        return (shop.Entries, Stopwatch.GetElapsedTime(began).TotalMilliseconds);
    }

    /// <summary>Folds everything from the beginning; what follows each entry of a car is measured.</summary>
    private static void Replay(List<Entry> entries, Times times)
    {
        var (state, dates) = (ShopState.Empty, new DateBook());
        foreach (var entry in entries)
        {
            var began = Stopwatch.GetTimestamp();
            state = Folding.Apply(state, entry);
            if (entry.Fact is not CarFact fact) continue;
            var folded = Stopwatch.GetTimestamp();
            var car = state.Cars[fact.Car];
            times.Waiting += Evaluation.Of(state, car, entry.RecordedAt).Count(t => !t.CanStart);
            var evaluated = Stopwatch.GetTimestamp();
            dates.Of(state, car, entry.RecordedAt);
            times.Add(car, began, folded, evaluated, Stopwatch.GetTimestamp());
        }
    }

    private static void Print(Times times, double loading)
    {
        var (fold, evaluate, dates, both) = (Spread.Of(times.Fold), Spread.Of(times.Evaluate), Spread.Of(times.Dates), Spread.Of(times.Both));
        Console.Error.WriteLine($"evaluate: fold {fold}; evaluation {evaluate}; dates {dates}; all three {both}; {times.Waiting} answers of \"not yet\"");
        Console.WriteLine(JsonSerializer.Serialize(new
        {
            tasks = times.Tasks,
            entries = times.Fold.Count,
            evaluate_p50_ms = Math.Round(evaluate.Median, 4),
            evaluate_p99_ms = Late(times.Evaluate),
            dates_p50_ms = Math.Round(dates.Median, 4),
            dates_p99_ms = Late(times.Dates),
            fold_p50_ms = Math.Round(fold.Median, 4),
            all_p50_ms = Math.Round(both.Median, 4),
            all_p99_ms = Late(times.Both),
            demo_load_ms = Math.Round(loading),
        }));
    }

    private static double Late(List<double> sorted) => Math.Round(sorted[(int)(sorted.Count * 0.99)], 4);

    private static string SeedData()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (Directory.Exists(Path.Combine(folder.FullName, "seed-data", "plans"))) return Path.Combine(folder.FullName, "seed-data");
        }

        throw new DirectoryNotFoundException("seed-data is not above this program.");
    }

    private sealed class Times
    {
        public List<double> Fold { get; } = [];

        public List<double> Evaluate { get; } = [];

        public List<double> Dates { get; } = [];

        public List<double> Both { get; } = [];

        public int Tasks { get; private set; }

        public long Waiting { get; set; }

        public void Add(CarBoard car, long began, long folded, long evaluated, long dated)
        {
            Tasks = Math.Max(Tasks, car.Plan.Tasks.Length);
            Fold.Add(Milliseconds(began, folded));
            Evaluate.Add(Milliseconds(folded, evaluated));
            Dates.Add(Milliseconds(evaluated, dated));
            Both.Add(Milliseconds(began, dated));
        }

        private static double Milliseconds(long from, long to) => Stopwatch.GetElapsedTime(from, to).TotalMilliseconds;
    }
}
