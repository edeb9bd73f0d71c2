using System.Globalization;
using System.Text.Json;
using Mastwright.Geodesy;
using Mastwright.Network.Reach;
using Mastwright.Storage.Ground;

namespace Mastwright.Storage.Reach;

/// <summary>Reads weights, such as people or houses, from a file of places or a raster of counts and lays them on a grid.</summary>
/// <remarks>
/// By its ending: .csv with the columns latitude, longitude and weight (others are passed over; empty lines and lines that begin with # as well); .geojson or .json with points
/// whose property "weight" is the weight (RFC 7946); .tif, .tiff or .asc with a count a cell, whose no-data value counts as zero.
/// </remarks>
public static class WeightFile
{
    /// <summary>Most bytes of a file of places.</summary>
    public const long MostBytes = 256L * 1024 * 1024;

    private static readonly string[] Columns = ["latitude", "longitude", "weight"];

    /// <summary>What a file may end in.</summary>
    public static string Endings => ".csv, .geojson, .json, .tif, .tiff or .asc";

    /// <summary>Reads a file. Never throws for what the file holds.</summary>
    /// <param name="path">The file.</param>
    /// <param name="weights">An empty layer of weights, which is filled.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>What is wrong, with the place in the file; empty when the file was read.</returns>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static string Read(string path, ReachWeights weights, CancellationToken cancellation = default)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(weights);
        try
        {
            return Path.GetExtension(path).ToUpperInvariant() switch
            {
                ".CSV" => ReadTable(path, weights),
                ".GEOJSON" or ".JSON" => ReadGeoJson(path, weights),
                ".TIF" or ".TIFF" or ".ASC" => ReadRaster(path, weights, cancellation),
                _ => $"{path}: its name ends in none of {Endings}",
            };
        }
        catch (GroundFileException fault)
        {
            return fault.Message;
        }
        catch (JsonException fault)
        {
            return $"{path}: it is not sound JSON (line {fault.LineNumber + 1}); write it again";
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return fault is FileNotFoundException or DirectoryNotFoundException ? $"{path}: there is no such file" : $"{path}: cannot be read: {fault.Message}";
        }
    }

    private static string TooLarge(string path) => new FileInfo(path).Length > MostBytes
        ? $"{path}: the file is larger than {MostBytes / (1024 * 1024)} MiB, the most that places may have; make a raster of counts of it"
        : "";

    private static string ReadTable(string path, ReachWeights weights)
    {
        if (TooLarge(path) is { Length: > 0 } large)
        {
            return large;
        }

        int[]? at = null;
        int line = 0;
        foreach (string text in File.ReadLines(path))
        {
            line++;
            string row = text.Trim().TrimStart('\uFEFF');
            if (row.Length == 0 || row[0] == '#')
            {
                continue;
            }

            string[] cells = [.. row.Split(',').Select(cell => cell.Trim().Trim('"'))];
            if (at is null)
            {
                at = [.. Columns.Select(name => Array.FindIndex(cells, cell => cell.Equals(name, StringComparison.OrdinalIgnoreCase)))];
                if (Array.IndexOf(at, -1) is int missing and >= 0)
                {
                    return $"{path}:{line}: the first line names no column '{Columns[missing]}'; give {string.Join(",", Columns)}";
                }

                continue;
            }

            double[] numbers = [.. at.Select(index => index < cells.Length && double.TryParse(cells[index], NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : double.NaN)];
            if (Add(weights, numbers[0], numbers[1], numbers[2]) is { Length: > 0 } problem)
            {
                return $"{path}:{line}: {problem}";
            }
        }

        return at is null ? $"{path}: it is empty; give {string.Join(",", Columns)}" : "";
    }

    private static string ReadGeoJson(string path, ReachWeights weights)
    {
        if (TooLarge(path) is { Length: > 0 } large)
        {
            return large;
        }

        using FileStream stream = File.OpenRead(path);
        using JsonDocument document = JsonDocument.Parse(stream);
        if (document.RootElement.ValueKind != JsonValueKind.Object || !document.RootElement.TryGetProperty("features", out JsonElement features) || features.ValueKind != JsonValueKind.Array)
        {
            return $"{path}: it has no list of features; give a FeatureCollection of points";
        }

        int number = 0;
        foreach (JsonElement feature in features.EnumerateArray())
        {
            number++;
            (double longitude, double latitude) = Point(feature);
            double weight = Member(Member(feature, "properties"), "weight") is { ValueKind: JsonValueKind.Number } given ? given.GetDouble() : double.NaN;
            if (Add(weights, latitude, longitude, weight) is { Length: > 0 } problem)
            {
                return $"{path}: feature {number}: {problem}";
            }
        }

        return "";
    }

    private static (double Longitude, double Latitude) Point(JsonElement feature)
    {
        JsonElement? geometry = Member(feature, "geometry");
        bool isPoint = Member(geometry, "type") is { ValueKind: JsonValueKind.String } type && type.ValueEquals("Point");
        return isPoint && Member(geometry, "coordinates") is { ValueKind: JsonValueKind.Array } place && place.GetArrayLength() >= 2
            && place[0].ValueKind == JsonValueKind.Number && place[1].ValueKind == JsonValueKind.Number
            ? (place[0].GetDouble(), place[1].GetDouble())
            : (double.NaN, double.NaN);
    }

    private static JsonElement? Member(JsonElement? element, string name) =>
        element is { ValueKind: JsonValueKind.Object } given && given.TryGetProperty(name, out JsonElement member) ? member : null;

    private static string Add(ReachWeights weights, double latitudeDegrees, double longitudeDegrees, double weight)
    {
        if (!(latitudeDegrees is >= -90 and <= 90 && longitudeDegrees is >= -360 and <= 360))
        {
            return "it has no place; give latitude from -90 to 90 and longitude from -180 to 180 degrees of a point";
        }

        if (!(weight >= 0 && double.IsFinite(weight)))
        {
            return "it has no weight; give a number of zero or more";
        }

        weights.Add(new(latitudeDegrees, longitudeDegrees - (360 * Math.Round(longitudeDegrees / 360))), weight);
        return "";
    }

    private static string ReadRaster(string path, ReachWeights weights, CancellationToken cancellation)
    {
        GroundFile file = GroundFileFormat.OpenFile(path);
        for (int top = 0; top < file.Frame.Rows; top += file.PieceRows)
        {
            for (int left = 0; left < file.Frame.Columns; left += file.PieceColumns)
            {
                cancellation.ThrowIfCancellationRequested();
                int columns = Math.Min(file.PieceColumns, file.Frame.Columns - left);
                float[] counts = file.ReadHeights(left, top, columns, Math.Min(file.PieceRows, file.Frame.Rows - top));
                for (int i = 0; i < counts.Length; i++)
                {
                    (int column, int row) = (left + (i % columns), top + (i / columns));
                    if (float.IsNaN(counts[i]))
                    {
                        continue;
                    }

                    if (!(counts[i] >= 0 && float.IsFinite(counts[i])))
                    {
                        return string.Create(CultureInfo.InvariantCulture, $"{path}: column {column + 1}, row {row + 1} holds {counts[i]}; a count is zero or more, and the file names the value that stands for none");
                    }

                    weights.AddCell(file.Frame, column, row, counts[i]);
                }
            }
        }

        return "";
    }
}
