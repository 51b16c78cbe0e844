using System.Text;

namespace JobBoard.Scheduling;

/// <summary>One record of a CSV file.</summary>
/// <param name="Line">The line on which it begins, from 1.</param>
/// <param name="Fields">Its fields, in order.</param>
public sealed record CsvRecord(int Line, IReadOnlyList<string> Fields);

/// <summary>
/// Reads comma-separated records as RFC 4180 has them: fields in double quotes may hold commas, line ends and doubled quotes;
/// lines end in CR LF or LF. Blank lines are passed over, blanks around a field are dropped unless quoted. Between tabs, as a
/// spreadsheet copies its cells, a quote inside a field that does not begin with one is a mark of inches.
/// </summary>
/// <param name="file">What faults call the text.</param>
/// <param name="text">The text.</param>
/// <param name="faults">Gets what cannot be read.</param>
/// <param name="separator">What stands between fields.</param>
public sealed class CsvRecords(string file, string text, List<InputFault> faults, char separator = ',')
{
    private int at;
    private int line = 1;

    /// <summary>All records, in order.</summary>
    public List<CsvRecord> Read()
    {
        var records = new List<CsvRecord>();
        while (at < text.Length)
        {
            var began = line;
            var fields = ReadRecord();
            if (fields is not [""])
                records.Add(new CsvRecord(began, fields));
        }

        return records;
    }

    private List<string> ReadRecord()
    {
        var fields = new List<string>();
        do
            fields.Add(ReadField());
        while (Took(separator));
        Took('\r');
        Took('\n');
        return fields;
    }

    private string ReadField()
    {
        SkipBlanks();
        if (Took('"'))
            return ReadQuoted();
        var from = at;
        while (at < text.Length && text[at] != separator && text[at] != '\n' && !(text[at] == '\r' && Next() == '\n'))
        {
            if (text[at] == '"' && separator != '\t')
                Fault("a quote stands inside a field that does not begin with one. Put the whole field in quotes and double the ones inside.");
            at++;
        }

        return text[from..at].TrimEnd(' ', '\t');
    }

    private string ReadQuoted()
    {
        var (field, began) = (new StringBuilder(), line);
        while (at < text.Length)
        {
            if (Took('"'))
            {
                if (!Took('"'))
                    return Closed(field);
                field.Append('"');
                continue;
            }

            field.Append(text[at]);
            Step();
        }

        faults.Add(new InputFault(file, began, "", "a field in quotes is never closed. Put a quote at its end."));
        return field.ToString();
    }

    private string Closed(StringBuilder field)
    {
        SkipBlanks();
        var from = at;
        while (at < text.Length && text[at] != separator && text[at] is not ('\r' or '\n'))
            at++;
        if (at > from)
            Fault($"'{text[from..at]}' stands after a closing quote. Put it inside the quotes or take it out.");
        return field.ToString();
    }

    private char Next() => at + 1 < text.Length ? text[at + 1] : '\0';

    private void SkipBlanks()
    {
        while (at < text.Length && text[at] is ' ' or '\t' && text[at] != separator)
            at++;
    }

    private bool Took(char wanted)
    {
        if (at >= text.Length || text[at] != wanted)
            return false;
        Step();
        return true;
    }

    private void Step()
    {
        if (text[at] == '\n')
            line++;
        at++;
    }

    private void Fault(string words)
    {
        if (faults.Count == 0 || faults[^1] != new InputFault(file, line, "", words))
            faults.Add(new InputFault(file, line, "", words));
    }
}
