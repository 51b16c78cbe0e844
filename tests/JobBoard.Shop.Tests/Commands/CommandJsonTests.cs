using System.Text.Json.Nodes;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Work;
using JobBoard.Shop.Commands;

namespace JobBoard.Shop.Tests.Commands;

/// <summary>Commands as JSON, by kind.</summary>
public class CommandJsonTests
{
    [Fact]
    public void Reads_what_it_writes()
    {
        var command = new StartTask([new CrewMember("inga", "hoist")]) { Car = "heron", Task = "lift" };

        var read = Assert.IsType<StartTask>(CommandJson.Read("start-task", CommandJson.Write(command)));

        Assert.Equal(command.Crew.AsEnumerable(), read.Crew);
        Assert.Equal((command.Car, command.Task), (read.Car, read.Task));
    }

    [Theory]
    [InlineData("start-tusk", "{}", "start-tusk")]
    [InlineData("start-task", """{ "car": "heron", "crew": [] }""", "task")]
    [InlineData("start-task", """{ "car": "heron", "task": "a" }""", "crew")]
    [InlineData("come-in", """{ "person": null }""", "person")]
    [InlineData("come-in", """{ "person": "inga", "mood": "good" }""", "mood")]
    public void Names_what_is_wrong(string kind, string members, string named)
    {
        var error = Assert.Throws<CommandFormatException>(() => CommandJson.Read(kind, JsonNode.Parse(members)!.AsObject()));

        Assert.Contains(named, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_member_that_may_be_nothing_may_be_left_out() =>
        Assert.Null(Assert.IsType<MoveCar>(CommandJson.Read("move-car", new JsonObject { ["car"] = "heron" })).Place);

    [Fact]
    public void The_order_of_members_does_not_change_the_canonical_text()
    {
        var one = CommandJson.Read("check-part", JsonNode.Parse("""{ "car": "heron", "part": "loom", "right": true }""")!.AsObject());
        var other = CommandJson.Read("check-part", JsonNode.Parse("""{ "right": true, "part": "loom", "car": "heron", "why": null }""")!.AsObject());

        Assert.Equal(CommandJson.Canonical(one), CommandJson.Canonical(other));
    }

    [Fact]
    public void Every_command_has_a_kind_of_its_own() => Assert.Equal(CommandJson.All.Length, CommandJson.All.Distinct().Count());
}
