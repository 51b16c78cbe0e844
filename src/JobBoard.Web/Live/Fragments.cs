using System.Collections.Frozen;
using System.Globalization;
using System.Text.Encodings.Web;
using JobBoard.Shop.Dates;
using JobBoard.Shop.Running;
using JobBoard.Web.Posting;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Html;

namespace JobBoard.Web.Live;

/// <summary>All fragments: rendered for a push, or into a page with its reader's seals.</summary>
public sealed class Fragments(IEnumerable<IFragment> all, Markup markup, ShopRunner runner, DateBook dates, IAntiforgery antiforgery)
{
    private readonly FrozenDictionary<string, IFragment> _byName = all.ToFrozenDictionary(f => f.Name, StringComparer.Ordinal);

    /// <summary>A picture of the shop now.</summary>
    public Picture Picture()
    {
        var state = runner.State;
        return new Picture(state, new Head(runner.JournalId, state.Seq, runner.Now), dates);
    }

    /// <summary>Whether there is such a fragment for that kind of audience.</summary>
    public bool Has(FragmentId id) =>
        _byName.TryGetValue(id.Name, out var fragment) && fragment.Audience == id.Audience.Kind && fragment is ISubjectFragment == id.Subject is not null;

    /// <summary>The fragment's html, the same for its whole audience.</summary>
    public Task<string> Render(FragmentId id, Picture picture)
    {
        var fragment = _byName[id.Name];
        var parameters = fragment is ISubjectFragment one ? one.Parameters(picture, id.Audience, id.Subject!) : fragment.Parameters(picture, id.Audience);
        return markup.Render(fragment.Component, parameters);
    }

    /// <summary>
    /// Renders what every shop looks at once, before anybody looks, so that the first push after a start waits for no compiler.
    /// </summary>
    public async Task WarmUp()
    {
        var picture = Picture();
        var person = picture.Shop.People.Values.FirstOrDefault(p => p.IsIn);
        foreach (var fragment in _byName.Values.Where(f => f is not ISubjectFragment))
        {
            var audience = fragment.Audience switch
            {
                AudienceKind.Floor => Audience.Floor,
                AudienceKind.Person when person is not null => Audience.OfPerson(person.Id),
                _ => null,
            };
            if (audience is not null) await Render(new(audience, fragment.Name), picture).ConfigureAwait(false);
        }
    }

    /// <summary>The fragment as a part of a page: in its frame with its stamp, forms ready for this reader.</summary>
    public async Task<IHtmlContent> Show(HttpContext http, string name, Audience audience, Picture? picture = null, string? subject = null)
    {
        var id = new FragmentId(audience, name, subject);
        if (!Has(id)) throw new InvalidOperationException($"There is no fragment {id}.");
        picture ??= Picture();
        var html = await Render(id, picture).ConfigureAwait(false);
        return new HtmlString($"<div {Frame(id, picture.Head)}>{Sealed(http, html, picture.Head.Seq)}</div>");
    }

    /// <summary>The fragment as a part of a page that nothing can be sent from: no seal is filled, no cookie set.</summary>
    public async Task<IHtmlContent> ShowReadOnly(string name, Audience audience)
    {
        var (id, picture) = (new FragmentId(audience, name), Picture());
        return new HtmlString($"<div {Frame(id, picture.Head)}>{await Render(id, picture).ConfigureAwait(false)}</div>");
    }

    /// <summary>Fills the blank seals of html that is no fragment.</summary>
    public string Sealed(HttpContext http, string html, long seq) =>
        FormSeal.Fill(html, antiforgery.GetAndStoreTokens(http).RequestToken, seq);

    private static string Frame(FragmentId id, Head head) => string.Create(
        CultureInfo.InvariantCulture,
        $"class=\"fragment\" data-fragment=\"{HtmlEncoder.Default.Encode(id.ToString())}\" data-journal=\"{head.JournalId}\" data-seq=\"{head.Seq}\" data-at=\"{head.At.ToUnixTimeMilliseconds()}\"");
}
