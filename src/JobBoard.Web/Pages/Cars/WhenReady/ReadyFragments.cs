using JobBoard.Shop.Dates;
using JobBoard.Web.Live;

namespace JobBoard.Web.Pages.Cars.WhenReady;

/// <summary>The words over the picture.</summary>
public sealed class ReadyWordsFragment(MovedBook moved) : IFragment
{
    /// <inheritdoc/>
    public string Name => "ready-words";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Car;

    /// <inheritdoc/>
    public Type Component => typeof(ReadySentence);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience) =>
        new Dictionary<string, object?> { ["View"] = ReadyWords.Of(picture, moved, audience.Car!) };
}

/// <summary>The picture; its subject is <c>folded</c> or <c>unfolded</c>.</summary>
public sealed class ReadyPictureFragment : ISubjectFragment
{
    /// <summary>Finished stages task by task.</summary>
    public const string Unfolded = "unfolded";

    /// <summary>Finished stages as one bolt each.</summary>
    public const string Folded = "folded";

    /// <inheritdoc/>
    public string Name => "ready-picture";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Car;

    /// <inheritdoc/>
    public Type Component => typeof(ReadyPicture);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience, string subject) =>
        new Dictionary<string, object?> { ["View"] = ReadyPictureView.Of(picture, audience.Car!, subject == Unfolded) };
}

/// <summary>The same as a table; its subject is that of the picture.</summary>
public sealed class ReadyTableFragment : ISubjectFragment
{
    /// <inheritdoc/>
    public string Name => "ready-table";

    /// <inheritdoc/>
    public AudienceKind Audience => AudienceKind.Car;

    /// <inheritdoc/>
    public Type Component => typeof(ReadyTable);

    /// <inheritdoc/>
    public IReadOnlyDictionary<string, object?> Parameters(Picture picture, Audience audience, string subject) =>
        new Dictionary<string, object?> { ["View"] = ReadyTableView.Of(picture, audience.Car!, subject == ReadyPictureFragment.Unfolded) };
}
