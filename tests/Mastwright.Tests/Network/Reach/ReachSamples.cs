using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Network.Reach;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Tests.Ground;

namespace Mastwright.Tests.Network.Reach;

/// <summary>Made-up ground, fields and budgets.</summary>
internal static class ReachSamples
{
    internal static readonly GeoPoint Station = new(46.5, -18.5);

    /// <summary>Rolling hills of some 120 m on a tile of 3 arc-seconds and a half.</summary>
    internal static readonly GroundMosaic Hills = GroundMosaic.Of([GroundSamples.Tile(46, -19, 1001, Rolling)]);

    internal static ReachFieldInput Input(double radiusMetres, double cellMetres) => new()
    {
        Station = Station,
        RadiusMetres = radiusMetres,
        CellMetres = cellMetres,
        StationHeightMetres = 10,
        ReceiverHeightMetres = 2,
        FrequencyHz = 868e6,
    };

    internal static double Rolling(double latitude, double longitude) =>
        100 + (60 * Math.Sin(latitude * 900)) + (60 * Math.Cos(longitude * 700)) + (20 * Math.Sin((latitude + longitude) * 2500));

    /// <summary>A field whose losses are made by a rule over the metres from the middle; the station stands on the corner of four cells.</summary>
    internal static ReachField Field(int side, double cellMetres, Func<double, double, double> lossAt)
    {
        GridFrame frame = GridFrame.Utm(27, true, 690_000 + (cellMetres / 2), 5_150_000 - (cellMetres / 2), cellMetres, cellMetres, side, side, samplesAreAreas: true);
        double middle = (side - 1) / 2.0;
        UtmPosition at = new(27, true, frame.OriginX + (middle * cellMetres), frame.OriginY - (middle * cellMetres));
        float[] loss = new float[side * side];
        float[] elevation = new float[loss.Length];
        ReachFlags[] flags = new ReachFlags[loss.Length];
        for (int i = 0; i < loss.Length; i++)
        {
            loss[i] = (float)lossAt(((i % side) - middle) * cellMetres, (middle - (i / side)) * cellMetres);
            flags[i] = float.IsNaN(loss[i]) ? ReachFlags.Outside : ReachFlags.None;
            elevation[i] = float.IsNaN(loss[i]) ? float.NaN : 0;
        }

        ReachFieldInput input = Input(middle * cellMetres, cellMetres) with { Station = UniversalTransverseMercator.ToGeo(at) };
        return ReachField.FromCells(input, frame, loss, elevation, flags, []);
    }

    internal static ReachBudget Budget(AntennaFit? antenna = null)
    {
        AntennaPattern pattern = AntennaPattern.Of(
            antenna ?? new() { GainDbi = Estimate.Exactly(5), Height = new(Estimate.Exactly(10), HeightAbove.Ground) }, 868e6, "antenna");
        return new()
        {
            Station = new() { Subject = "a", Name = "A", PowerIntoAntennaDbm = Estimate.Exactly(17), GainDbi = pattern.MainBeamDbi, RequiredDbm = Estimate.Exactly(-130) },
            StationPattern = pattern,
            Receiver = new() { Subject = "b", Name = "B", PowerIntoAntennaDbm = Estimate.Exactly(14), GainDbi = Estimate.Exactly(1), RequiredDbm = Estimate.Exactly(-128) },
            EndLosses = [new("body", "Body", 3, "test")],
            Wanted = new()
            {
                MarginDb = 10,
                ModelErrorDb = 6,
                ModelErrorSource = "test",
                LocationDb = 4,
                LocationSource = "test",
                FadingDb = 3,
                FadingSource = "test",
            },
        };
    }
}
