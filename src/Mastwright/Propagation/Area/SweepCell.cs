using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>What the closed form of P.1812 needs of one cell's path. Metres, slopes in metres per metre.</summary>
internal struct SweepCell
{
    /// <summary>Length of the path.</summary>
    internal double Length;

    /// <summary>Number of the last point on the radial, 1 or more.</summary>
    internal int Points;

    /// <summary>Height of the cell's antenna above sea level, and its slope from the station's.</summary>
    internal double AntennaMetres;
    internal double LineSlope;
    internal bool IsLineOfSight;

    /// <summary>Horizon slopes of the bare ground at the median radius, and the horizons' distances from their ends.</summary>
    internal double HorizonFromStation;
    internal double HorizonFromCell;
    internal double StationHorizonMetres;
    internal double CellHorizonMetres;

    internal BullingtonReading Median;
    internal BullingtonReading Ducting;

    /// <summary>Antenna heights above the smooth surface of the diffraction model, and of the ducting model.</summary>
    internal double OverSmoothStation;
    internal double OverSmoothCell;
    internal double EffectiveStation;
    internal double EffectiveCell;
    internal double Roughness;

    internal RadioClimate Climate;
    internal double StationToCoastMetres;
    internal double CellToCoastMetres;
    internal Zone Zone;
    internal double Latitude;
}
