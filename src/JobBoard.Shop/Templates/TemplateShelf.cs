using System.Collections.Immutable;
using JobBoard.Domain.Plans;

namespace JobBoard.Shop.Templates;

/// <summary>Plan templates in a folder: one <c>NAME.json</c> file each, in the documented plan format, known by the plan's own id.</summary>
public sealed class TemplateShelf
{
    private readonly Lazy<ImmutableSortedDictionary<string, Plan>> _plans;

    /// <summary>Reads the folder when first asked; a folder that is not there holds no templates.</summary>
    public TemplateShelf(string folder) => _plans = new(() => Read(folder));

    /// <summary>All of them, by id.</summary>
    /// <exception cref="TemplateException">A file is no plan, or two have the same id.</exception>
    public ImmutableSortedDictionary<string, Plan> Plans => _plans.Value;

    /// <summary>The plan of that id, or nothing.</summary>
    public Plan? Find(string id) => Plans.GetValueOrDefault(id);

    private static ImmutableSortedDictionary<string, Plan> Read(string folder)
    {
        var plans = ImmutableSortedDictionary.CreateBuilder<string, Plan>(StringComparer.Ordinal);
        if (!Directory.Exists(folder)) return plans.ToImmutable();
        foreach (var file in Directory.GetFiles(folder, "*.json").Where(IsPlan).Order(StringComparer.Ordinal))
        {
            var plan = ReadOne(file);
            if (!plans.TryAdd(plan.Id, plan)) throw new TemplateException($"{file}: another template is called '{plan.Id}' already.");
        }

        return plans.ToImmutable();
    }

    // A plan's file is NAME.json; NAME.map.json and the like say things about it.
    private static bool IsPlan(string file) => !Path.GetFileNameWithoutExtension(file).Contains('.');

    private static Plan ReadOne(string file)
    {
        var reading = PlanReader.Read(File.ReadAllText(file));
        return reading.Plan ?? throw new TemplateException($"{file}: {string.Join(" ", reading.Faults)}");
    }
}

/// <summary>A template could not be read; the message names the file and the place.</summary>
public sealed class TemplateException(string message, Exception? inner = null) : Exception(message, inner);
