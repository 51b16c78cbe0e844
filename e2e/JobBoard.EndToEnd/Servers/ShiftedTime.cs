namespace JobBoard.EndToEnd.Servers;

/// <summary>The system's time, so much earlier or later.</summary>
internal sealed class ShiftedTime(TimeSpan by) : TimeProvider
{
    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => System.GetUtcNow() + by;
}
