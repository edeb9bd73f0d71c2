using System.Runtime.Intrinsics;
using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>The path that a sweep gives to one cell, as a profile for the one-path method: what the sweep finds must be what that finds here.</summary>
/// <param name="Profile">The path, transmitter first: the station, unless the sweep asks what the station receives.</param>
/// <param name="Input">Radio and climate.</param>
public sealed record SweepProfile(PathProfile Profile, P1812Input Input)
{
    /// <summary>The path of a cell.</summary>
    /// <param name="raster">The ground.</param>
    /// <param name="input">What the sweep asks.</param>
    /// <param name="east">Cells to the east of the station; to the west negative.</param>
    /// <param name="north">Cells to the north of the station; to the south negative.</param>
    /// <returns>The path, or null where ground is missing on it.</returns>
    /// <remarks>
    /// Points at 0, s, 2s … on the nearest radial, the last sixteen before the cell at D − 16s … D − s on a parallel to it through the cell, and the
    /// cell. Nearer than eighteen steps one of those is left out for each step. Nearer than 0.25 km and than four and a half steps:
    /// the cell's own straight path in equal steps.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The cell is off the raster or the station's own, or a value is outside its range.</exception>
    public static SweepProfile? Of(SweepRaster raster, SweepInput input, int east, int north)
    {
        ArgumentNullException.ThrowIfNull(raster);
        input.Check(raster);
        if (Math.Abs(east) > raster.Reach || Math.Abs(north) > raster.Reach || (east == 0 && north == 0))
        {
            throw new ArgumentOutOfRangeException(nameof(east), east, "A cell of the raster other than the station's own is needed.");
        }

        SweepTerms terms = new(input, raster);
        double length = Math.Sqrt(((double)east * east) + ((double)north * north)) * raster.CellMetres;
        return length < NearCells.LimitMetres(raster)
            ? NearCells.Path(raster, in terms, east, north)?.Directed(input)
            : OnRadial(raster, in terms, east, north, length)?.Directed(input);
    }

    /// <summary>A cell's own straight path in equal steps, as for a single link: what the path of a sweep stands for.</summary>
    /// <inheritdoc cref="Of"/>
    public static SweepProfile? Straight(SweepRaster raster, SweepInput input, int east, int north)
    {
        ArgumentNullException.ThrowIfNull(raster);
        input.Check(raster);
        if (Math.Abs(east) > raster.Reach || Math.Abs(north) > raster.Reach || (east == 0 && north == 0))
        {
            throw new ArgumentOutOfRangeException(nameof(east), east, "A cell of the raster other than the station's own is needed.");
        }

        SweepTerms terms = new(input, raster);
        return NearCells.Path(raster, in terms, east, north)?.Directed(input);
    }

    /// <summary>The same path from the cell to the station where the sweep asks for that direction.</summary>
    internal SweepProfile Directed(in SweepInput input) => !input.StationReceives ? this : new(Profile.Reversed(), Input with
    {
        TransmitterHeightMetres = Input.ReceiverHeightMetres,
        ReceiverHeightMetres = Input.TransmitterHeightMetres,
        DistanceToCoastTransmitterMetres = Input.DistanceToCoastReceiverMetres,
        DistanceToCoastReceiverMetres = Input.DistanceToCoastTransmitterMetres,
    });

    internal static P1812Input PathInput(in SweepTerms terms, PathProfile profile, double east, double north) => terms.Input.ToPath(
        terms.PathCentreLatitude(east, north),
        RadioClimate.DistanceToCoastMetres(profile, PathEnd.Transmitter),
        RadioClimate.DistanceToCoastMetres(profile, PathEnd.Receiver)) with
    {
        AddCover = true,
    };

    private static SweepProfile? OnRadial(SweepRaster raster, in SweepTerms terms, int east, int north, double length)
    {
        int radials = AreaSweep.RadialsOf(raster, terms.Input);
        SweepWedges wedges = new(radials, raster.Reach, double.PositiveInfinity);
        double bearing = Math.Atan2(north, east) / (2 * Math.PI);
        int nearest = (int)Math.Round((bearing < 0 ? bearing + 1 : bearing) * radials) % radials;
        SweepRadial radial = new(raster, in terms);
        (double alongEast, double alongNorth) = wedges.Direction(nearest);
        int points = OwnPoints.LastOnRadial(length, raster.CellMetres);
        radial.Start(alongEast, -alongNorth, points);
        int cell = raster.Layout.At(east, north);
        double cellGround = raster.HeightOf(cell);
        OwnPoints own = new(raster, terms.HasCover);
        own.Aim(alongEast, -alongNorth);
        long[] cells = [cell, cell, cell, cell, cell, cell, cell, cell];
        own.Read(cells, Vector512.Create(length));
        own.ReadZones(cells);
        int repeated = (int)own.Repeated[0];
        if (radial.Known <= points || double.IsNaN(cellGround) || double.IsNaN(terms.StationGround) || Array.Exists(own.Ground, at => double.IsNaN(at[0])))
        {
            return null;
        }

        int count = points + OwnPoints.Count - repeated + 2;
        double[] distances = new double[count];
        double[] heights = new double[count];
        double[] cover = new double[count];
        Zone[] zones = new Zone[count];
        for (int i = 0; i <= points; i++)
        {
            distances[i] = radial.Distances[i];
            heights[i] = radial.Ground[i];
            cover[i] = i == 0 ? 0 : radial.CoverMetres(i);
            zones[i] = radial.ZoneAt(i);
        }

        for (int i = repeated; i < OwnPoints.Count; i++)
        {
            int point = points + 1 + i - repeated;
            distances[point] = length - own.ToEnd[i][0];
            heights[point] = own.Ground[i][0];
            cover[point] = own.Top[i][0] - own.Ground[i][0];
            zones[point] = own.ZoneAt(i, 0);
        }

        distances[count - 1] = length;
        heights[count - 1] = cellGround;
        zones[count - 1] = raster.ZoneOf(cell);
        PathProfile profile = PathProfile.FromSamples(distances, heights, cover, zones);
        return new(profile, PathInput(in terms, profile, east * raster.CellMetres, north * raster.CellMetres));
    }
}
