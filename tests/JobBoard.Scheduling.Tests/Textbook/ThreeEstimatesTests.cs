using System.Text.Json;

namespace JobBoard.Scheduling.Tests;

/// <summary>
/// Published networks with three estimates (low, usual, high), through the files of the dates command: expected time
/// (low + 4 usual + high) / 6, variance ((high - low) / 6) squared. Printed tables round to two places.
/// </summary>
public sealed class ThreeEstimatesTests : IDisposable
{
    /// <summary>The source adds up variances that it has rounded to three places.</summary>
    private const decimal Printed = 0.0011m;

    private readonly string folder = Directory.CreateTempSubdirectory("jobboard-estimates-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    /// <summary>Render, Stair and Hanna style exercise, read at wizedu.com/questions/717873 and the longer copy at studyzin.com.</summary>
    [Fact]
    public void Fourteen_activities()
    {
        var result = Dates(
            "A5,5,7; B1,2,5; C5,5,5<A; D4,8,13<A; E1,10,17<B,C; F1,5,7<D; G2,6,9<D; H4,4,6<E,F; I2,7,10<G,H; J2,4,7<I; K6,10,13<I; L2,6,6<J; M2,2,3<K; N7,7,12<L,M");

        Assert.Equal("A5.33 B2.33 C5 D8.17 E9.67 F4.67 G5.83 H4.33 I6.67 J4.17 K9.83 L5.33 M2.17 N7.83", Each(result, "expected"));
        Assert.Equal(50.83m, Rounded(result.GetProperty("end"), 2));
        Assert.Equal("A-C-E-H-I-K-M-N", Chain(result));
        Assert.Equal("B8 D1.83 F1.83 G5 J2.5 L2.5", Slack(result));
        Assert.Equal(11.194m, Rounded(result.GetProperty("variance"), 3));
        Assert.Equal(3.346m, Rounded(result.GetProperty("standardDeviation"), 3));
    }

    /// <summary>
    /// Wikipedia, "Program evaluation and review technique": estimates and links seen in a third-party transcription. 19.51 as
    /// printed there (from memory) comes from rounded expected times; exactly it is 19.50.
    /// </summary>
    [Fact]
    public void Seven_activities()
    {
        var result = Dates("a2,4,6; b3,5,9; c4,5,7<a; d4,6,10<a; e4,5,7<b,c; f3,4,8<d; g3,5,8<e");

        Assert.Equal("a4 b5.33 c5.17 d6.33 e5.17 f4.5 g5.17", Each(result, "expected"));
        Assert.Equal(19.5m, Rounded(result.GetProperty("end"), 10));
        Assert.Equal("a-c-e-g", Chain(result));
        Assert.Equal(1.639m, Rounded(result.GetProperty("variance"), 3));
    }

    /// <summary>Stevenson, Operations Management, advertising-firm problem, read at coursehero.com/file/p2vl9tn.</summary>
    [Fact]
    public void Advertising_firm()
    {
        var result = Dates("A5,6,7; B8,8,11; C6,8,11<A; D9,12,15; E5,6,9<C; F5,6,7<D; G2,3,7<F; H4,4,5<B; I5,7,8<H");

        Assert.Equal("A6 B8.5 C8.17 D12 E6.33 F6 G3.5 H4.17 I6.83", Each(result, "expected"));
        Assert.Equal(21.5m, Rounded(result.GetProperty("end"), 10));
        Assert.Equal("D-F-G", Chain(result));
        Assert.InRange(Variance(result, "ACE"), 1.249m - Printed, 1.249m + Printed);
        Assert.InRange(Variance(result, "DFG"), 1.805m - Printed, 1.805m + Printed);
        Assert.InRange(Variance(result, "BHI"), 0.528m - Printed, 0.528m + Printed);
        Assert.Equal("A1 B2 C1 E1 H2 I2", Slack(result));
    }

    /// <summary>
    /// Hillier and Lieberman, Introduction to Operations Research, project-management chapter, "Reliable Construction Co.": the
    /// estimates from memory; every expected time reproduces the duration of the deterministic network.
    /// </summary>
    [Fact]
    public void Construction_company()
    {
        var result = Dates(
            "A1,2,3; B2,3.5,8<A; C6,9,18<B; D4,5.5,10<C; E1,4.5,5<C; F4,4,10<E; G5,6.5,11<D; H5,8,17<E,G; I3,7.5,9<C; J3,9,9<F,I; K4,4,4<J; L1,5.5,7<J; M1,2,3<H; N5,5.5,9<K,L");

        Assert.Equal("A2 B4 C10 D6 E4 F5 G7 H9 I7 J8 K4 L5 M2 N6", Each(result, "expected"));
        Assert.Equal(44, Rounded(result.GetProperty("end"), 10));
        Assert.Equal("A-B-C-E-F-J-L-N", Chain(result));
        Assert.Equal(9, Rounded(result.GetProperty("variance"), 10));
        Assert.Equal(3, Rounded(result.GetProperty("standardDeviation"), 10));
    }

    private JsonElement Dates(string rows)
    {
        var (tasks, links) = ("task,low,usual,high\n", "task,after\n");
        foreach (var row in rows.Split(';', StringSplitOptions.TrimEntries))
        {
            var parts = row.Split('<');
            tasks += $"{row[0]},{parts[0][1..]}\n";
            if (parts.Length > 1)
                links += string.Concat(parts[1].Split(',').Select(after => $"{row[0]},{after}\n"));
        }

        File.WriteAllText(Path.Combine(folder, "tasks.csv"), tasks);
        File.WriteAllText(Path.Combine(folder, "links.csv"), links);
        using var output = new StringWriter();
        Assert.Equal(0, DatesCommand.Run([folder, "--json"], output, Console.Error));
        return JsonDocument.Parse(output.ToString()).RootElement;
    }

    private static IEnumerable<JsonElement> Tasks(JsonElement result) => result.GetProperty("tasks").EnumerateArray();

    private static string Each(JsonElement result, string member) => string.Join(' ', Tasks(result).Select(t =>
        t.GetProperty("task").GetString() + TimeText(Rounded(t.GetProperty(member), 2))));

    private static string Slack(JsonElement result) => string.Join(' ', Tasks(result)
        .Where(t => t.GetProperty("totalFloat").GetDecimal() > 0)
        .Select(t => t.GetProperty("task").GetString() + TimeText(Rounded(t.GetProperty("totalFloat"), 2))));

    private static string Chain(JsonElement result) =>
        string.Join('-', result.GetProperty("chain").EnumerateArray().Select(c => c.GetString()));

    private static decimal Variance(JsonElement result, string path) => Tasks(result)
        .Where(t => path.Contains(t.GetProperty("task").GetString()!, StringComparison.Ordinal)).Sum(t => t.GetProperty("variance").GetDecimal());

    private static decimal Rounded(JsonElement number, int places) => Math.Round(number.GetDecimal(), places);

    private static string TimeText(decimal number) => number.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
}
