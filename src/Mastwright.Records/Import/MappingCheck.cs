using System.Text.RegularExpressions;

namespace Mastwright.Records.Import;

/// <summary>Holds a mapping file against the rules of its form.</summary>
internal static class MappingCheck
{
    private static readonly string[] Forms = ["delimited", "json", "lines"];

    /// <summary>The mapping, when it keeps them all.</summary>
    /// <exception cref="MappingException">A rule is broken; the message says where and what would be right.</exception>
    internal static RecordMapping Checked(MappingText read, string name)
    {
        Require(read.Records == 1, name, "records", "the file begins with 'records: 1', the version of its form");
        Require(read.Holds is null or "receptions" or "telemetry", name, "holds", "write receptions or telemetry");
        int form = read.Form is null ? 0 : Array.IndexOf(Forms, read.Form);
        Require(form >= 0, name, "form", "write delimited, json or lines");
        SourceForm source = (SourceForm)form;
        string separator = read.Separator switch { null => ",", "tab" => "\t", { } given => given };
        Require(separator.Length == 1 && separator[0] is ',' or ';' or '\t' or '|' or ' ', name, "separator", "write ',', ';', '|', ' ' or tab");
        Require(read.Separator is null || source == SourceForm.Delimited, name, "separator", "only form: delimited has one");
        Require((read.Pattern is not null) == (source == SourceForm.Lines), name, "pattern", "form: lines needs one, and only that form has it");
        Require((read.Within ?? read.Each) is null || source == SourceForm.Json, name, read.Within is null ? "each" : "within", "only form: json has it");
        RecordMapping mapping = new(read)
        {
            Form = source,
            Separator = separator[0],
            Pattern = read.Pattern is { } pattern ? Compiled(pattern, name) : null,
            Within = Place(read.Within, name, "within"),
            Each = Place(read.Each, name, "each"),
        };
        Require(mapping.Within is not { } within || (!within.FromEach && within.Steps.All(step => step.Name is not null)), name, "within", "write a place of names alone, such as '$.items'");
        Require(mapping.Each is not { FromEach: true }, name, "each", "write a place that begins with $, such as '$.heard-by'");
        foreach (FieldsText row in mapping.Rows)
        {
            Check(row, mapping, name);
        }

        return mapping;
    }

    private static void Check(FieldsText row, RecordMapping mapping, string name)
    {
        string place = mapping.Form switch { SourceForm.Json => "path: $.NAME", SourceForm.Lines => "group: NAME", _ => "column: NAME" };
        Require(row.Time is not null, name, "time", $"say where the time is: 'time: {{{place}, written: iso-8601, zone: utc, resolution: 1 s}}'");
        if (mapping.IsTelemetry)
        {
            Require(row.Station is not null, name, "station", $"say whose it is: 'station: {{{place}}}' or 'station: {{text: ADDRESS}}'");
            Require(row.Told().Skip(1).Any(one => one.Field is not null), name, "battery", "say where at least one of battery, supply, temperature, channel-use and transmission is");
            Require(row.All().All(one => one.Field is null || one.Key is "time" || row.Told().Contains(one)), name, "holds", "telemetry has time, station, battery, supply, temperature, channel-use and transmission");
        }
        else
        {
            Require(row.Receiver is not null, name, "receiver", $"say who heard the packet: 'receiver: {{{place}}}' or 'receiver: {{text: ADDRESS}}'");
            Require(row.Told().All(one => one.Field is null), name, "holds", "station, battery, supply, temperature, channel-use and transmission are of 'holds: telemetry'");
        }

        Clock(row.Time!, name);
        Units(row.Level, name, "level", FieldUnits.Level);
        Units(row.SignalToNoise, name, "signal-to-noise", FieldUnits.Ratio);
        Units(row.Frequency, name, "frequency", FieldUnits.Frequency);
        Units(row.Bandwidth, name, "bandwidth", FieldUnits.Frequency);
        Units(row.Battery, name, "battery", FieldUnits.Voltage);
        Units(row.Supply, name, "supply", FieldUnits.Voltage);
        Units(row.Temperature, name, "temperature", FieldUnits.Temperature);
        Units(row.ChannelUse, name, "channel-use", FieldUnits.PartOfTime);
        Units(row.Transmission, name, "transmission", FieldUnits.PartOfTime);
        foreach ((string key, FieldText? field) in row.All())
        {
            if (field is null)
            {
                continue;
            }

            string?[] places = [field.Column, field.Path, field.Group, field.Text];
            string? right = mapping.Form switch { SourceForm.Json => field.Path, SourceForm.Lines => field.Group, _ => field.Column };
            Require(places.Count(one => one is not null) == 1 && (field.Text ?? right) is not null, name, key, $"write either '{place}' or 'text: VALUE'");
            Require(Place(field.Path, name, key + "/path") is not { FromEach: true } || mapping.Each is not null, name, key + "/path", "a place that begins with @ needs 'each', which says where the receptions of a value are");
            Require(key is "level" || !field.NoiseRemoved, name, key + "/noise-removed", "only a level can have it");
        }
    }

    private static void Clock(TimeText time, string name)
    {
        Require(time.Written is "iso-8601" or "unix-seconds" or "unix-milliseconds" or "unix-microseconds", name, "time/written", "write iso-8601, unix-seconds, unix-milliseconds or unix-microseconds");
        Require(time.Zone is null or "utc" || time.Written is "iso-8601", name, "time/zone", "counts since 1970 are of UTC");
        Require(time.Zone is null or "utc" || TimeZoneInfo.TryFindSystemTimeZoneById(time.Zone, out _), name, "time/zone", "write utc, or a name of the time zone database as this computer has it, such as Europe/Oslo");
        Require(TimeReader.Microseconds(time.Resolution) > 0, name, "time/resolution", "write the step of the source's clock, such as '1 s' or '1 ms'");
        Require(time.AheadOfUtc is null || TimeReader.Microseconds(time.AheadOfUtc) is not null, name, "time/ahead-of-utc", "write a time, such as '2 s'");
    }

    // An engine without backtracking: no line, however it is made, can keep a pattern busy.
    private static Regex Compiled(string pattern, string name)
    {
        try
        {
            return new(pattern, RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant);
        }
        catch (Exception fault) when (fault is ArgumentException or NotSupportedException)
        {
            throw new MappingException($"{name} pattern: {fault.Message} Write a regular expression with named groups, as in '(?<level>-?[0-9]+) dBm', without looking ahead or back", fault);
        }
    }

    private static JsonPlace? Place(string? text, string name, string key)
    {
        JsonPlace? place = text is null ? null : JsonPlace.Parse(text);
        Require(text is null || place is not null, name, key, "write a place in JSON, such as $.radio.level, $.heard[0].level or $['rx-level']");
        return place;
    }

    private static void Units(FieldText? field, string name, string key, string[] units) =>
        Require(field is null || units.Contains(field.Unit, StringComparer.Ordinal), name, key + "/unit", "write the unit: " + string.Join(", ", units));

    private static void Require(bool right, string name, string key, string wanted)
    {
        if (!right)
        {
            throw new MappingException($"{name} {key}: {wanted}");
        }
    }
}
