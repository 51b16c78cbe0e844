using System.Collections;
using System.Collections.Immutable;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace JobBoard.Web.Tests.Customer;

/// <summary>
/// Copies a value and changes every string in it, whatever member it stands in: fields that do not exist yet are planted the day
/// they are added. The same string becomes the same string everywhere, so that what refers to each other still does.
/// </summary>
internal sealed class Planter(Func<string, string> plant)
{
    /// <summary>How many strings were planted.</summary>
    public int Planted { get; private set; }

    /// <summary>Members that were planted, as <c>Type.Member</c>.</summary>
    public SortedSet<string> Members { get; } = new(StringComparer.Ordinal);

    /// <summary>The planted copy.</summary>
    public T Of<T>(T value) => (T)Copy(value, "")!;

    private object? Copy(object? value, string member) => value switch
    {
        null => null,
        string text => Text(text, member),
        decimal => 918273.645m,
        Type or Delegate => value,
        _ when value.GetType() is var type && (type.IsPrimitive || type.IsEnum || type.Namespace == "System") => value,
        IEnumerable many => Many(many, member),
        _ => Record(value),
    };

    private string Text(string text, string member)
    {
        Planted++;
        Members.Add(member);
        return plant(text);
    }

    private object Record(object value)
    {
        var copy = typeof(object).GetMethod("MemberwiseClone", BindingFlags.Instance | BindingFlags.NonPublic)!.Invoke(value, null)!;
        for (var type = value.GetType(); type is not null && type != typeof(object); type = type.BaseType)
        {
            foreach (var field in type.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
                field.SetValue(copy, Copy(field.GetValue(value), $"{type.Name}.{field.Name.Trim('<').Split('>')[0]}"));
        }

        return copy;
    }

    private object Many(IEnumerable many, string member)
    {
        var type = many.GetType();
        var arguments = type.GetGenericArguments();
        var name = type.GetGenericTypeDefinition();
        if (name == typeof(ImmutableArray<>) && (bool)type.GetProperty("IsDefault")!.GetValue(many)!) return many;
        if (name == typeof(ImmutableSortedDictionary<,>) || name == typeof(ImmutableDictionary<,>)) return Dictionary(many, arguments[1], name == typeof(ImmutableSortedDictionary<,>), member);
        var items = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(arguments[0]))!;
        foreach (var item in many) items.Add(Copy(item, member));
        if (name == typeof(ImmutableSortedSet<>)) return ImmutableSortedSet.CreateRange(StringComparer.Ordinal, (IEnumerable<string>)items);
        var maker = name == typeof(ImmutableArray<>) ? typeof(ImmutableArray) : name == typeof(ImmutableList<>) ? typeof(ImmutableList) : name == typeof(ImmutableHashSet<>) ? typeof(ImmutableHashSet) : throw new NotSupportedException($"A {type} is not planted yet.");
        var make = maker.GetMethods().Single(m => m.Name == "CreateRange" && m.GetParameters() is [{ ParameterType: { IsGenericType: true } p }] && p.GetGenericTypeDefinition() == typeof(IEnumerable<>));
        return make.MakeGenericMethod(arguments[0]).Invoke(null, [items])!;
    }

    private object Dictionary(IEnumerable many, Type valueType, bool sorted, string member)
    {
        var copy = typeof(Planter).GetMethod(sorted ? nameof(Sorted) : nameof(Unsorted), BindingFlags.Static | BindingFlags.NonPublic)!.MakeGenericMethod(valueType);
        var pairs = new List<(string, object?)>();
        foreach (ITuple pair in many.Cast<object>().Select(Pair)) pairs.Add((Text((string)pair[0]!, member), Copy(pair[1], member)));
        return copy.Invoke(null, [pairs])!;
    }

    private static ITuple Pair(object pair) => (pair.GetType().GetProperty("Key")!.GetValue(pair), pair.GetType().GetProperty("Value")!.GetValue(pair));

    private static ImmutableSortedDictionary<string, T> Sorted<T>(List<(string Key, object? Value)> pairs) =>
        pairs.ToImmutableSortedDictionary(p => p.Key, p => (T)p.Value!, StringComparer.Ordinal);

    private static ImmutableDictionary<string, T> Unsorted<T>(List<(string Key, object? Value)> pairs) =>
        pairs.ToImmutableDictionary(p => p.Key, p => (T)p.Value!, StringComparer.Ordinal);
}
