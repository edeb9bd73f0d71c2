using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>Stretches of sea, coast and inland along a radial, kept so that those of a path that ends anywhere follow at once.</summary>
/// <remarks>As <see cref="RadioClimate"/>: each point stands for the ground half way to its neighbours.</remarks>
internal struct SweepClimate
{
    private double sea;
    private double land;
    private double inland;
    private double longestLand;
    private double longestInland;

    /// <summary>Number of the first sea point and of the last; -1 when there is none.</summary>
    private int firstSea;
    private int lastSea;

    internal static SweepClimate Empty => new() { firstSea = -1, lastSea = -1 };

    /// <summary>Adds a point with the ground it stands for.</summary>
    internal void Add(int point, Zone zone, double share)
    {
        if (zone == Zone.Sea)
        {
            sea += share;
            land = 0;
            inland = 0;
            firstSea = firstSea < 0 ? point : firstSea;
            lastSea = point;
            return;
        }

        land += share;
        inland = zone == Zone.Inland ? inland + share : 0;
        longestLand = Math.Max(longestLand, land);
        longestInland = Math.Max(longestInland, inland);
    }

    /// <summary>The path's whole, once its last point has been added.</summary>
    internal readonly RadioClimate Of(double length) => new(longestLand == 0 ? 1 : sea / length, longestLand, longestInland);

    /// <summary>Distances over land to the sea along the path, from the station and from the cell; 500 km where there is none.</summary>
    /// <param name="step">Distance of two regular points.</param>
    /// <param name="points">Number K of the last point on the radial; the cell's own points follow.</param>
    /// <param name="cell">Number of the cell.</param>
    /// <param name="length">Distance of the cell.</param>
    internal readonly (double FromStation, double FromCell) ToCoast(double step, int points, int cell, double length)
    {
        if (firstSea < 0)
        {
            return (500_000, 500_000);
        }

        double At(int point) => point <= points ? point * step : length - ((cell - point) * step);
        double fromStation = firstSea == 0 ? 0 : (At(firstSea) + At(firstSea - 1)) / 2;
        double fromCell = lastSea == cell ? 0 : length - ((At(lastSea) + At(lastSea + 1)) / 2);
        return (fromStation, fromCell);
    }
}
