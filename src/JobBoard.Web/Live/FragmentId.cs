namespace JobBoard.Web.Live;

/// <summary>One fragment for one audience, written <c>AUDIENCE/NAME</c>, such as <c>person/inga/bay</c>.</summary>
public readonly record struct FragmentId(Audience Audience, string Name)
{
    /// <summary>Its name in the protocol and in the page.</summary>
    public override string ToString() => Audience.Key + "/" + Name;

    /// <summary>Reads an id; nothing when it is none.</summary>
    public static FragmentId? Read(string text)
    {
        var slash = text.LastIndexOf('/');
        return slash > 0 && Live.Audience.Read(text[..slash]) is { } audience ? new(audience, text[(slash + 1)..]) : null;
    }
}
