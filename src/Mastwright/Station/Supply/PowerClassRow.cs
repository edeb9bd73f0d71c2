namespace Mastwright.Station.Supply;

/// <summary>A catalogue row: a class of power over data cable.</summary>
public sealed record PowerClassRow
{
    /// <summary>Its key, such as "class-3".</summary>
    public required string Key { get; init; }

    /// <summary>Type of the standard, 1 to 4.</summary>
    public required int Type { get; init; }

    /// <summary>Pairs that carry the power, 2 or 4.</summary>
    public required int Pairs { get; init; }

    /// <summary>What the source gives at least, in watts.</summary>
    public required double SourceWatts { get; init; }

    /// <summary>What the powered device may take, in watts.</summary>
    public required double DeviceWatts { get; init; }

    /// <summary>The least voltage at the source.</summary>
    public required double SourceLeastVolts { get; init; }

    /// <summary>The least voltage at the powered device.</summary>
    public required double DeviceLeastVolts { get; init; }

    /// <summary>The most voltage at either end.</summary>
    public required double MostVolts { get; init; }

    /// <summary>The most current over all its pairs together, in amperes.</summary>
    public required double MostAmperes { get; init; }

    /// <summary>Document and clause.</summary>
    public required string Source { get; init; }
}
