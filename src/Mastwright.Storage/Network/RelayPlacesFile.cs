using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Network.Relays;
using Mastwright.Quantities;
using Mastwright.Storage.Plans.Exchange;

namespace Mastwright.Storage.Network;

/// <summary>A user's list of places for relays: any file of places, whose properties or columns mast, power and access are read as well.</summary>
public static class RelayPlacesFile
{
    private const double LeastMastMetres = 0.5;
    private const double MostMastMetres = 200;

    /// <summary>Reads a file. Never throws for what it holds.</summary>
    /// <param name="path">The file: .csv, .geojson, .gpx or .kml.</param>
    /// <param name="mastMetres">Height of the antenna where the file gives none, in metres.</param>
    /// <param name="problem">What is wrong; empty when nothing is.</param>
    public static ImmutableArray<RelayCandidate> Read(string path, double mastMetres, out string problem)
    {
        PlaceReading reading = PlaceFile.Read(path);
        problem = reading.Problems.IsEmpty ? reading.Places.IsEmpty ? $"{path}: it holds no place" : "" : reading.Problems[0].ToString();
        ImmutableArray<RelayCandidate>.Builder candidates = ImmutableArray.CreateBuilder<RelayCandidate>();
        foreach (ExchangedPlace place in reading.Places)
        {
            string name = place.Name.Length > 0 ? place.Name : string.Create(CultureInfo.InvariantCulture, $"Place {candidates.Count + 1}");
            double mast = mastMetres;
            if (Property(place, "mast") is { Length: > 0 } text)
            {
                mast = Metres(text);
                if (!(mast is >= LeastMastMetres and <= MostMastMetres))
                {
                    problem = string.Create(CultureInfo.InvariantCulture, $"{path}: {name}: mast '{text}' is out of range; wanted a length such as '8 m', from {LeastMastMetres:0.#} to {MostMastMetres:0} m");
                    return [];
                }
            }

            candidates.Add(new(string.Create(CultureInfo.InvariantCulture, $"place-{candidates.Count + 1}"), name, place.Position.Point, mast)
            {
                Power = Property(place, "power"),
                Access = Property(place, "access"),
            });
        }

        return candidates.ToImmutable();
    }

    private static double Metres(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double bare) ? bare
        : Quantity.TryParse(text, Dimension.Length, out Estimate length, out _) ? length.Median
        : double.NaN;

    /// <summary>What a place's remark keeps of a column or property: a line "name: value".</summary>
    private static string Property(ExchangedPlace place, string name) =>
        place.Remark.Split('\n').FirstOrDefault(line => line.StartsWith(name + ": ", StringComparison.OrdinalIgnoreCase))?[(name.Length + 2)..].Trim() ?? "";
}
