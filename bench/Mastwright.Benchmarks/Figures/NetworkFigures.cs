using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Air;
using Mastwright.Network.Links;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.Radio;
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

    /// <summary>A thousand stations that hear 20 others on average, a report of 20 bytes an hour each, flooded over three hops for a day.</summary>
    internal static IEnumerable<Figure> MeasureAir()
    {
        ModemSetting modem = new() { FrequencyHz = 868e6, BandwidthHz = 125e3, SpreadingFactor = 9, PayloadBytes = 20 };
        AirtimeResult airtime = Airtime.Compute(modem);
        AirSettings settings = new() { AirtimeSeconds = airtime.TotalSeconds, PreambleSeconds = airtime.PreambleSeconds, HopLimit = 3, FadingDb = 3, CaptureDb = CaptureThresholds.Db(9, 9) };
        AirNetwork network = Thousand(new(1, 0));
        AirResult result = AirSimulation.Run(network, settings with { DurationSeconds = 3600 });
        foreach ((string name, double reports) in new[] { ("air of 1,000 stations, 20 neighbours, 3 hops, 24 h", 1.0), ("the same at saturation, 20 reports an hour, 1 h", 20) })
        {
            AirNetwork loaded = network.With([.. network.Traffic.Select(_ => new AirTraffic(reports, 0))]);
            Figure figure = Sample.Time(name, "ms", 60_000, 1, () => result = AirSimulation.Run(loaded, reports > 1 ? settings with { DurationSeconds = 3600 } : settings));
            Console.Out.WriteLine(FormattableString.Invariant(
                $"{name}: {result.Events / figure.Value * 1e3 / 1e6:0.00} million events and {result.Strong / figure.Value * 1e3 / 1e6:0.00} million receptions a second; {result.Sent} sent, {100 * result.DeliveredShare:0} % delivered, busy {100 * result.Stations.Average(one => one.BusySeconds) / result.DurationSeconds:0} %."));
            yield return figure;
        }
    }

    /// <summary>A thousand stations spread as below over a square whose edges meet, margins by distance alone: 35 dB a decade, 0 dB where 20 are nearer.</summary>
    private static AirNetwork Thousand(AirTraffic traffic)
    {
        const int Count = 1000;
        double radius = Math.Sqrt(20.0 / Count / Math.PI);
        (double X, double Y)[] places = [.. Enumerable.Range(1, Count).Select(i => (i * 0.7548776662466927 % 1, i * 0.5698402909980532 % 1))];
        return new(
            [.. Enumerable.Repeat(traffic, Count)],
            from one in Enumerable.Range(0, Count)
            from other in Enumerable.Range(0, Count)
            where one != other
            let x = Math.IEEERemainder(places[one].X - places[other].X, 1)
            let y = Math.IEEERemainder(places[one].Y - places[other].Y, 1)
            select (one, other, 35 * Math.Log10(radius / Math.Sqrt((x * x) + (y * y)))));
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
