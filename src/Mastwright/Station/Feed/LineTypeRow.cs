using System.Collections.Immutable;

namespace Mastwright.Station.Feed;

/// <summary>A generic type of coaxial line with its published attenuation: a catalogue row.</summary>
public sealed record LineTypeRow
{
    /// <summary>Makes a row and fits its points.</summary>
    /// <exception cref="ArgumentException">The points cannot be fitted.</exception>
    public LineTypeRow(string key, string name, ImmutableArray<AttenuationPoint> points, double referenceTemperatureCelsius, string source)
    {
        Key = key;
        Name = name;
        Points = points;
        ReferenceTemperatureCelsius = referenceTemperatureCelsius;
        Source = source;
        Fit = AttenuationFit.Fit(points);
    }

    /// <summary>Catalogue key, such as "rg-213".</summary>
    public string Key { get; }

    /// <summary>What a person reads.</summary>
    public string Name { get; }

    /// <summary>The published points.</summary>
    public ImmutableArray<AttenuationPoint> Points { get; }

    /// <summary>Temperature that the points hold for, in degrees Celsius.</summary>
    public double ReferenceTemperatureCelsius { get; }

    /// <summary>Document and table, or "from memory".</summary>
    public string Source { get; }

    /// <summary>The curve through the points.</summary>
    public AttenuationFit Fit { get; }

    /// <summary>Whether a frequency lies outside the published points, so that the curve is extrapolated.</summary>
    public bool Extrapolates(double frequencyHz) => frequencyHz < Fit.LowestHz || frequencyHz > Fit.HighestHz;

    /// <summary>Attenuation in dB per 100 m.</summary>
    /// <param name="frequencyHz">Frequency in hertz, greater than zero.</param>
    /// <param name="temperatureCelsius">Temperature of the line; null for that of the table.</param>
    public double DbPer100Metres(double frequencyHz, double? temperatureCelsius = null) =>
        Fit.DbPer100Metres(frequencyHz, (temperatureCelsius ?? ReferenceTemperatureCelsius) - ReferenceTemperatureCelsius);

    /// <summary>Key and name.</summary>
    public override string ToString() => $"{Key} ({Name})";
}
