using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using JobBoard.Domain.Plans;

namespace JobBoard.Web.Posting;

/// <summary>Reads the fields of one form into JSON by the types of the members, gathering faults.</summary>
internal sealed class FieldReading(TimeZoneInfo zone, Func<string, Plan?>? templates)
{
    private readonly NullabilityInfoContext _nullability = new();

    /// <summary>Everything that could not be read.</summary>
    public List<FieldFault> Faults { get; } = [];

    /// <summary>The members of a record that the form fills; those left out keep their defaults.</summary>
    public JsonObject Members(Type type, FieldTree tree)
    {
        var known = CommandBinder.MembersOf(type).ToList();
        var json = new JsonObject();
        foreach (var name in tree.Children.Keys.Except(known.Select(m => CommandBinder.FieldName(m.Name)), StringComparer.Ordinal))
        {
            Fault(tree.Children[name], "This form sent a field that the command does not have. Load the page again.");
        }

        foreach (var member in known)
        {
            // Reasons may be empty here: the rules refuse that where they ask for one.
            var field = tree.Child(CommandBinder.FieldName(member.Name));
            if (!field.IsEmpty) json[CommandBinder.FieldName(member.Name)] = Read(member.PropertyType, field);
            else if (member.Name is "Why" or "Evidence" && member.PropertyType == typeof(string)) json[CommandBinder.FieldName(member.Name)] = "";
            else if (IsNeeded(type, member)) Fault(field, $"{FieldWords.Of(field.Path)} is needed. Fill it in.");
        }

        return json;
    }

    private JsonNode? Read(Type type, FieldTree field)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        if (plain == typeof(Plan)) return ReadPlan(field);
        if (!plain.IsGenericType) return FieldScalar.IsScalar(plain) ? ReadScalar(plain, field, field.Value) : Members(plain, field);
        var element = plain.GetGenericArguments()[^1];
        return plain.GetGenericTypeDefinition() == typeof(ImmutableArray<>) ? ReadList(element, field) : ReadMap(element, field);
    }

    private JsonArray ReadList(Type element, FieldTree field)
    {
        var typed = field.Values.Select(v => ReadScalar(element, field, v));
        var numbered = field.Numbered.Where(f => !f.IsEmpty).Select(f => Read(element, f));
        return new JsonArray([.. typed.Concat(numbered)]);
    }

    private JsonObject ReadMap(Type element, FieldTree field) =>
        new(field.Children.Where(c => !c.Value.IsEmpty).Select(c => KeyValuePair.Create(c.Key, Read(element, c.Value))));

    private JsonNode? ReadScalar(Type type, FieldTree field, string? text)
    {
        var (value, fix) = FieldScalar.Read(type, text ?? "", zone);
        if (fix is not null) Fault(field, $"{FieldWords.Of(field.Path)}: {fix}");
        return value;
    }

    private JsonNode? ReadPlan(FieldTree field)
    {
        try
        {
            if (field.Value!.StartsWith('{')) return JsonNode.Parse(field.Value, null, new JsonDocumentOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip });
        }
        catch (JsonException e)
        {
            Fault(field, string.Create(CultureInfo.InvariantCulture, $"The plan is not JSON: line {e.LineNumber + 1}, place {e.BytePositionInLine + 1}. Put that place right."));
            return null;
        }

        if (templates?.Invoke(field.Value) is { } plan) return JsonSerializer.SerializeToNode(plan, PlanJson.Options);
        Fault(field, $"There is no template '{field.Value}'. Choose one of the list, or give a plan as JSON.");
        return null;
    }

    private void Fault(FieldTree field, string words) => Faults.Add(new FieldFault(field.Path, words));

    private bool IsNeeded(Type type, PropertyInfo member)
    {
        if (IsNullable(member) || member.PropertyType == typeof(bool)) return false;
        var parameter = type.GetConstructors()[0].GetParameters().FirstOrDefault(p => p.Name == member.Name);
        var required = member.GetCustomAttribute<System.Runtime.CompilerServices.RequiredMemberAttribute>() is not null;
        return required || parameter is { HasDefaultValue: false };
    }

    private bool IsNullable(PropertyInfo member) => _nullability.Create(member).WriteState == NullabilityState.Nullable;
}
