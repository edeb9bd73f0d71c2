namespace Mastwright.Station.Supply;

/// <summary>A catalogue row: a cable that carries power, a data cable with pairs or a cable with two cores.</summary>
public sealed record CableRow
{
    /// <summary>Its key, such as "cat-5e".</summary>
    public required string Key { get; init; }

    /// <summary>What a person reads.</summary>
    public required string Name { get; init; }

    /// <summary>Pairs of a data cable; 0 for a cable with two cores.</summary>
    public required int Pairs { get; init; }

    /// <summary>Resistance of one conductor at 20 °C in ohms per kilometre, greater than zero.</summary>
    public required double OhmsPerKilometre { get; init; }

    /// <summary>What the conductors are made of.</summary>
    public ConductorMetal Metal { get; init; }

    /// <summary>The most current in one conductor, in amperes.</summary>
    public required double MostAmperes { get; init; }

    /// <summary>Diameter over the sheath, in millimetres.</summary>
    public required double SheathMillimetres { get; init; }

    /// <summary>The highest temperature that conductor and sheath bear, in °C.</summary>
    public required double MostCelsius { get; init; }

    /// <summary>Document, "common practice" or "from memory".</summary>
    public required string Source { get; init; }

    /// <summary>Whether it is a data cable.</summary>
    public bool IsData => Pairs > 0;
}
