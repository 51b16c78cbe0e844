using JobBoard.Domain.Boards;
using JobBoard.Domain.Commands;
using JobBoard.Domain.Entries;
using JobBoard.Domain.Plans;

namespace JobBoard.Domain.Rules;

/// <summary>What the customer is told and asked: dates, notes chosen for them, what is needed from them, how they reach the shop.</summary>
internal static class CustomerDecisions
{
    /// <summary>Longest text of a question, or of why a date moved: their page stays small.</summary>
    private const int LongestLine = 240;

    /// <summary>Longest note that can stand on the customer's page.</summary>
    private const int LongestNote = 2000;

    /// <summary>Most questions open with one customer at a time.</summary>
    private const int MostAsks = 6;

    public static void Give(Ask ask, GiveDate c)
    {
        if (c.Date < ask.Now) ask.Bad("date", "The date lies in the past.");
        CheckLine(ask, "wordsForCustomer", c.WordsForCustomer);
        if (ask.Reasons.Count == 0) ask.Facts.Add(new DateWasGiven(c.Date, c.Why ?? "") { Car = c.Car, WordsForCustomer = Trimmed(c.WordsForCustomer) });
    }

    /// <summary>A note marked for the customer is a proposal; from the foreman or the owner it is their choice already.</summary>
    public static void Write(Ask ask, CarBoard car, WriteNote c)
    {
        if (string.IsNullOrWhiteSpace(c.Words)) ask.Bad("words", "Write something.");
        if (c.Task is not null && !car.Tasks.ContainsKey(c.Task)) ask.Bad("task", $"{car.Name} has no task '{c.Task}'.");
        var chosen = c.ForCustomer && ask.Person.Position >= Position.Foreman;
        if (chosen) CheckNote(ask, c.Words);
        if (ask.Reasons.Count == 0) ask.Facts.Add(new NoteWritten(c.Words.Trim(), c.Task, c.ForCustomer, chosen) { Car = car.Id });
    }

    public static void Choose(Ask ask, CarBoard car, ChooseNote c)
    {
        var note = car.Notes.Find(n => n.Seq == c.Note);
        if (note is null) ask.Bad("note", $"{car.Name} has no such note.");
        else if (c.Show) CheckNote(ask, note.Words);
        if (ask.Reasons.Count == 0 && note!.Chosen != c.Show) ask.Facts.Add(new NoteChosen(c.Note, c.Show) { Car = car.Id });
    }

    public static void Put(Ask ask, CarBoard car, AskCustomer c)
    {
        if (!ShopDecisions.IsId(c.Ask) || car.Asks.ContainsKey(c.Ask)) ask.Bad("ask", "A question needs an id of its own.");
        if (string.IsNullOrWhiteSpace(c.Words)) ask.Bad("words", "Say what you need from the customer.");
        CheckLine(ask, "words", c.Words);
        if (c.By is { } by && by < ask.Hours.DayOf(ask.Now)) ask.Bad("by", "That day is over. Give today or a later one, or leave it empty.");
        if (car.Asks.Values.Count(a => a.IsOpen) >= MostAsks) ask.Bad("words", $"{MostAsks} questions are open with this customer already. Settle one of them first.");
        if (ask.Reasons.Count == 0) ask.Facts.Add(new CustomerAsked(c.Ask, c.Words.Trim(), c.By) { Car = car.Id });
    }

    public static void Take(Ask ask, CarBoard car, TakeAnswer c)
    {
        if (!car.Asks.TryGetValue(c.Ask, out var open)) ask.Bad("ask", $"{car.Name} has no question '{c.Ask}'.");
        else if (!open.IsOpen) ask.Refuse(RuleBook.Ids.TaskState, $"{{{open.AnsweredBy}}} took the answer already.", about: c.Ask);
        if (string.IsNullOrWhiteSpace(c.Answer)) ask.Bad("answer", "Say what the customer answered, or why nothing is needed any more.");
        if (ask.Reasons.Count == 0) ask.Facts.Add(new CustomerAnswered(c.Ask, c.Answer.Trim()) { Car = car.Id });
    }

    public static void Contact(Ask ask, SetContact c)
    {
        var (phone, mail) = (c.Phone?.Trim() ?? "", c.Mail?.Trim() ?? "");
        if (phone.Length > 0 && !(phone.Length <= 30 && phone.Count(char.IsAsciiDigit) >= 3 && phone.All(x => char.IsAsciiDigit(x) || "+ ()/-".Contains(x, StringComparison.Ordinal))))
            ask.Bad("phone", "A telephone number: digits, spaces and + ( ) / -, at most 30 characters, such as +49 30 1234567.");
        if (mail.Length > 0 && !IsMail(mail)) ask.Bad("mail", "A mail address, such as shop@example.org, at most 100 characters.");
        ask.Facts.Add(new ContactSet(phone, mail));
    }

    private static bool IsMail(string mail) =>
        mail.Length <= 100 && mail.Split('@') is [{ Length: > 0 }, { Length: > 2 } host] && host.Contains('.', StringComparison.Ordinal)
        && mail.All(x => char.IsAsciiLetterOrDigit(x) || "@.-_+".Contains(x, StringComparison.Ordinal));

    private static void CheckNote(Ask ask, string? words)
    {
        if (words?.Length > LongestNote) ask.Bad("words", $"Too long for the customer's page: {LongestNote} characters at most. Write a shorter one for them.");
    }

    private static void CheckLine(Ask ask, string field, string? words)
    {
        if (words?.Length > LongestLine) ask.Bad(field, $"Too long for the customer's page: {LongestLine} characters at most.");
    }

    private static string? Trimmed(string? words) => string.IsNullOrWhiteSpace(words) ? null : words.Trim();
}
