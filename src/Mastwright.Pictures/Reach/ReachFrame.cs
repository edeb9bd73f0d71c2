using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>From metres of the map's zone to pixels of the sheet.</summary>
internal sealed record ReachFrame(Box Box, double WestMetres, double NorthMetres, double PixelsPerMetre, Spot Station)
{
    /// <summary>The frame of a relief drawn into a square box.</summary>
    public static ReachFrame Of(Box box, ReachMap map, ReachRelief relief)
    {
        GridFrame frame = relief.Frame;
        double west = frame.OriginX - (frame.StepX / 2);
        double north = frame.OriginY + (frame.StepY / 2);
        double scale = box.Width / (frame.Columns * frame.StepX);
        UtmPosition at = UniversalTransverseMercator.FromGeo(map.Field.Input.Station, frame.UtmZone, frame.IsNorth);
        ReachFrame unplaced = new(box, west, north, scale, default);
        return unplaced with { Station = unplaced.At(at.EastingMetres, at.NorthingMetres) };
    }

    /// <summary>The place of a position.</summary>
    public Spot At(double eastingMetres, double northingMetres) =>
        new(Box.Left + ((eastingMetres - WestMetres) * PixelsPerMetre), Box.Top + ((NorthMetres - northingMetres) * PixelsPerMetre));
}
