using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Plans;
using Mastwright.Propagation;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.Feed;
using Mastwright.Station.Radio;
using Mastwright.Tests.Ground;

namespace Mastwright.Tests.Plans;

/// <summary>A site and a neighbour 20 km apart on flat land, to try one setting at a time.</summary>
internal static class FlatPlan
{
    internal static readonly GeoPoint West = new(46.5, -18.7);

    internal static readonly GeoPoint East = new(46.5, -18.44);

    internal static Plan Of(AirPlan air, double frequencyHz = 868e6, params FeedPart[] feed) => new()
    {
        Name = "Flat",
        Air = air,
        Modem = new() { FrequencyHz = frequencyHz, BandwidthHz = 125e3, SpreadingFactor = 10, PayloadBytes = 40 },
        Sites =
        [
            new()
            {
                Key = "west",
                Name = "West",
                Position = new(West, 0),
                InUse = "pole",
                FitOuts =
                [
                    new()
                    {
                        Key = "pole",
                        Name = "Pole",
                        Antenna = new() { GainDbi = Estimate.Exactly(5), Height = new(Estimate.Exactly(5), HeightAbove.Ground) },
                        Feed = [.. feed],
                        Radio = new() { ConductedPowerDbm = Estimate.Exactly(14), NoiseFigureDb = Estimate.Exactly(6) },
                    },
                ],
            },
        ],
        Neighbours =
        [
            new()
            {
                Key = "east",
                Name = "East",
                Position = new(East, 0),
                Height = new(Estimate.Exactly(5), HeightAbove.Ground),
                GainDbi = Estimate.Exactly(2),
                PowerDbm = Estimate.Exactly(14),
                NoiseFigureDb = Estimate.Exactly(6),
            },
        ],
    };

    internal static PlanReport Check(Plan plan, StationCatalogue catalogue, RefractivityMaps? maps = null)
    {
        GroundMosaic land = GroundMosaic.Of([GroundSamples.Tile(46, -19, 101, (_, _) => 10)]);
        return new Assessment(plan, catalogue, (_, _) => land, maps).Run(new Dictionary<string, string>(StringComparer.Ordinal));
    }
}
