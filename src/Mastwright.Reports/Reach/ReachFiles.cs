using System.Collections.Immutable;
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
    internal static string? Problem(ReachOptions options)
    {
        foreach (string path in options.Files)
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
        if ((ending is ".tif" or ".tiff") && report.Wide is { } wide)
        {
            ReachMap? band = null;
            ReachMap? compared = null;
            ReachTiffWriter.Write(path, wide.Frame, (row, rows) => ReachLayers.Of(
                options.Layer, band = wide.Band(row, rows, band), compared = report.Compared?.Wide?.Band(row, rows, compared), null, options.Direction));
        }
        else if (ending is ".tif" or ".tiff")
        {
            ReachTiffWriter.Write(path, report.Map.Field.Frame, ReachLayers.Of(options.Layer, report.Map, report.Compared?.Map, report.Range, options.Direction));
        }
        else if (ending == ".png")
        {
            ReachRelief relief = Relief(report);
            WritePicture(path, Draw(report, options, relief), relief.Frame);
        }
        else
        {
            WholeFile.Write(path, Content(ending, report, options));
        }
    }

    /// <summary>What a file with an ending holds: one of <see cref="Endings"/>.</summary>
    internal static byte[] Content(string ending, ReachReport report, ReachOptions options) => ending switch
    {
        ".tif" => Raster(report, options),
        ".png" => PngWriter.Write(Picture(report, options), PngScale),
        ".svg" => Encoding.UTF8.GetBytes(SvgWriter.Write(Picture(report, options))),
        ".geojson" => Encoding.UTF8.GetBytes(ReachGeoJson.Write(ReachContour.Of(report.Map, options.Direction), report.Map, Properties(report, options))),
        _ => Kmz(report, options),
    };

    /// <summary>The map picture.</summary>
    internal static Drawing Picture(ReachReport report, ReachOptions options) => Draw(report, options, Relief(report));

    private static ReachRelief Relief(ReachReport report) => ReachRelief.Sample(report.Ground, report.Map.Field, ReachPicture.ReliefSide, RimShare);

    /// <summary>Writes a map picture: a .png with the world file that lays it over its place, or an .svg.</summary>
    internal static void WritePicture(string path, Drawing drawing, GridFrame relief)
    {
        if (Ending(path) == ".svg")
        {
            WholeFile.Write(path, SvgWriter.Write(drawing));
            return;
        }

        WholeFile.Write(path, PngWriter.Write(drawing, PngScale));
        WholeFile.Write(Path.ChangeExtension(path, ".pgw"), WorldFile(relief));
    }

    /// <summary>The other places of a plan that a map of a grid may show.</summary>
    internal static ImmutableArray<ReachMark> Marks(Plan plan, IReadOnlyCollection<string> shown, GridFrame frame, double radiusMetres) =>
    [
        .. plan.Sites.Select(site => (site.Key, site.Name, site.Position)).Concat(plan.Neighbours.Select(neighbour => (neighbour.Key, neighbour.Name, neighbour.Position)))
            .Where(place => !shown.Contains(place.Key) && place.Position.RadiusMetres < radiusMetres / 10 && IsNear(place.Position.Point, frame))
            .Select(place => (place.Name, At: UniversalTransverseMercator.FromGeo(place.Position.Point, frame.UtmZone, frame.IsNorth)))
            .Select(place => new ReachMark(place.Name, place.At.EastingMetres, place.At.NorthingMetres)),
    ];

    /// <summary>What was assumed, in sentences, the most telling first.</summary>
    internal static ImmutableArray<string> Sentences(IEnumerable<Assumption> assumptions) => [.. assumptions.OrderBy(Rank).Select(Sentence).Distinct(StringComparer.Ordinal)];

    internal static string Ending(string path) => Path.GetExtension(path).ToLowerInvariant();

    /// <summary>Whether a place lies in a grid or within the grid's own size beside it: the projection runs wild far out.</summary>
    private static bool IsNear(GeoPoint place, GridFrame frame)
    {
        GeoPoint middle = ReachGrid.Centre(frame, frame.Columns / 2, frame.Rows / 2);
        return Geodesic.Inverse(middle, place).DistanceMetres < Math.Max(frame.Columns * frame.StepX, frame.Rows * frame.StepY);
    }

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
    private static Drawing Draw(ReachReport report, ReachOptions options, ReachRelief relief)
    {
        ReachPictureModel model = Model(report, options, relief);
        return options.Layer == ReachLayers.Difference && report.Compared is { } compared
            ? DifferencePicture.Draw(model, compared.Map, compared.Setup.Station.FitOut?.Name ?? compared.Setup.Station.Name)
            : ReachPicture.Draw(model);
    }

    private static ReachPictureModel Model(ReachReport report, ReachOptions options, ReachRelief relief)
    {
        ReachField field = report.Map.Field;
        return new()
        {
            Map = report.Map,
            Direction = options.Direction,
            Relief = relief,
            Theme = options.IsDark ? Theme.Dark : Theme.Light,
            StationName = report.Setup.Station.Name,
            FitOutName = report.Setup.Station.FitOut?.Name ?? "",
            ReceiverName = report.Setup.Receiver.Name,
            RadioText = report.RadioText(),
            MethodText = report.MethodText(),
            Marks = Marks(report.Session.Plan, [report.Setup.Station.Key], field.Frame, field.Input.RadiusMetres),
            Assumptions = Sentences(report.Assumptions),
        };
    }

    private static byte[] Kmz(ReachReport report, ReachOptions options)
    {
        ReachOverlay overlay = ReachOverlay.Draw(report.Map, options.Direction);
        string name = report.Setup.Station.Name;
        string title = options.Direction switch { ReachDirection.Hears => $"What {name} hears", ReachDirection.Both => $"Where {name} is heard and hears", _ => $"Where {name} is heard" };
        return Kmz(
            overlay, title, $"By {report.Setup.Receiver.Name}; {report.RadioText()}. {report.MethodText()} {Assumed(report.Assumptions)}", [(name, report.Map.Field.Input.Station)]);
    }

    /// <summary>An overlay packed with its legend and its stations.</summary>
    internal static byte[] Kmz(ReachOverlay overlay, string name, string description, ImmutableArray<(string Name, GeoPoint Place)> stations) => ReachKmz.Write(new()
    {
        Name = name,
        Description = description,
        Stations = stations,
        MapPng = PixelPng.Write(overlay.Image),
        LegendPng = PngWriter.Write(overlay.Legend, 1.5),
        WestDegrees = overlay.WestDegrees,
        SouthDegrees = overlay.SouthDegrees,
        EastDegrees = overlay.EastDegrees,
        NorthDegrees = overlay.NorthDegrees,
    });

    /// <summary>What was assumed, as one sentence, the most telling first.</summary>
    internal static string Assumed(IEnumerable<Assumption> assumptions) =>
        $"Assumed: {string.Join("; ", assumptions.OrderBy(Rank).Select(assumption => assumption.Text).Distinct(StringComparer.Ordinal))}.";

    private static Dictionary<string, string> Properties(ReachReport report, ReachOptions options) => new(StringComparer.Ordinal)
    {
        ["station"] = report.Setup.Station.Subject,
        ["receiver"] = report.Setup.Receiver.Name,
        ["direction"] = ReachReport.Word(options.Direction),
        ["radio"] = report.RadioText(),
        ["method"] = report.MethodText(),
        ["tolerance"] = string.Create(CultureInfo.InvariantCulture, $"lines simplified to {ReachContour.ToleranceCells * report.Map.Field.Input.CellMetres:0.##} m"),
    };

    /// <summary>Six lines that lay the picture's map over its place in the UTM zone: size of a pixel, turn, centre of the first pixel.</summary>
    private static string WorldFile(GridFrame relief)
    {
        double pixel = relief.Columns * relief.StepX / ReachPicture.MapBox.Width / PngScale;
        double west = relief.OriginX - (relief.StepX / 2) - (ReachPicture.MapBox.Left * PngScale * pixel);
        double north = relief.OriginY + (relief.StepY / 2) + (ReachPicture.MapBox.Top * PngScale * pixel);
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
}
