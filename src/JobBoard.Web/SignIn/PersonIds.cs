using System.Globalization;
using System.Text;
using JobBoard.Domain.Boards;

namespace JobBoard.Web.SignIn;

/// <summary>Ids for new people: their name in lower-case letters and hyphens, with a number where somebody has it already.</summary>
public static class PersonIds
{
    /// <summary>An id nobody in the shop has.</summary>
    public static string For(string name, ShopState shop)
    {
        var bare = Bare(name);
        return Enumerable.Range(1, int.MaxValue - 1)
            .Select(n => n == 1 ? bare : string.Create(CultureInfo.InvariantCulture, $"{bare}-{n}"))
            .First(id => !shop.People.ContainsKey(id));
    }

    private static string Bare(string name)
    {
        var letters = new StringBuilder();
        foreach (var c in name.Normalize(NormalizationForm.FormD).ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(c)) letters.Append(c);
            else if (c is ' ' or '-' && letters.Length > 0 && letters[^1] != '-') letters.Append('-');
        }

        var bare = letters.ToString().Trim('-');
        return bare.Length == 0 ? "person" : bare;
    }
}
