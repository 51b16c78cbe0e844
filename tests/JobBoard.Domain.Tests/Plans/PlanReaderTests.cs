using System.Text.Json;
using CsCheck;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Tests.Plans;

public class PlanReaderTests
{
    private static string Json { get; } = PlanReader.Write(SmallJob.Plan);

    [Fact]
    public void Reads_back_what_was_written()
    {
        var reading = PlanReader.Read(Json);

        Assert.Empty(reading.Faults);
        Assert.Equal(Json, PlanReader.Write(reading.Plan!));
        Assert.Empty(PlanFaults.Find(reading.Plan!, SmallJob.Shop));
    }

    [Theory]
    [InlineData("", "line 1, position 1")]
    [InlineData("{", "line 1, position 2")]
    [InlineData("{\n  \"id\": \"a\"\n  \"name\": \"b\" }", "line 3, position 3")]
    [InlineData("{} {}", "line 1, position 4")]
    [InlineData("{\"id\": 'a'}", "line 1, position 8")]
    [InlineData("{\"tasks\": [[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]}", "line 1, position 26")]
    public void Line_told_when_it_is_not_json(string json, string at)
    {
        var fault = Assert.Single(PlanReader.Read(json).Faults);

        Assert.Equal(("json", at), (fault.Code, fault.At));
        Assert.DoesNotContain("JobBoard.", fault.Words);
    }

    [Theory]
    [InlineData("null", "line 1")]
    [InlineData("[]", "line 1")]
    [InlineData("7", "line 1")]
    [InlineData("\"plan\"", "line 1")]
    public void Refused_when_it_is_no_object(string json, string at)
    {
        var fault = Assert.Single(PlanReader.Read(json).Faults);

        Assert.Equal(("shape", at), (fault.Code, fault.At));
    }

    [Theory]
    [InlineData("\"id\": \"small-job\"", "\"id\": 7", "id")]
    [InlineData("\"id\": \"small-job\"", "\"id\": null", "id")]
    [InlineData("\"id\": \"small-job\"", "\"id\": \"\\ud800\"", "id")]
    [InlineData("\"id\": \"small-job\"", "\"colour\": 1, \"id\": \"a\"", "colour")]
    [InlineData("\"id\": \"small-job\"", "\"\\ud800\": 1, \"id\": \"a\"", "line 1")]
    [InlineData("\"id\": \"small-job\"", "\"Id\": \"a\", \"id\": \"a\"", "Id")]
    [InlineData("\"id\": \"small-job\"", "\"id\": \"a\", \"id\": \"a\"", "id")]
    [InlineData("\"stages\": [", "\"stages\": [null, ", "stages[0]")]
    [InlineData("\"stages\": [", "\"stages\": [{\"id\": \"a\"}, ", "stages[0]")]
    [InlineData("\"leadDays\": 2", "\"leadDays\": 2.5", "parts[0].leadDays")]
    [InlineData("\"leadDays\": 2", "\"leadDays\": \"2\"", "parts[0].leadDays")]
    [InlineData("\"leadDays\": 2", "\"leadDays\": 99999999999", "parts[0].leadDays")]
    [InlineData("\"minRatedKg\": 500", "\"minRatedKg\": 1e99", "tasks[3].gear[0].minRatedKg")]
    [InlineData("\"max\": 35", "\"max\": \"35\"", "tasks[3].readings[0].max")]
    [InlineData("\"seenByTwo\": false", "\"seenByTwo\": 0", "tasks[3].readings[0].seenByTwo")]
    [InlineData("\"clock\": \"elapsed\"", "\"clock\": \"Elapsed\"", "links[5].clock")]
    [InlineData("\"clock\": \"elapsed\"", "\"clock\": 1", "links[5].clock")]
    [InlineData("\"conditions\": [\n        \"closed\"", "\"conditions\": [\n        null, \"closed\"", "items[0].conditions[0]")]
    public void Path_told_when_a_member_is_wrong(string was, string becomes, string at)
    {
        Assert.Contains(was, Json);
        var at1 = Json.IndexOf(was, StringComparison.Ordinal);
        var broken = Json[..at1] + becomes + Json[(at1 + was.Length)..];

        var fault = Assert.Single(PlanReader.Read(broken).Faults);

        Assert.Equal(("shape", at), (fault.Code, fault.At));
        Assert.DoesNotContain("JobBoard.", fault.Words);
    }

    [Fact]
    public void Line_told_when_it_has_half_a_character() =>
        Assert.Equal("line 2", Assert.Single(PlanReader.Read("{\n\"id\": \"\ud800\"}").Faults).At);

    [Fact]
    public void Every_wrong_member_told_at_once()
    {
        var broken = Json.Replace("\"leadDays\": 2", "\"leadDays\": \"2\"").Replace("\"max\": 35", "\"max\": true, \"most\": 3");

        Assert.Equal(["parts[0].leadDays", "tasks[3].readings[0].max", "tasks[3].readings[0].most"], PlanReader.Read(broken).Faults.Select(f => f.At));
    }

    [Fact]
    public void Missing_members_are_named()
    {
        var words = PlanReader.Read("{}").Faults.Select(f => f.Words);

        Assert.Equal(["\"id\" is missing.", "\"name\" is missing."], words);
    }

    [Fact]
    public void Null_allowed_where_nothing_is_meant() =>
        Assert.NotNull(PlanReader.Read(Json.Replace("\"max\": 35", "\"max\": null")).Plan);

    [Fact]
    public void Comments_and_trailing_commas_are_overlooked() =>
        Assert.NotNull(PlanReader.Read("\uFEFF// mine\n{ \"id\": \"a\", \"name\": \"a\", \"tasks\": [], }").Plan);

    [Fact]
    public void Refused_when_of_another_format() =>
        Assert.Equal("format", Assert.Single(PlanReader.Read("{\"format\": \"jobboard-plan/2\", \"id\": \"a\", \"name\": \"a\"}").Faults).Code);

    [Fact]
    public void Refused_when_larger_than_two_megabytes() =>
        Assert.Equal("too-large", Assert.Single(PlanReader.Read(Json + new string(' ', 2 * 1024 * 1024)).Faults).Code);

    [Theory]
    [InlineData(2_000, null)]
    [InlineData(2_001, "too-many")]
    public void Refused_when_more_than_two_thousand_tasks(int count, string? code)
    {
        var plan = new Plan { Id = "a", Name = "a", Tasks = [.. Enumerable.Range(0, count).Select(n => SmallJob.Task("t" + n))] };

        Assert.Equal(code, PlanReader.Read(JsonSerializer.Serialize(plan, PlanJson.Options)).Faults.FirstOrDefault()?.Code);
    }

    [Fact]
    public void Never_throws_when_text_is_damaged() =>
        Gen.Select(Gen.Int[0, Json.Length - 1], Gen.Int[0, 60], Gen.String[Gen.Char["{}[]\",:0123456789.eE-nulltruefalse\\u \ud800é"], 0, 6])
            .Sample((at, length, put) =>
            {
                var damaged = Json[..at] + put + Json[Math.Min(Json.Length, at + length)..];
                var reading = PlanReader.Read(damaged);
                Assert.Equal(reading.Plan is null, !reading.Faults.IsEmpty);
                if (reading.Plan is { } plan)
                    PlanFaults.Find(plan, SmallJob.Shop);
            });
}
