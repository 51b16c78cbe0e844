using System.Collections.Immutable;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Commands;
using JobBoard.Web.Posting;
using Microsoft.Extensions.Primitives;

namespace JobBoard.Web.Tests.Posting;

/// <summary>Fields to typed commands.</summary>
public class CommandBinderTests
{
    private static readonly CommandBinder Binder = new(TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"), id => id == "small" ? new Plan { Id = "small", Name = "Small" } : null);

    [Fact]
    public void Reads_nested_lists_and_keys()
    {
        var start = Bind<StartTask>("start-task", ("car", "heron"), ("task", "a"), ("crew[0].person", "inga"), ("crew[0].duty", "hoist"), ("crew[1].person", "sol"));
        var off = Bind<KnockOff>("knock-off", ("how[heron/a]", "finger-tight"), ("items[heron/wiring loom]", "off"));
        var item = Bind<ChangeItem>("change-item", ("car", "heron"), ("item", "loom"), ("to", "off"), ("why", "x"), ("aspects", "mated"), ("aspects", "routed"));

        Assert.Equal([("inga", "hoist"), ("sol", "lead")], start.Crew.Select(m => (m.Person, m.Duty)));
        Assert.Equal("finger-tight", off.How["heron/a"]);
        Assert.Equal("off", off.Items["heron/wiring loom"]);
        Assert.Equal(["mated", "routed"], item.Aspects.AsEnumerable());
    }

    [Theory]
    [InlineData("2026-12-01T12:00", "2026-12-01T11:00Z")]
    [InlineData("2026-07-01T12:00", "2026-07-01T10:00Z")]
    [InlineData("2026-12-01T12:00:00Z", "2026-12-01T12:00Z")]
    [InlineData("2026-12-01T12:00:00-05:00", "2026-12-01T17:00Z")]
    [InlineData("2026-03-29T02:30", "2026-03-29T01:30Z")]
    [InlineData("2026-10-25T02:30", "2026-10-25T00:30Z")]
    public void Times_are_the_shops(string typed, string expected) => Assert.Equal(
        DateTimeOffset.Parse(expected, System.Globalization.CultureInfo.InvariantCulture),
        Bind<GiveDate>("give-date", ("car", "heron"), ("date", typed), ("why", "asked")).Date);

    [Fact]
    public void Nothing_typed_is_nothing_where_it_may_be() =>
        Assert.Null(Bind<GiveDate>("give-date", ("car", "heron"), ("date", " "), ("why", "taken back")).Date);

    [Fact]
    public void A_plan_is_a_template_or_json()
    {
        Assert.Equal("small", Bind<TakeInCar>("take-in-car", ("car", "heron"), ("name", "Heron"), ("plan", "small")).Plan.Id);
        Assert.Equal("own", Bind<TakeInCar>("take-in-car", ("car", "heron"), ("name", "Heron"), ("plan", """{ "id": "own", "name": "Own" }""")).Plan.Id);
    }

    [Theory]
    [InlineData("give-date", "date", "tomorrow", "not a day and time")]
    [InlineData("set-person", "position", "king", "apprentice, technician, foreman, owner")]
    [InlineData("set-person", "outside", "perhaps", "neither yes nor no")]
    [InlineData("set-person", "hours[0].from", "25:00", "not a time of day")]
    [InlineData("revise-estimate", "estimate.low", "1.5", "not a whole number")]
    [InlineData("set-instrument", "instrument.uncertainty", "1.2.3", "not a number")]
    [InlineData("set-shop", "closed", "24.12.2026", "not a day")]
    [InlineData("take-in-car", "plan", "none", "no template 'none'")]
    [InlineData("take-in-car", "plan", "{ nonsense", "line 1")]
    [InlineData("take-back", "commandId", "x", "no id")]
    [InlineData("go-out", "mood", "good", "does not have")]
    public void A_bad_field_says_how_to_put_it_right(string kind, string field, string typed, string words)
    {
        var (command, faults) = Binder.Bind(kind, [KeyValuePair.Create(field, new StringValues(typed))]);

        Assert.Null(command);
        Assert.Contains(words, Assert.Single(faults, f => f.Field == field).Words, StringComparison.Ordinal);
    }

    /// <summary>Every command can be filled by a form: no member is of a type forms cannot write.</summary>
    [Fact]
    public void Every_command_can_be_posted()
    {
        foreach (var kind in CommandJson.All)
        {
            var (command, faults) = Binder.Bind(kind, []);
            Assert.True(command is not null || faults.All(f => f.Words.Contains("needed", StringComparison.Ordinal)), kind);
        }
    }

    private static T Bind<T>(string kind, params (string Name, string Value)[] fields)
        where T : Command
    {
        var posted = fields.GroupBy(f => f.Name).Select(g => KeyValuePair.Create(g.Key, new StringValues([.. g.Select(f => f.Value)])));
        var (command, faults) = Binder.Bind(kind, posted);
        Assert.Equal([], faults.Select(f => f.Words));
        return Assert.IsType<T>(command);
    }
}
