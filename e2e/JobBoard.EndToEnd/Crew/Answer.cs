namespace JobBoard.EndToEnd.Crew;

/// <summary>What the board answered to a tap.</summary>
/// <param name="Outcome">done, refused, invalid, ...</param>
/// <param name="At">When it was posted, in the page's milliseconds.</param>
/// <param name="Form">The form it is shown in, by its id.</param>
/// <param name="AskedPin">Whether the PIN was asked for on the way.</param>
internal sealed record Answer(string Outcome, double At, string Form, bool AskedPin = false)
{
    /// <summary>Whether it was done.</summary>
    public bool IsDone => Outcome == "done";
}
