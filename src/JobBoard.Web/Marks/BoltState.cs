namespace JobBoard.Web.Marks;

/// <summary>How the bolt that stands for a task is drawn. The shape alone tells the state, never its fill.</summary>
public enum BoltState
{
    /// <summary>The bolt alone: not started, or left part-done with nobody on it.</summary>
    NotStarted,

    /// <summary>A spanner on the bolt: in hand.</summary>
    InHand,

    /// <summary>A paint line straight across head and washer: signed off.</summary>
    SignedOff,

    /// <summary>The parts of the paint line no longer in line: undone, or lapsed.</summary>
    OutOfLine,
}
