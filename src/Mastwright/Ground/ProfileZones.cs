namespace Mastwright.Ground;

/// <summary>The radio-climatic zone of one point of a profile.</summary>
internal static class ProfileZones
{
    /// <summary>A cover raster that calls a point water is believed up to this height: height files carry water with noise.</summary>
    private const double HighestMappedSeaMetres = 3;

    /// <summary>The zone, by the rule written at <see cref="SeaMap"/>.</summary>
    internal static Zone Of(
        SeaMap sea, double heightMetres, CoverRow? cover, double latitudeDegrees, double longitudeDegrees, ref (int Column, int Row, bool Answer) last)
    {
        bool isWater = cover is null
            ? SeaMap.Classify(heightMetres) == SeaCell.AtSeaLevel
            : cover.CoverClass == CoverClass.Water && heightMetres is >= SeaMap.LowestSeaMetres and < HighestMappedSeaMetres;
        if (isWater && sea.IsBesideSea(latitudeDegrees, longitudeDegrees))
        {
            return Zone.Sea;
        }

        bool isCoast = heightMetres <= SeaMap.CoastalHeightMetres
            && sea.IsWithinReach(latitudeDegrees, longitudeDegrees, ref last);
        return isCoast ? Zone.Coast : Zone.Inland;
    }
}
