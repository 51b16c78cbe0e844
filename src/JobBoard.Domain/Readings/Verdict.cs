namespace JobBoard.Domain.Readings;

/// <summary>What a reading says about its limits (ISO 14253-1: conforms, does not conform, neither proven).</summary>
public enum Verdict
{
    InLimits,
    Out,
    TooCloseToCall,
}
