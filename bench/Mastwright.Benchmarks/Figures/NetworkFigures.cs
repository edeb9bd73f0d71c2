using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Links;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Ground;
using Mastwright.Storage.Plans;

namespace Mastwright.Benchmarks.Figures;

/// <summary>What a network of many stations costs.</summary>
internal static class NetworkFigures
{
    private const int Stations = 200;

    internal static IEnumerable<Figure> Measure(string demoFolder)
    {
        PlanReading reading = PlanFile.Read(Path.Combine(demoFolder, "plan.yaml"));
        PlanDocument document = reading.Document ?? throw new InvalidOperationException($"{demoFolder}: {reading.Problems[0]}");
        using GroundLibrary library = GroundLibrary.Open(document.Folder, document.Plan.Heights, document.Plan.Covers);
        GeoBounds area = new(46.28, -18.85, 46.52, -18.35);
        GroundMosaic mosaic = library.MosaicFor(area.Expanded(1000));
        Plan plan = document.Plan with { Sites = [], Links = [], Neighbours = Places(mosaic, area) };
        Assessment assessment = new(plan, StationCatalogueFile.LoadBuiltIn(), (_, _) => mosaic);
        ImmutableArray<LinkStation> stations = LinkSelection.Stations(plan, ImmutableDictionary<string, string>.Empty);
        PathMemory memory = new();
        int known = 0;
        yield return Sample.Time("links of 200 stations, 19,900 pairs, 1 arc-second", "ms", 5000, 3, () => known = assessment.Matrix(stations, memory = new()).Matrix.Pairs.ToArray().Count(pair => pair.LeastMarginDb is not null));
        Console.Out.WriteLine($"{known} of {LinkMatrix.PairCount(Stations)} pairs are known.");
        yield return Sample.Time("the same with all paths kept from before", "ms", 4000, 3, () => assessment.Matrix(stations, memory));
    }

    /// <summary>Places on land, spread by the fractional parts of multiples of two irrational numbers.</summary>
    private static ImmutableArray<Neighbour> Places(GroundMosaic mosaic, GeoBounds area)
    {
        ImmutableArray<Neighbour>.Builder places = ImmutableArray.CreateBuilder<Neighbour>(Stations);
        for (int i = 1; places.Count < Stations; i++)
        {
            GeoPoint place = new(
                area.SouthDegrees + (i * 0.7548776662466927 % 1 * (area.NorthDegrees - area.SouthDegrees)),
                area.WestDegrees + (i * 0.5698402909980532 % 1 * area.WidthDegrees));
            if (mosaic.HeightAt(place) is { IsOpenSea: false, Metres: > 3 })
            {
                places.Add(new()
                {
                    Key = FormattableString.Invariant($"s{i}"),
                    Name = FormattableString.Invariant($"Station {i}"),
                    Position = new(place, 0),
                    Height = new(Estimate.Exactly(8), HeightAbove.Ground),
                    GainDbi = Estimate.Exactly(2),
                    PowerDbm = Estimate.Exactly(14),
                    NoiseFigureDb = Estimate.Exactly(6),
                });
            }
        }

        return places.ToImmutable();
    }
}
