using System.Globalization;
using System.Text;

namespace Mastwright.Records.Import.Proposals;

/// <summary>A mapping for a file, as far as its beginning lets one guess; what is guessed and what is missing is said in its remarks.</summary>
public static class MappingProposal
{
    private const int MostCharacters = 1 << 18;

    private static readonly string[] NoAddress = ["name", "lat", "lon", "latitude", "longitude", "alt", "height", "ground", "position", "rssi", "snr", "time"];

    /// <summary>Looks at the beginning of a file.</summary>
    /// <param name="file">The file's name, for messages.</param>
    /// <param name="stream">Its bytes, from the beginning; may be gzip.</param>
    /// <returns>The text of a mapping file, and the beginning of the file's text.</returns>
    /// <exception cref="MappingException">Nothing can be made of the file.</exception>
    public static (string Mapping, string Beginning) Of(string file, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using StreamReader reader = new(SourceStream.Unpacked(stream), KeptBytes.Utf8, detectEncodingFromByteOrderMarks: true);
        char[] buffer = new char[MostCharacters];
        int length = reader.ReadBlock(buffer);
        string text = new(buffer, 0, length);
        if (length == MostCharacters && text.LastIndexOf('\n') is > 0 and int end)
        {
            // The last line may be cut.
            text = text[..(end + 1)];
        }

        SeenFile seen = FileLook.At(text) ?? throw new MappingException(
            Unknown(file));
        return (Written(file, seen), text);
    }

    private static string Unknown(string file) =>
        $"{file}: is neither delimited text with names in its first row, nor JSON, nor lines with a time and name=value; write the mapping by hand, with 'form: lines' and a pattern";

    private static string Written(string file, SeenFile seen)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"# Proposed from the beginning of {Path.GetFileName(file)}: look at each line before you import by it.\nrecords: 1\n");
        string key = seen.Form switch { SourceForm.Json => "path", SourceForm.Lines => "group", _ => "column" };
        text.Append(seen.Form switch { SourceForm.Json => "form: json\n", SourceForm.Lines => "form: lines\n", _ => "" });
        Line(text, seen.Pattern is null ? null : $"pattern: {Quoted(seen.Pattern)}");
        Line(text, seen.Within is null ? null : $"within: {Quoted(seen.Within)}");
        Line(text, seen.Each is null ? null : $"each: {Quoted(seen.Each)}");
        Line(text, seen is { Form: SourceForm.Delimited, Separator: not ',' } ? $"separator: {(seen.Separator == '\t' ? "tab" : Quoted(seen.Separator.ToString()))}" : null);
        List<SeenField> left = [.. seen.Fields];
        if (left.TrueForAll(one => TimeGuess.Of(one) is null && !one.Has("rssi", "snr", "level", "dbm")))
        {
            throw new MappingException(Unknown(file));
        }

        SeenField? time = Take(left, one => TimeGuess.Of(one) is not null && one.Has("time", "timestamp", "date", "datetime", "when", "at", "ts", "t", "utc"))
            ?? Take(left, one => TimeGuess.Of(one) is not null);
        Line(text, time is null
            ? "# No time was found. It must be there:\n# time: {" + key + ": NAME, written: iso-8601, resolution: 1 s}"
            : $"{(TimeGuess.Of(time)!.Contains("zone:", StringComparison.Ordinal) ? "# The times name no zone; utc is a guess.\n" : "")}time: {{{key}: {Quoted(time.Place)}, {TimeGuess.Of(time)}}}");
        Address(text, left, key, "receiver", "# Who heard the packets was not found; the name here stands for the station whose file this is.\nreceiver: {text: this-station}", "receiver", "gateway", "gw", "observer", "station", "heardby", "by");
        Address(text, left, key, "originator", null, "originator", "origin", "from", "source", "src", "node", "device", "sender", "made");
        Address(text, left, key, "last-sender", "# Level and ratio are used only where the station that sent last is known. If all of these came directly, name the originator's place here too:\n# last-sender: {" + key + ": NAME}", "via", "last", "relay", "transmitter", "sent");
        Address(text, left, key, "packet-number", null, "packet", "id", "fcnt", "counter", "count", "seq", "sequence", "frame");
        Number(text, left, key, "level", "dBm", -200, 30, "rssi", "level", "dbm", "power");
        Number(text, left, key, "signal-to-noise", "dB", -60, 60, "snr", "ratio");
        Scaled(text, left, key, "frequency", [("Hz", 1e8, 1e10), ("kHz", 1e5, 1e7), ("MHz", 100, 1e4)], "freq", "frequency");
        Scaled(text, left, key, "bandwidth", [("Hz", 5000, 2e6), ("kHz", 5, 2000)], "bw", "bandwidth");
        Number(text, left, key, "spreading-factor", null, 5, 12, "sf", "spreading");
        Number(text, left, key, "hop-limit", null, 0, 255, "limit", "ttl");
        Number(text, left, key, "hops-taken", null, 0, 255, "hops", "hop");
        Line(text, left.Count == 0 ? null : $"# Kept as they are: {string.Join(", ", left.Select(one => one.Place))}");
        return text.ToString();
    }

    private static void Address(StringBuilder text, List<SeenField> left, string key, string field, string? without, params string[] names)
    {
        SeenField? found = names.Select(name => Take(left, one => one.Samples.Count > 0 && one.Has(name) && !one.Has(NoAddress))).FirstOrDefault(one => one is not null);
        Line(text, found is null ? without : $"{field}: {{{key}: {Quoted(found.Place)}}}");
    }

    private static void Number(StringBuilder text, List<SeenField> left, string key, string field, string? unit, double least, double most, params string[] names)
    {
        SeenField? found = names.Select(name => Take(left, one => one.Has(name) && Within(one, least, most) && (unit is not null || one.Samples.All(sample => int.TryParse(sample, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _))))).FirstOrDefault(one => one is not null);
        Line(text, found is null ? null : $"{field}: {{{key}: {Quoted(found.Place)}{(unit is null ? "" : ", unit: " + unit)}}}");
    }

    private static void Scaled(StringBuilder text, List<SeenField> left, string key, string field, (string Unit, double Least, double Most)[] units, params string[] names)
    {
        foreach ((string unit, double least, double most) in units)
        {
            int before = left.Count;
            Number(text, left, key, field, unit, least, most, names);
            if (left.Count < before)
            {
                return;
            }
        }
    }

    private static bool Within(SeenField field, double least, double most) => field.Samples.Count > 0
        && field.Samples.Count(sample => double.TryParse(sample, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && value >= least && value <= most) * 10 >= field.Samples.Count * 9;

    private static SeenField? Take(List<SeenField> left, Predicate<SeenField> fits)
    {
        SeenField? found = left.Find(fits);
        if (found is not null)
        {
            left.Remove(found);
        }

        return found;
    }

    private static void Line(StringBuilder text, string? line) => text.Append(line is null ? "" : line + "\n");

    private static string Quoted(string text) => text.Length > 0 && text.All(sign => char.IsAsciiLetterOrDigit(sign) || sign is '_' or '-') && !text.All(char.IsAsciiDigit)
        ? text
        : $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";
}
