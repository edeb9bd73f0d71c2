using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Reach;
using Mastwright.Pictures.Writers;
using Mastwright.Plans;
using Mastwright.Storage.Files;
using Mastwright.Storage.Reach;

namespace Mastwright.Reports.Reach;

/// <summary>Writes a reach map into files, each in the form that its ending says.</summary>
internal static class ReachFiles
{
    internal const string Endings = ".png or .svg (map picture), .tif (raster), .geojson (contours), .kmz (overlay for a globe)";

    internal const double RimShare = ReachPicture.RimShare;

    private const double PngScale = 2;

    /// <summary>What is wrong with the files asked for; null when nothing is.</summary>
    internal static string? Problem(IEnumerable<string> paths)
    {
        foreach (string path in paths)
        {
            if (Ending(path) is not (".png" or ".svg" or ".tif" or ".tiff" or ".geojson" or ".kmz"))
            {
                return $"--out: '{path}' ends in none of {Endings}";
            }

            string? folder = Path.GetDirectoryName(Path.GetFullPath(path));
            if (!Directory.Exists(folder))
            {
                return $"--out: there is no folder '{folder}'";
            }
        }

        return null;
    }

    /// <summary>Whether one of the files shows the ground around the map.</summary>
    internal static bool HaveRelief(IEnumerable<string> paths) => paths.Any(path => Ending(path) is ".png" or ".svg");

    /// <summary>Whether one of the files is drawn as pixels.</summary>
    internal static bool HavePicture(IEnumerable<string> paths) => paths.Any(path => Ending(path) is ".png" or ".kmz");

    /// <summary>Writes one file, and beside a picture of pixels the file that lays it over its place; half a file is never there.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    internal static void Write(string path, ReachReport report, ReachOptions options)
    {
        string ending = Ending(path);
        if (ending is ".tif" or ".tiff")
        {
            ReachTiffWriter.Write(path, report.Map.Field.Frame, ReachLayers.Of(options.Layer, report.Map, report.Compared?.Map, options.Direction));
            return;
        }

        WholeFile.Write(path, Content(ending, report, options));
        if (ending == ".png")
        {
            WholeFile.Write(Path.ChangeExtension(path, ".pgw"), WorldFile(report));
        }
    }

    /// <summary>What a file with an ending holds: one of <see cref="Endings"/>.</summary>
    internal static byte[] Content(string ending, ReachReport report, ReachOptions options) => ending switch
    {
        ".tif" => Raster(report, options),
        ".png" => PngWriter.Write(Draw(report, options), PngScale),
        ".svg" => Encoding.UTF8.GetBytes(SvgWriter.Write(Draw(report, options))),
        ".geojson" => Encoding.UTF8.GetBytes(ReachGeoJson.Write(ReachContour.Of(report.Map, options.Direction), report.Map, Properties(report, options))),
        _ => Kmz(report, options),
    };

    /// <summary>The raster's bytes: its library writes files that can be sought in, so it goes by way of one.</summary>
    private static byte[] Raster(ReachReport report, ReachOptions options)
    {
        string folder = Directory.CreateTempSubdirectory("mastwright-").FullName;
        try
        {
            string path = Path.Combine(folder, "reach.tif");
            Write(path, report, options);
            return File.ReadAllBytes(path);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The picture.</summary>
    private static Drawing Draw(ReachReport report, ReachOptions options)
    {
        ReachField field = report.Map.Field;
        Plan plan = report.Session.Plan;
        IEnumerable<(string Key, string Name, LocatedPoint Position)> places = plan.Sites.Select(site => (site.Key, site.Name, site.Position))
            .Concat(plan.Neighbours.Select(neighbour => (neighbour.Key, neighbour.Name, neighbour.Position)));
        return ReachPicture.Draw(new()
        {
            Map = report.Map,
            Direction = options.Direction,
            Relief = Relief(report),
            StationName = report.Setup.Station.Name,
            FitOutName = report.Setup.Station.FitOut?.Name ?? "",
            ReceiverName = report.Setup.Receiver.Name,
            RadioText = report.RadioText(),
            MethodText = report.MethodText(),
            Marks =
            [
                .. places.Where(place => place.Key != report.Setup.Station.Key && place.Position.RadiusMetres < field.Input.RadiusMetres / 10)
                    .Where(place => Geodesic.Inverse(field.Input.Station, place.Position.Point).DistanceMetres < 2 * field.Input.RadiusMetres)
                    .Select(place => (place.Name, At: UniversalTransverseMercator.FromGeo(place.Position.Point, field.Frame.UtmZone, field.Frame.IsNorth)))
                    .Select(place => new ReachMark(place.Name, place.At.EastingMetres, place.At.NorthingMetres)),
            ],
            Assumptions = [.. report.Setup.Assumptions.OrderBy(Rank).Select(Sentence).Distinct(StringComparer.Ordinal)],
        });
    }

    private static byte[] Kmz(ReachReport report, ReachOptions options)
    {
        ReachOverlay overlay = ReachOverlay.Draw(report.Map, options.Direction);
        string name = report.Setup.Station.Name;
        string title = options.Direction switch { ReachDirection.Hears => $"What {name} hears", ReachDirection.Both => $"Where {name} is heard and hears", _ => $"Where {name} is heard" };
        return ReachKmz.Write(new()
        {
            Name = title,
            Description = $"By {report.Setup.Receiver.Name}; {report.RadioText()}. {report.MethodText()} Assumed: {string.Join("; ", report.Setup.Assumptions.OrderBy(Rank).Select(assumption => assumption.Text).Distinct(StringComparer.Ordinal))}.",
            StationName = name,
            Station = report.Map.Field.Input.Station,
            MapPng = PixelPng.Write(overlay.Image),
            LegendPng = PngWriter.Write(overlay.Legend, 1.5),
            WestDegrees = overlay.WestDegrees,
            SouthDegrees = overlay.SouthDegrees,
            EastDegrees = overlay.EastDegrees,
            NorthDegrees = overlay.NorthDegrees,
        });
    }

    private static Dictionary<string, string> Properties(ReachReport report, ReachOptions options) => new(StringComparer.Ordinal)
    {
        ["station"] = report.Setup.Station.Subject,
        ["receiver"] = report.Setup.Receiver.Name,
        ["direction"] = ReachReport.Word(options.Direction),
        ["radio"] = report.RadioText(),
        ["method"] = report.MethodText(),
        ["tolerance"] = string.Create(CultureInfo.InvariantCulture, $"lines simplified to {ReachContour.ToleranceCells * options.Area.CellMetres:0.##} m"),
    };

    private static ReachRelief Relief(ReachReport report) => ReachRelief.Sample(report.Ground, report.Map.Field, ReachPicture.ReliefSide, RimShare);

    /// <summary>Six lines that lay the picture's map over its place in the UTM zone: size of a pixel, turn, centre of the first pixel.</summary>
    private static string WorldFile(ReachReport report)
    {
        GridFrame field = report.Map.Field.Frame;
        (double column, double row) = field.Locate(report.Map.Field.Input.Station);
        double half = report.Map.Field.Input.RadiusMetres * (1 + RimShare);
        double pixel = 2 * half / ReachPicture.MapBox.Width / PngScale;
        double west = field.OriginX + (column * field.StepX) - half - (ReachPicture.MapBox.Left * PngScale * pixel);
        double north = field.OriginY - (row * field.StepY) + half + (ReachPicture.MapBox.Top * PngScale * pixel);
        return string.Create(CultureInfo.InvariantCulture, $"{pixel:R}\n0\n0\n{-pixel:R}\n{west + (pixel / 2):R}\n{north - (pixel / 2):R}\n");
    }

    /// <summary>The most telling first: what is carried about, noise, spreads, the map's own; what is bolted on last.</summary>
    private static int Rank(Assumption assumption) => assumption.Code switch
    {
        { } code when code.StartsWith("receiver-", StringComparison.Ordinal) => 0,
        "external-noise" => 1,
        "model-error" or "fading" or "location-spread" => 2,
        { } code when code.StartsWith("reach-", StringComparison.Ordinal) => 3,
        _ => 4,
    };

    private static string Sentence(Assumption assumption) => char.ToUpperInvariant(assumption.Text[0]) + assumption.Text[1..];

    private static string Ending(string path) => Path.GetExtension(path).ToLowerInvariant();
}
