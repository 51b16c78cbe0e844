using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Plans;
using JobBoard.Shop.Commands;
using Microsoft.Extensions.Primitives;

namespace JobBoard.Web.Posting;

/// <summary>
/// Makes a typed command of a posted form, by the members of the command's record: every field that cannot be read is named
/// with its fix, all of them at once.
/// </summary>
/// <param name="zone">The shop's zone, in which days and times are typed.</param>
/// <param name="templates">Gives the plan of a template by its id; a plan may also be typed as JSON.</param>
public sealed class CommandBinder(TimeZoneInfo zone, Func<string, Plan?>? templates = null)
{
    /// <summary>Names of fields that belong to the posting itself and not to the command.</summary>
    public static readonly ImmutableHashSet<string> Reserved =
        ImmutableHashSet.Create(StringComparer.Ordinal, "command", "seen", "occurred", "ago", "back", "pin", "__RequestVerificationToken");

    /// <summary>Reads a command, or says what is wrong with each field.</summary>
    public (Command? Command, ImmutableArray<FieldFault> Faults) Bind(string kind, IEnumerable<KeyValuePair<string, StringValues>> fields)
    {
        if (CommandJson.TypeOf(kind) is not { } type) return (null, [new FieldFault("kind", $"There is no command '{kind}'. Load the page again.")]);
        var tree = FieldTree.Of(fields.Where(f => !Reserved.Contains(f.Key)));
        var reading = new FieldReading(zone, templates);
        var members = reading.Members(type, tree);
        if (reading.Faults.Count > 0) return (null, [.. reading.Faults]);
        try
        {
            return (CommandJson.Read(kind, members), []);
        }
        catch (CommandFormatException e)
        {
            return (null, [new FieldFault("", e.Message)]);
        }
    }

    /// <summary>A member's name as fields write it.</summary>
    internal static string FieldName(string member) => JsonNamingPolicy.CamelCase.ConvertName(member);

    /// <summary>The members a form can fill: constructor parameters and properties that can be set.</summary>
    internal static IEnumerable<PropertyInfo> MembersOf(Type type) =>
        type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.CanWrite && p.GetIndexParameters().Length == 0);
}
