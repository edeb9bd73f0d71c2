using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

/// <summary>One case of the validation set published beside ITU-R P.1812: a profile, the inputs and every printed result.</summary>
internal sealed record PublishedPath(PathProfile Profile, P1812Input Input, IReadOnlyList<(string Name, string Equation, double Value)> Printed)
{
    /// <summary>Reads a case by the name of its result file, such as "b2iseac_0".</summary>
    public static PublishedPath Read(string resultName)
    {
        string[][] rows = [.. File.ReadLines(TestPlaces.Reference("itu-p1812", "results", resultName + ".csv"))
            .Select(line => line.Split(','))
            .Where(cells => cells.Length >= 4 && cells[3] is not ("" or "Value"))];
        int firstResult = Array.FindIndex(rows, cells => Name(cells) == "d");
        Dictionary<string, double> given = rows[..firstResult].ToDictionary(Name, cells => Number(cells[3]), StringComparer.Ordinal);
        PathProfile profile = ReadProfile(resultName[..resultName.LastIndexOf('_')]);
        P1812Input input = new()
        {
            FrequencyHz = given["f"] * 1e9,
            TimePercent = given["p"],
            LocationPercent = given["pL"],
            LocationSigmaDb = given["sigmaL"],
            TransmitterHeightMetres = given["htg"],
            ReceiverHeightMetres = given["hrg"],
            Polarisation = given["pol"] == 1 ? WavePolarisation.Horizontal : WavePolarisation.Vertical,
            RefractivityGradient = given["DN"],
            SurfaceRefractivity = given["N0"],
            PathCentreLatitudeDegrees = PathCentre.LatitudeDegrees(
                new GeoPoint(given["phi_t"], given["lam_t"]), new GeoPoint(given["phi_r"], given["lam_r"]), profile.LengthMetres),
            DistanceToCoastTransmitterMetres = given["dct"] * 1000,
            DistanceToCoastReceiverMetres = given["dcr"] * 1000,
        };
        return new(profile, input, [.. rows[firstResult..].Where(cells => cells[0].Length > 0)
            .Select(cells => (Name(cells), cells[1], Number(cells[3])))]);
    }

    public static PathProfile ReadProfile(string name)
    {
        double[][] points = [.. File.ReadLines(TestPlaces.Reference("itu-p1812", "profiles", name + ".csv"))
            .SkipWhile(line => !line.StartsWith("{Begin of Profile}", StringComparison.Ordinal))
            .Skip(2)
            .TakeWhile(line => !line.StartsWith("{End", StringComparison.Ordinal))
            .Select(line => line.Split(',').Select(Number).ToArray())];
        return PathProfile.FromSamples(
            [.. points.Select(point => point[0] * 1000)],
            [.. points.Select(point => point[1])],
            [.. points.Select(point => point[3])],
            [.. points.Select(point => point[4] switch { 1 => Zone.Sea, 3 => Zone.Coast, _ => Zone.Inland })]);
    }

    private static string Name(string[] cells) =>
        cells[0].Contains("w.r.t.", StringComparison.Ordinal) ? "Ep of the transmitter" : cells[0].Split('(')[0].Trim();

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
