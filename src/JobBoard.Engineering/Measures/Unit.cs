namespace JobBoard.Engineering.Measures;

/// <summary>A unit of measure: base value = (value + <c>Offset</c>) × <c>Factor</c>, both exact.</summary>
public sealed class Unit
{
    internal Unit(string symbol, Quantity quantity, Ratio factor, decimal offset, string name)
    {
        (Symbol, Quantity, Factor, Offset, Name) = (symbol, quantity, factor, offset, name);
    }

    /// <summary>How it is written on screens and in files, for instance <c>N·m</c>.</summary>
    public string Symbol { get; }

    /// <summary>What it measures.</summary>
    public Quantity Quantity { get; }

    /// <summary>Its name in words, with its definition where that is not plain.</summary>
    public string Name { get; }

    /// <summary>How many base units one of these is.</summary>
    internal Ratio Factor { get; }

    /// <summary>What is added before multiplying, in this unit; 0 but for temperatures.</summary>
    internal decimal Offset { get; }

    /// <summary>Whether it may never be below nothing (mass, absolute pressure, temperature).</summary>
    internal bool HasFloor => Quantity is Quantity.Mass or Quantity.AbsolutePressure or Quantity.Temperature;

    /// <inheritdoc/>
    public override string ToString() => Symbol;
}

/// <summary>A converted value, or words that name the field and the fix.</summary>
/// <param name="Value">The value in the unit asked for, or nothing where it could not be converted.</param>
/// <param name="Problem">Nothing where it was converted.</param>
public readonly record struct Converted(decimal? Value, string? Problem)
{
    /// <summary>Whether it was converted.</summary>
    public bool Ok => Problem is null;
}
