using System.Buffers;
using System.Buffers.Text;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>
/// An ESRI ASCII grid: a header of ncols, nrows, xllcorner or xllcenter, yllcorner or yllcenter, cellsize (or dx and dy) and perhaps
/// NODATA_value, then the heights row by row from the north-west. It is in degrees unless a .prj file beside it says UTM.
/// </summary>
internal sealed partial class AsciiGridFile : GroundFile
{
    private const int MostHeaderLines = 20;
    private const int LongestHeaderLine = 200;
    private readonly long _dataStart;
    private readonly double? _noData;

    private AsciiGridFile(string path, GridFrame frame, long dataStart, double? noData)
        : base(path, "ESRI ASCII grid", frame)
    {
        _dataStart = dataStart;
        _noData = noData;
    }

    /// <inheritdoc/>
    internal override int PieceColumns => Frame.Columns;

    /// <summary>The whole: text has to be read from its start.</summary>
    internal override int PieceRows => Frame.Rows;

    internal static GroundFile Open(string path)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        Dictionary<string, double> header = ReadHeader(path, file, out long dataStart);
        int columns = Whole(path, header, "ncols");
        int rows = Whole(path, header, "nrows");
        if ((long)columns * rows > MostSamplesAPiece)
        {
            throw Wrong(path, $"it has {columns} × {rows} samples, too many for a text file; make a GeoTIFF of it");
        }

        // The shortest row has one figure and one space a sample.
        if (file.Length - dataStart < ((long)columns * rows * 2) - 1)
        {
            throw Wrong(path, $"it is too short for {columns} × {rows} heights: it was cut off");
        }

        double stepX = header.TryGetValue("dx", out double dx) ? dx : Given(path, header, "cellsize");
        double stepY = header.TryGetValue("dy", out double dy) ? dy : Given(path, header, "cellsize");
        double west = header.TryGetValue("xllcenter", out double x) ? x : Given(path, header, "xllcorner") + (stepX / 2);
        double south = header.TryGetValue("yllcenter", out double y) ? y : Given(path, header, "yllcorner") + (stepY / 2);
        double north = south + ((rows - 1) * stepY);
        try
        {
            GridFrame frame = UtmBeside(path) is (int zone, bool isNorth)
                ? GridFrame.Utm(zone, isNorth, west, north, stepX, stepY, columns, rows, samplesAreAreas: true)
                : GridFrame.Geographic(west, north, stepX, stepY, columns, rows, samplesAreAreas: true);
            return new AsciiGridFile(path, frame, dataStart, header.TryGetValue("nodata_value", out double noData) ? noData : null);
        }
        catch (ArgumentException fault)
        {
            throw Wrong(path, $"{fault.Message} A grid in metres needs its .prj file beside it");
        }
    }

    /// <inheritdoc/>
    internal override float[] ReadHeights(int column, int row, int columns, int rows) => GroundFileFormat.Guard(FilePath, Format, () =>
    {
        using FileStream file = new(FilePath, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
        file.Position = _dataStart;
        float[] all = new float[Frame.Columns * Frame.Rows];
        ReadNumbers(file, all);
        if (columns == Frame.Columns && rows == Frame.Rows)
        {
            return all;
        }

        float[] part = new float[columns * rows];
        for (int r = 0; r < rows; r++)
        {
            all.AsSpan(((row + r) * Frame.Columns) + column, columns).CopyTo(part.AsSpan(r * columns));
        }

        return part;
    });

    private void ReadNumbers(Stream file, float[] heights)
    {
        byte[] buffer = new byte[1 << 16];
        int held = 0;
        int next = 0;
        bool ended = false;
        while (next < heights.Length)
        {
            int got = file.Read(buffer, held, buffer.Length - held);
            ended = got == 0;
            held += got;
            int at = 0;
            while (next < heights.Length)
            {
                while (at < held && buffer[at] <= ' ')
                {
                    at++;
                }

                int end = at;
                while (end < held && buffer[end] > ' ')
                {
                    end++;
                }

                if (end == at || (end == held && !ended))
                {
                    break;
                }

                heights[next++] = Number(buffer.AsSpan(at, end - at));
                at = end;
            }

            if (ended && next < heights.Length)
            {
                throw Wrong(FilePath, string.Create(CultureInfo.InvariantCulture, $"it holds {next:N0} heights instead of {heights.Length:N0}: it was cut off"));
            }

            buffer.AsSpan(at, held - at).CopyTo(buffer);
            held -= at;
            if (held == buffer.Length)
            {
                throw Wrong(FilePath, "it holds a word of more than 65,536 characters where a height should be");
            }
        }
    }

    private float Number(ReadOnlySpan<byte> word)
    {
        if (!Utf8Parser.TryParse(word, out double value, out int used) || used != word.Length)
        {
            string shown = Encoding.Latin1.GetString(word[..Math.Min(word.Length, 20)]);
            throw Wrong(FilePath, $"it holds '{shown}' where a height should be");
        }

        return value == _noData ? float.NaN : (float)value;
    }

    private static Dictionary<string, double> ReadHeader(string path, FileStream file, out long dataStart)
    {
        Dictionary<string, double> header = new(StringComparer.OrdinalIgnoreCase);
        byte[] head = new byte[MostHeaderLines * LongestHeaderLine];
        int held = file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        int at = 0;
        for (int line = 0; line < MostHeaderLines; line++)
        {
            int length = head.AsSpan(at, held - at).IndexOf((byte)'\n');
            length = length < 0 ? held - at : length;
            string text = Encoding.Latin1.GetString(head, at, Math.Min(length, LongestHeaderLine)).Trim();
            if (text.Length == 0 || !char.IsAsciiLetter(text[0]))
            {
                break;
            }

            Match match = HeaderLine().Match(text);
            if (!match.Success || !double.TryParse(match.Groups["value"].ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture, out double value))
            {
                throw Wrong(path, $"its header line '{text[..Math.Min(text.Length, 40)]}' is not a name and a number");
            }

            header[match.Groups["name"].Value] = value;
            at = Math.Min(held, at + length + 1);
        }

        dataStart = at;
        return header;
    }

    private static int Whole(string path, Dictionary<string, double> header, string name)
    {
        double value = Given(path, header, name);
        return value is >= 1 and <= GridFrame.MostSamplesASide && value == Math.Floor(value)
            ? (int)value
            : throw Wrong(path, string.Create(CultureInfo.InvariantCulture, $"its {name} is {value}"));
    }

    private static double Given(string path, Dictionary<string, double> header, string name) => header.TryGetValue(name, out double value)
        ? value
        : throw Wrong(path, $"its header has no {name}");

    /// <summary>The UTM zone that a .prj file beside the grid names; null where there is none or it is geographic.</summary>
    private static (int Zone, bool IsNorth)? UtmBeside(string path)
    {
        string beside = Path.ChangeExtension(path, ".prj");
        FileInfo file = new(beside);
        if (!file.Exists || file.Length > 1 << 16)
        {
            return null;
        }

        string text = File.ReadAllText(beside);
        Match match = UtmName().Match(text);
        if (match.Success && int.Parse(match.Groups["zone"].ValueSpan, CultureInfo.InvariantCulture) is >= 1 and <= 60 and int zone)
        {
            return (zone, match.Groups["half"].ValueSpan is not ("S" or "s"));
        }

        return text.Contains("PROJCS", StringComparison.OrdinalIgnoreCase) || text.Contains("PROJCRS", StringComparison.OrdinalIgnoreCase)
            ? throw Wrong(path, "its .prj file names a projection that is not UTM")
            : null;
    }

    private static GroundFileException Wrong(string path, string found) => new(
        path, found, "give ncols, nrows, xllcorner, yllcorner, cellsize, then nrows × ncols heights, in degrees or in UTM with a .prj file beside it");

    [GeneratedRegex(@"^(?<name>[A-Za-z_]+)\s+(?<value>\S+)$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex HeaderLine();

    [GeneratedRegex(@"UTM[ _]zone[ _](?<zone>\d{1,2}) ?(?<half>[NS])?", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex UtmName();
}
