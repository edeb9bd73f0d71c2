using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Geodesy;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>Comma-separated values (RFC 4180) with a heading row; semicolons and tabs are read too.</summary>
internal static class CsvPlaces
{
    private static readonly string[] Latitude = ["latitude", "lat", "latitude_deg", "y"];
    private static readonly string[] Longitude = ["longitude", "lon", "lng", "long", "longitude_deg", "x"];
    private static readonly string[] Name = ["name", "title", "label", "station"];
    private static readonly string[] Elevation = ["elevation_m", "elevation", "ele", "altitude", "alt"];

    internal static void Read(byte[] bytes, List<ExchangedPlace> places)
    {
        string text;
        try
        {
            text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            throw new PlaceFaultException(0, "The file is not UTF-8 text.", "", "a file saved as UTF-8");
        }

        List<(int Line, List<string> Cells)> rows = CsvRows.Split(text);
        if (rows.Count == 0)
        {
            throw new PlaceFaultException(0, "The file is empty.", "", "a heading row such as name,latitude,longitude");
        }

        List<string> heading = [.. rows[0].Cells.Select(cell => cell.Trim().ToLowerInvariant().Replace(' ', '_'))];
        int latitude = Column(heading, Latitude);
        int longitude = Column(heading, Longitude);
        int position = heading.IndexOf("position");
        if (position < 0 && (latitude < 0 || longitude < 0))
        {
            throw new PlaceFaultException(rows[0].Line, "The heading names no columns of latitude and longitude.", string.Join(',', heading), "name,latitude,longitude or name,position");
        }

        int name = Column(heading, Name);
        int elevation = Column(heading, Elevation);
        int key = heading.IndexOf("key");
        int kind = heading.IndexOf("kind");
        int radius = heading.IndexOf("radius_m");
        int remark = heading.IndexOf("remark");
        int[] taken = [position, latitude, longitude, name, elevation, key, kind, radius, remark];
        foreach ((int line, List<string> cells) in rows.Skip(1))
        {
            if (cells.Count > heading.Count)
            {
                throw new PlaceFaultException(line, "The row has more cells than the heading.", string.Join(',', cells), string.Create(CultureInfo.InvariantCulture, $"{heading.Count} cells; quote a text that holds the separator"));
            }

            List<string> remarks = [Cell(cells, remark)];
            remarks.AddRange(Enumerable.Range(0, cells.Count).Where(i => !taken.Contains(i) && cells[i].Length > 0).Select(i => $"{heading[i]}: {cells[i]}"));
            places.Add(new()
            {
                Name = Cell(cells, name),
                Key = Cell(cells, key),
                IsNeighbour = PlaceFile.Kind(Cell(cells, kind)),
                Position = Position(line, Cell(cells, position), Cell(cells, latitude), Cell(cells, longitude), PlaceNumbers.Metres(line, Cell(cells, radius), 0)),
                ElevationMetres = PlaceNumbers.Metres(line, Cell(cells, elevation), -12_000),
                Remark = string.Join("\n", remarks.Where(text => text.Length > 0)),
            });
        }
    }

    internal static string Write(ImmutableArray<ExchangedPlace> places)
    {
        StringBuilder csv = new("kind,key,name,latitude,longitude,radius_m,elevation_m,remark\r\n");
        foreach (ExchangedPlace place in places)
        {
            csv.AppendJoin(
                ',',
                place.IsNeighbour == true ? "neighbour" : "site",
                place.Key,
                Quote(place.Name),
                PlaceNumbers.Write(place.Position.Point.LatitudeDegrees),
                PlaceNumbers.Write(place.Position.Point.LongitudeDegrees),
                PlaceNumbers.Write(place.Position.RadiusMetres),
                place.ElevationMetres is { } elevation ? PlaceNumbers.Write(elevation) : "",
                Quote(place.Remark)).Append("\r\n");
        }

        return csv.ToString();
    }

    private static LocatedPoint Position(int line, string position, string latitude, string longitude, double? radius)
    {
        if (position.Length == 0)
        {
            return new(PlaceNumbers.Point(line, latitude, longitude), radius ?? 0);
        }

        return PositionText.TryParse(position, out LocatedPoint place, out string problem)
            ? new(place.Point, radius ?? place.RadiusMetres)
            : throw new PlaceFaultException(line, ScalarBinder.Sentence(problem), position, new PositionShape().Wanted);
    }

    private static string Quote(string text) =>
        text.AsSpan().IndexOfAny(",\"\r\n") >= 0 || text != text.Trim() ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;

    private static string Cell(List<string> cells, int column) => column >= 0 && column < cells.Count ? cells[column].Trim() : "";

    private static int Column(List<string> heading, string[] names) => heading.FindIndex(cell => names.Contains(cell));
}
