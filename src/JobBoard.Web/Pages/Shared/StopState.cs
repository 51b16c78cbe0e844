namespace JobBoard.Web.Pages.Shared;

/// <summary>Where a stop has got to; a released stop is no longer shown.</summary>
public enum StopState
{
    /// <summary>Raised; the people it touches are told to stop.</summary>
    ToldToStop,

    /// <summary>Made safe: somebody has said how it was left. It holds until released.</summary>
    MadeSafe,
}
