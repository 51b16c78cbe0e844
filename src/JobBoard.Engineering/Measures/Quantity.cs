namespace JobBoard.Engineering.Measures;

/// <summary>
/// What a unit measures. Two units convert into each other only within one kind, so gauge and absolute pressure,
/// which differ by the air pressure of the day, are two kinds.
/// </summary>
public enum Quantity
{
    /// <summary>Base kg, never below 0.</summary>
    Mass,

    /// <summary>Base N.</summary>
    Force,

    /// <summary>Base N·m.</summary>
    Torque,

    /// <summary>Pressure above (or below) the air around, and pressure differences. Base kPa.</summary>
    GaugePressure,

    /// <summary>Pressure above nothing at all. Base kPa abs, never below 0.</summary>
    AbsolutePressure,

    /// <summary>Base V.</summary>
    Voltage,

    /// <summary>Base A.</summary>
    Current,

    /// <summary>Base Ω.</summary>
    Resistance,

    /// <summary>Base A·h.</summary>
    Charge,

    /// <summary>Base W.</summary>
    Power,

    /// <summary>Base m.</summary>
    Length,

    /// <summary>Base °.</summary>
    Angle,

    /// <summary>Base K, never below 0.</summary>
    Temperature,

    /// <summary>Base s.</summary>
    Time,

    /// <summary>Base l.</summary>
    Volume,

    /// <summary>Volume in a time. Base l/h.</summary>
    Flow,

    /// <summary>Mass in a time. Base g/s.</summary>
    MassFlow,

    /// <summary>Turns in a time. Base 1/min.</summary>
    Speed,

    /// <summary>A share. Base %.</summary>
    Share,

    /// <summary>Things counted. Base pcs.</summary>
    Count,
}
