using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Propagation;
using Mastwright.Storage.Ground;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Agreement;

/// <summary>What one station heard of a hand-carried device at one place, and the ground between them.</summary>
/// <remarks>
/// Measurements: Stusek et al., IEEE Access 8 (2020), 154625–154636; data martin146/ieee-access-data, MIT licence: 868 MHz in and around
/// a hilly city. Stations' positions were worked out from the published distances; their heights and gains are not published.
/// </remarks>
internal sealed record HandCarriedLink(string Station, GeoPoint Device, ImmutableArray<double> SignalsDbm, PathProfile Ground, double MiddleLatitudeDegrees)
{
    internal const double FrequencyHz = 868e6;

    /// <summary>Assumed: held at 1.5 m, at the band's usual limit of 14 dBm e.r.p., which is 16.15 dBm e.i.r.p.</summary>
    internal const double DeviceHeightMetres = 1.5;

    /// <inheritdoc cref="DeviceHeightMetres"/>
    internal const double DeviceEirpDbm = 16.15;

    private static readonly Lazy<ImmutableArray<HandCarriedLink>> Loaded = new(Load);

    /// <summary>Every link of 0.25 km or more whose ground is on the one height tile at hand.</summary>
    internal static ImmutableArray<HandCarriedLink> All => Loaded.Value;

    internal double DistanceKm => Ground.LengthMetres / 1000;

    /// <summary>Loss between isotropic antennas, if the station's antenna has as much gain as its feed has loss.</summary>
    internal double MeasuredLossDb => DeviceEirpDbm - SignalsDbm.Average();

    /// <summary>The prediction for half of the time and places.</summary>
    /// <param name="stationHeightMetres">Height of the station's antenna above ground.</param>
    /// <param name="coverMetres">Height of cover assumed on the whole path; the profile's rule leaves it off both end points.</param>
    internal PathLossPrediction Predict(double stationHeightMetres, double coverMetres)
    {
        double[] cover = new double[Ground.Count];
        Array.Fill(cover, coverMetres);
        return PathLoss.Predict(
            PathProfile.FromSamples(Ground.DistancesMetres, Ground.HeightsMetres, cover, Ground.Zones),
            new()
            {
                FrequencyHz = FrequencyHz,
                TransmitterHeightMetres = DeviceHeightMetres,
                ReceiverHeightMetres = stationHeightMetres,
                PathCentreLatitudeDegrees = MiddleLatitudeDegrees,
            });
    }

    private static ImmutableArray<HandCarriedLink> Load()
    {
        string tile = TestPlaces.Reference("terrain", "N49E016.hgt");
        using GroundLibrary library = GroundLibrary.Open(
            Path.GetDirectoryName(tile)!, [new HeightSource { Name = "tile", Files = [Path.GetFileName(tile)], Kind = HeightKind.BareEarth, Datum = "EGM96" }], []);
        ImmutableArray<HandCarriedLink>.Builder links = ImmutableArray.CreateBuilder<HandCarriedLink>();
        foreach (IGrouping<(string Station, GeoPoint At, GeoPoint Device), double> heard in Receptions())
        {
            (string station, GeoPoint at, GeoPoint device) = heard.Key;
            TerrainProfile terrain = TerrainProfile.Extract(library.MosaicFor(device, at), device, at);
            if (terrain.IsComplete && terrain.LengthMetres >= ModelRange.ShortestPathMetres)
            {
                links.Add(new(station, device, [.. heard], PathProfiles.From(terrain), PathCentre.LatitudeDegrees(device, at, terrain.LengthMetres)));
            }
        }

        return links.ToImmutable();
    }

    private static IEnumerable<IGrouping<(string Station, GeoPoint At, GeoPoint Device), double>> Receptions() =>
        File.ReadLines(TestPlaces.Reference("measured", "brno-868", "links.csv"))
            .Skip(1)
            .Select(line => line.Split(','))
            .Where(cells => cells[0].Length > 0)
            .GroupBy(
                cells => (cells[0], new GeoPoint(Number(cells[1]), Number(cells[2])), new GeoPoint(Number(cells[4]), Number(cells[5]))),
                cells => ReceivedPower.SignalDbm(Number(cells[8]), Number(cells[9])));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
