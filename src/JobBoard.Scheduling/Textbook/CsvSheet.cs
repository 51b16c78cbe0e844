using System.Globalization;
using System.Text;

namespace JobBoard.Scheduling;

/// <summary>A CSV file with a header: rows whose fields are asked for by column, and the faults found on the way.</summary>
internal sealed class CsvSheet
{
    /// <summary>More decimals than anyone measures work in, few enough to be kept exactly.</summary>
    public const int MostDecimals = 6;

    private const decimal Most = 1_000_000_000;

    private readonly string file;
    private readonly List<InputFault> faults;
    private readonly Dictionary<string, int> columns = [];

    private CsvSheet(string file, List<InputFault> faults) => (this.file, this.faults) = (file, faults);

    public List<CsvRecord> Rows { get; private set; } = [];

    /// <summary>Reads a file; null, with faults, if it cannot be read or its header is not right.</summary>
    public static CsvSheet? Open(string folder, string file, string[] needed, string[] optional, List<InputFault> faults)
    {
        var sheet = new CsvSheet(file, faults);
        return sheet.Text(folder, string.Join(',', needed)) is { } text && sheet.Header(text, needed, optional) ? sheet : null;
    }

    public bool Has(string column) => columns.ContainsKey(column);

    /// <summary>The field, or nothing if the file has no such column or the field is empty.</summary>
    public string? Field(CsvRecord row, string column) =>
        columns.TryGetValue(column, out var at) && at < row.Fields.Count && row.Fields[at].Length > 0 ? row.Fields[at] : null;

    public string? Needed(CsvRecord row, string column, string what)
    {
        var field = Field(row, column);
        if (field is null)
            Fault(row.Line, column, $"is empty. Write {what}.");
        return field;
    }

    /// <summary>A decimal with a point; nothing, with a fault, if it is not one or is below <paramref name="least"/>.</summary>
    public decimal? Number(CsvRecord row, string column, decimal least)
    {
        if (Field(row, column) is not { } field)
            return null;
        const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        if (!decimal.TryParse(field, Style, CultureInfo.InvariantCulture, out var number))
            Fault(row.Line, column, $"'{field}' is not a number. Write digits, with a point before decimals, such as 2 or 2.5.");
        else if (number < least)
            Fault(row.Line, column, $"{field} is below {least}. Write {least} or more.");
        else if (Math.Abs(number) > Most)
            Fault(row.Line, column, $"{field} is beyond {Most}. Use a greater unit.");
        else if (number.Scale > MostDecimals)
            Fault(row.Line, column, $"{field} has more than {MostDecimals} decimals. Round it, or use a smaller unit.");
        else
            return number;
        return null;
    }

    /// <summary>One of the words in the list, by its place in it; <paramref name="usual"/> if the field is empty.</summary>
    public int? Word(CsvRecord row, string column, string[] words, int? usual)
    {
        if (Field(row, column) is not { } field)
            return usual;
        var at = Array.IndexOf(words, field.ToLowerInvariant());
        if (at >= 0)
            return at;
        Fault(row.Line, column, $"'{field}' is not known. Write one of: {string.Join(", ", words)}.");
        return null;
    }

    public void Fault(int line, string field, string words) => faults.Add(new InputFault(file, line, field, words));

    private string? Text(string folder, string header)
    {
        try
        {
            return File.ReadAllText(Path.Combine(folder, file), new UTF8Encoding(false, throwOnInvalidBytes: true));
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            Fault(0, "", $"there is no such file in {folder}. Make it with the first line {header}.");
        }
        catch (DecoderFallbackException)
        {
            Fault(0, "", "is not UTF-8 text. Save it as UTF-8.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Fault(0, "", $"cannot be read: {e.Message}");
        }

        return null;
    }

    private bool Header(string text, string[] needed, string[] optional)
    {
        var known = faults.Count;
        var records = new CsvRecords(file, text, faults).Read();
        if (records.Count == 0)
        {
            Fault(1, "", $"is empty. Begin with the line {string.Join(',', needed)}.");
            return false;
        }

        Columns(records[0], [.. needed, .. optional]);
        foreach (var column in needed.Where(c => !Has(c)))
            Fault(records[0].Line, column, $"the column is missing. The first line needs {string.Join(',', needed)}.");
        Rows = records[1..];
        foreach (var row in Rows.Where(r => r.Fields.Count != records[0].Fields.Count))
            Fault(row.Line, "", $"has {row.Fields.Count} fields where the first line has {records[0].Fields.Count}. Give each column one, empty if need be.");
        return faults.Count == known;
    }

    private void Columns(CsvRecord header, string[] allowed)
    {
        for (var at = 0; at < header.Fields.Count; at++)
        {
            var column = header.Fields[at].ToLowerInvariant();
            if (!allowed.Contains(column))
                Fault(header.Line, header.Fields[at], $"is not a column of this file. Use: {string.Join(", ", allowed)}.");
            else if (!columns.TryAdd(column, at))
                Fault(header.Line, column, "stands twice. Take one out.");
        }
    }
}
