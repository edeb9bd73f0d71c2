namespace Mastwright.Ground;

/// <summary>Radio-climatic zone of a profile point (ITU-R P.1812). The default is <see cref="Inland"/>.</summary>
public enum Zone
{
    /// <summary>Inland: all land that is not coastal land.</summary>
    Inland,

    /// <summary>Coastal land: up to 100 m above the sea and within 50 km of it.</summary>
    Coast,

    /// <summary>Sea: seas, oceans and other large bodies of water joined to them.</summary>
    Sea,
}
