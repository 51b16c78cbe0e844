using System.Text.Json.Nodes;
using JobBoard.Shop.Commands;

namespace JobBoard.Shop.Tests.Commands;

public class EmptyEntryTests
{
    [Theory]
    [InlineData("""{"car":"a","add":[null],"takeOut":[],"addLinks":[],"takeOutLinks":[],"why":"so"}""", "$.add[0]")]
    [InlineData("""{"car":"a","add":[],"takeOut":["b",null],"addLinks":[],"takeOutLinks":[],"why":"so"}""", "$.takeOut[1]")]
    [InlineData("""{"car":"a","add":[{"id":"b","name":"b","stage":"s","estimate":{"low":1,"usual":1,"high":1},"crew":[null]}],"takeOut":[],"addLinks":[],"takeOutLinks":[],"why":"so"}""", "$.add[0].crew[0]")]
    public void Refused_by_place_when_a_list_holds_nothing(string json, string at)
    {
        var refused = Assert.Throws<CommandFormatException>(() => CommandJson.Read("change-plan", JsonNode.Parse(json)!.AsObject()));

        Assert.Contains(at, refused.Message);
    }

    [Fact]
    public void Read_when_lists_are_empty() =>
        Assert.NotNull(CommandJson.Read("change-plan", JsonNode.Parse("""{"car":"a","add":[],"takeOut":[],"addLinks":[],"takeOutLinks":[],"why":"so"}""")!.AsObject()));
}
