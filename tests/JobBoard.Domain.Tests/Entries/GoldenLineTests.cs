using JobBoard.Domain.Entries;

namespace JobBoard.Domain.Tests.Entries;

/// <summary>Every shape of entry body ever written stays readable: one line per kind and schema, kept for ever.</summary>
public class GoldenLineTests
{
    private static readonly string[] Lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Entries", "golden.txt"));

    [Fact]
    public void Every_kind_has_a_line_at_its_present_schema()
    {
        var kept = Lines.Select(Parts).Select(p => (p.Kind, p.Schema)).ToHashSet();

        Assert.Superset(EntryKinds.All.Select(k => (k, EntryKinds.SchemaOf(k))).ToHashSet(), kept);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_line_is_read_and_at_its_present_schema_written_the_same(string line)
    {
        var (kind, schema, body) = Parts(line);

        var fact = EntryKinds.Read(kind, schema, body);

        Assert.Equal(kind, EntryKinds.KindOf(fact));
        if (schema == EntryKinds.SchemaOf(kind)) Assert.Equal(body, EntryKinds.Write(fact));
    }

    [Fact]
    public void Gear_left_with_a_load_is_read_as_what_it_hangs_in()
    {
        var line = Lines.Select(Parts).Single(p => p is { Kind: "task-left-part-done", Schema: 1 } && p.Body.Contains("gantry", StringComparison.Ordinal));

        var left = Assert.IsType<TaskLeftPartDone>(EntryKinds.Read(line.Kind, line.Schema, line.Body));

        Assert.Equal(["gantry", "load-beam-1"], left.HangsIn["engine"]);
    }

    [Fact]
    public void Suspended_load_of_an_old_shop_hangs_in_gear()
    {
        var line = Lines.Select(Parts).First(p => p is { Kind: "hazard-set", Schema: 1 } && p.Body.Contains("W015", StringComparison.Ordinal));

        Assert.True(Assert.IsType<HazardSet>(EntryKinds.Read(line.Kind, line.Schema, line.Body)).Hazard.HangsInGear);
    }

    [Fact]
    public void An_unknown_kind_or_schema_is_refused_in_words()
    {
        Assert.Contains("newer program", Assert.Throws<UnknownEntryException>(() => EntryKinds.Read("task-dreamt-of", 1, "{}")).Message, StringComparison.Ordinal);
        Assert.Throws<UnknownEntryException>(() => EntryKinds.Read("person-came-in", 2, "{}"));
    }

    public static TheoryData<string> All => [.. Lines];

    private static (string Kind, int Schema, string Body) Parts(string line)
    {
        var parts = line.Split(' ', 3);
        return (parts[0], int.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture), parts[2]);
    }
}
