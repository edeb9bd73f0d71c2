using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>From metres of the map's zone to pixels of the sheet.</summary>
internal sealed record ReachFrame(Box Box, double WestMetres, double NorthMetres, double PixelsPerMetre, UtmPosition Middle)
{
    /// <summary>The frame of a relief drawn into a square box.</summary>
    public static ReachFrame Of(Box box, ReachRelief relief)
    {
        GridFrame frame = relief.Frame;
        double west = frame.OriginX - (frame.StepX / 2);
        double north = frame.OriginY + (frame.StepY / 2);
        double side = frame.Columns * frame.StepX;
        return new(box, west, north, box.Width / side, new(frame.UtmZone, frame.IsNorth, west + (side / 2), north - (side / 2)));
    }

    /// <summary>The place of a position.</summary>
    public Spot At(double eastingMetres, double northingMetres) =>
        new(Box.Left + ((eastingMetres - WestMetres) * PixelsPerMetre), Box.Top + ((NorthMetres - northingMetres) * PixelsPerMetre));

    /// <summary>The place of a station.</summary>
    public Spot At(MapStation station) => At(station.EastingMetres, station.NorthingMetres);
}
