using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Reach;
using Mastwright.Storage.Files;
using Mastwright.Storage.Reach;

namespace Mastwright.Reports.Reach;

/// <summary>Writes best server and count of several stations into files, each in the form that its ending says.</summary>
internal static class SeveralFiles
{
    /// <summary>Writes one file, and beside a raster the names of its numbers; half a file is never there.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    internal static void Write(string path, SeveralReport report, ReachOptions options)
    {
        BestServerLayer layer = report.Servers.Layer(options.Direction);
        switch (ReachFiles.Ending(path))
        {
            case ".png" or ".svg":
                ReachRelief relief = ReachRelief.Over(report.Session.Ground.MosaicFor, report.Servers.Frame, ReachPicture.ReliefSide, ReachPicture.RimShare);
                ReachFiles.WritePicture(path, Draw(report, options, relief), relief.Frame);
                break;
            case ".kmz":
                WholeFile.Write(path, Kmz(report, options));
                break;
            case ".geojson":
                WholeFile.Write(path, GeoJson(report, options, layer));
                break;
            default:
                Raster(path, report, options.Layer, layer);
                break;
        }
    }

    private static Drawing Draw(SeveralReport report, ReachOptions options, ReachRelief relief) => ServerPicture.Draw(new()
    {
        Servers = report.Servers,
        Direction = options.Direction,
        ShowsCount = options.Layer == ReachLayers.StationCount,
        Stations = report.Stations,
        Relief = relief,
        ReceiverName = report.Receiver.Name,
        RadioText = report.RadioText,
        MethodText = report.MethodText(),
        Marks = ReachFiles.Marks(report.Session.Plan, [.. report.Setups.Select(setup => setup.Station.Key)], report.Servers.Frame, report.Area.RadiusMetres),
        Theme = options.IsDark ? Theme.Dark : Theme.Light,
        Assumptions = ReachFiles.Sentences(report.Assumptions),
    });

    private static byte[] Kmz(SeveralReport report, ReachOptions options)
    {
        bool showsCount = options.Layer == ReachLayers.StationCount;
        ImmutableArray<MapStation> stations = report.Stations;
        ReachOverlay overlay = ReachOverlay.Draw(
            report.Servers, options.Direction, showsCount, stations, GeoBounds.Of([.. report.Setups.Select(setup => setup.Station.Position.Point)]).Expanded(report.Area.RadiusMetres));
        return ReachFiles.Kmz(
            overlay,
            showsCount ? $"How many of {stations.Length} stations reach a place" : $"Which of {stations.Length} stations serves a place best",
            $"By {report.Receiver.Name}; {report.RadioText}. {report.MethodText()} {ReachFiles.Assumed(report.Assumptions)}",
            [.. report.Setups.Select((setup, i) => ($"{i + 1}  {stations[i].Name}", setup.Station.Position.Point))]);
    }

    private static void Raster(string path, SeveralReport report, string wanted, BestServerLayer layer)
    {
        if (wanted == ReachLayers.Margin)
        {
            ReachTiffWriter.Write(path, report.Servers.Frame, layer.MarginsDb.ToArray());
            return;
        }

        bool isCount = wanted == ReachLayers.StationCount;
        ushort[] values = isCount ? layer.Counts.ToArray() : layer.Servers();
        for (int cell = 0; cell < values.Length; cell++)
        {
            values[cell] = float.IsNaN(layer.MarginsDb[cell]) ? ReachTiffWriter.NoNumber : values[cell];
        }

        ReachTiffWriter.WriteNumbers(path, report.Servers.Frame, values);
        if (!isCount)
        {
            WholeFile.Write(path + RasterNames.Ending, RasterNames.Write(["no station", .. report.Stations.Select(station => station.Name)]));
        }
    }

    /// <summary>Each station as a point, with the area it serves best; with the count, the area that at least so many reach.</summary>
    private static string GeoJson(SeveralReport report, ReachOptions options, BestServerLayer layer)
    {
        Dictionary<string, string> properties = new(StringComparer.Ordinal)
        {
            ["receiver"] = report.Receiver.Name,
            ["direction"] = ReachReport.Word(options.Direction),
            ["radio"] = report.RadioText,
            ["method"] = report.MethodText(),
            ["tolerance"] = string.Create(CultureInfo.InvariantCulture, $"lines simplified to {ReachContour.ToleranceCells * options.Area.CellMetres:0.##} m"),
        };
        List<ReachFeature> features = [.. report.Setups.Select((setup, i) => Of(report, i) with { Place = setup.Station.Position.Point })];
        features.AddRange(options.Layer switch
        {
            ReachLayers.StationCount => Enumerable.Range(1, layer.CellsByCount(report.Servers.Flags).Length - 1)
                .Select(count => Area(report, Values(layer, cell => layer.Counts[cell]), count - 0.5, new() { Numbers = [new("stations-from", count)] })),
            ReachLayers.Margin => ReachClasses.Edges(report.Session.Assessment.Settings.Wanted.MarginDb)
                .Select(edge => Area(report, layer.MarginsDb.ToArray(), edge, new() { Numbers = [new("margin-from-db", edge)] })),
            _ => report.Setups.Select((_, i) => Area(report, Values(layer, cell => layer.ServerOf(cell) == i + 1 ? 1 : 0), 0.5, Of(report, i))),
        });
        return ReachGeoJson.Write(features, properties);
    }

    private static ReachFeature Area(SeveralReport report, float[] values, double level, ReachFeature feature)
    {
        ReachContour contour = ReachContour.Around(report.Servers.Frame, values, level);
        return feature with { Patches = contour.Patches, Numbers = [.. feature.Numbers, new("area-square-metres", Math.Round(contour.AreaSquareMetres))] };
    }

    private static ReachFeature Of(SeveralReport report, int index) => new()
    {
        Words = [new("station", report.Setups[index].Station.Subject), new("station-name", report.Stations[index].Name)],
        Numbers = [new("number", index + 1)],
    };

    private static float[] Values(BestServerLayer layer, Func<int, float> of)
    {
        float[] values = new float[layer.Counts.Length];
        for (int cell = 0; cell < values.Length; cell++)
        {
            values[cell] = float.IsNaN(layer.MarginsDb[cell]) ? float.NaN : of(cell);
        }

        return values;
    }
}
