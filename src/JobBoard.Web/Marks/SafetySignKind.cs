namespace JobBoard.Web.Marks;

/// <summary>
/// The ISO 7010 signs the screens draw, each under its registered number. A danger without a sign of its own here takes
/// <see cref="W001"/> and is told by its words.
/// </summary>
public enum SafetySignKind
{
    /// <summary>General warning.</summary>
    W001,

    /// <summary>Electricity.</summary>
    W012,

    /// <summary>Overhead load: the suspended load.</summary>
    W015,

    /// <summary>Toxic material; here carbon monoxide in exhaust.</summary>
    W016,

    /// <summary>Hot surface.</summary>
    W017,

    /// <summary>Flammable material.</summary>
    W021,

    /// <summary>Battery charging.</summary>
    W026,

    /// <summary>No open flame.</summary>
    P003,

    /// <summary>Wear ear protection.</summary>
    M003,

    /// <summary>Wear eye protection.</summary>
    M004,

    /// <summary>Fire extinguisher.</summary>
    F001,
}
