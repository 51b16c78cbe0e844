namespace JobBoard.Scheduling;

/// <summary>One thing wrong with the files, where it stands, and what would put it right.</summary>
/// <param name="File">File name without its folder.</param>
/// <param name="Line">Line from 1; 0 if it concerns the whole file.</param>
/// <param name="Field">Column or member; empty if it concerns the whole line.</param>
/// <param name="Words">What is wrong and the fix.</param>
public readonly record struct InputFault(string File, int Line, string Field, string Words)
{
    /// <inheritdoc/>
    public override string ToString() =>
        File + (Line > 0 ? $", line {Line}" : "") + (Field.Length > 0 ? $", {Field}" : "") + ": " + Words;
}
