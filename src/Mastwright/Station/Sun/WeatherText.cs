using System.Globalization;

namespace Mastwright.Station.Sun;

/// <summary>Reads a year of weather from text: an EPW file, or rows of numbers with names over them.</summary>
/// <remarks>
/// <para>EPW (EnergyPlus weather, US Department of Energy, "Auxiliary programs"): eight lines of header, then an hour a line; of its fields the air's temperature (7th), relative humidity (9th), the sky's heat radiation (13th),
/// global, direct and diffuse light (14th to 16th) and wind (22nd) are read. Its hour 1 ends at 01:00. A header line "Irradiance Time Offset (h):", as a service of the European Commission (PVGIS) writes it, says that the light is of moments and not of whole hours; which ones, its own parts tell (<see cref="LightMoment"/>).</para>
/// <para>Rows: commas or semicolons between; the first line names the columns: global (W/m² on level ground), temperature (°C), and, where known, direct, diffuse (W/m²), humidity (%), wind (m/s). From
/// 1 January 00:00 universal time. Without direct and diffuse the global light is split (<see cref="SunLight.Split"/>).</para>
/// </remarks>
public static class WeatherText
{
    private const int MostLineLength = 4096;
    private const int EpwHeaderLines = 8;
    private const double MostLight = 1500;
    private const string TimeOffset = "Irradiance Time Offset (h):";

    /// <summary>Reads it.</summary>
    /// <param name="name">What a person reads.</param>
    /// <param name="text">The text.</param>
    /// <param name="place">Where the station stands: for splitting the light of rows that do not.</param>
    /// <param name="year">The year; null when there is a problem.</param>
    /// <param name="line">Line of the problem, from 1; 0 for the whole.</param>
    /// <param name="column">Field of the problem, from 1; 0 for the whole line.</param>
    /// <param name="problem">What is wrong and what would be right; empty when nothing is.</param>
    public static bool TryParse(string name, string text, SunSite place, out WeatherYear? year, out int line, out int column, out string problem)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(text);
        Reader reader = new(text.TrimStart('\uFEFF'));
        year = reader.Next() is not { } first ? reader.Refuse("it is empty; an EPW file, or rows under the names of their columns, would be right")
            : first.StartsWith("LOCATION,", StringComparison.Ordinal) ? Epw(reader, name, first, place)
            : Rows(reader, name, first, place);
        (line, column, problem) = (reader.WrongLine, reader.WrongColumn, reader.Problem);
        return year is not null;
    }

    private static WeatherYear? Epw(Reader reader, string name, string location, SunSite station)
    {
        string[] head = location.Split(',');
        if (head.Length < 10 || !Number(head[8], out double zone) || zone is < -12 or > 14)
        {
            return reader.Refuse("the 9th field of LOCATION is no time zone; hours from universal time, such as 1, would be right", 9);
        }

        double? offset = null;
        for (int i = 1; i < EpwHeaderLines; i++)
        {
            if (reader.Next() is not { } header)
            {
                return reader.Refuse("the header ends early; eight lines, then an hour a line, would be right");
            }

            if (header.IndexOf(TimeOffset, StringComparison.OrdinalIgnoreCase) is >= 0 and int at)
            {
                if (!Number(header[(at + TimeOffset.Length)..].Split(',')[0].Trim(), out double hoursOff) || Math.Abs(hoursOff) > 2)
                {
                    return reader.Refuse($"behind '{TimeOffset}' stands no time in hours; a number from -2 to 2, such as 0.18, would be right");
                }

                offset = hoursOff;
            }
        }

        List<WeatherHour> hours = [];
        int calendarYear = 0;
        while (reader.Next() is { } row)
        {
            string[] fields = row.Split(',');
            if (fields.Length < 22)
            {
                return reader.Refuse($"this line has {fields.Length} fields; 22 or more would be right");
            }

            if (fields[1].Trim() == "2" && fields[2].Trim() == "29")
            {
                // An ordinary year is run: a leap year's day goes out.
                continue;
            }

            if (Misplaced(fields, hours.Count) is { } wrong)
            {
                return reader.Refuse(wrong.Problem, wrong.Field);
            }

            if (hours.Count == 0 && !int.TryParse(fields[0], NumberStyles.None, CultureInfo.InvariantCulture, out calendarYear))
            {
                return reader.Refuse("this is no year", 1);
            }

            if (reader.Value(fields, 6, -90, 60, "a temperature in °C") is not { } celsius
                || reader.Value(fields, 13, 0, MostLight, "light in W/m²") is not { } global
                || reader.Value(fields, 14, 0, MostLight, "light in W/m²") is not { } direct
                || reader.Value(fields, 15, 0, MostLight, "light in W/m²") is not { } diffuse)
            {
                return null;
            }

            // 999 and 9999 stand for "unknown".
            double humidity = Number(fields[8], out double percent) && percent is >= 0 and <= 110 ? Math.Min(1, percent / 100) : double.NaN;
            double wind = Number(fields[21], out double speed) && speed is >= 0 and < 100 ? speed : double.NaN;
            double sky = Number(fields[12], out double radiation) && radiation is > 0 and < 700 ? radiation : double.NaN;
            hours.Add(new(new(global, direct, diffuse), celsius, humidity, wind, sky));
        }

        SunSite? place = Number(head[6], out double latitude) && Number(head[7], out double longitude) && Math.Abs(latitude) <= 90 && Math.Abs(longitude) <= 180 ? new(latitude, longitude) : null;
        WeatherYear? whole = Whole(reader, name, Math.Clamp(calendarYear, 1950, 2050), zone, hours, place);
        return whole is not null && offset is { } stated ? whole.WithLightAt(LightMoment.Of(whole, place ?? station), stated) : whole;
    }

    /// <summary>What is wrong with an hour's month, day or number, and in which field; null when it stands where it belongs.</summary>
    private static (string Problem, int Field)? Misplaced(string[] fields, int hour)
    {
        if (hour >= WeatherYear.HourCount)
        {
            return ("there are more hours than an ordinary year has; 8760 would be right", 0);
        }

        int month = WeatherYear.MonthOf(hour);
        int[] right = [month + 1, ((hour - WeatherYear.FirstHourOf(month)) / 24) + 1, (hour % 24) + 1];
        string[] names = ["month", "day", "hour"];
        for (int i = 0; i < right.Length; i++)
        {
            string found = fields[i + 1].Trim();
            if (found != right[i].ToString(CultureInfo.InvariantCulture))
            {
                return (FormattableString.Invariant($"{names[i]} '{found}' stands where {names[i]} {right[i]} belongs; all hours of an ordinary year in order would be right"), i + 2);
            }
        }

        return null;
    }

    private static WeatherYear? Rows(Reader reader, string name, string first, SunSite place)
    {
        const int year = 2023;
        char separator = first.Contains(';', StringComparison.Ordinal) ? ';' : ',';
        string[] names = [.. first.Split(separator).Select(word => word.Trim().ToLowerInvariant())];
        int At(string wanted) => Array.IndexOf(names, wanted);
        if (At("global") < 0 || At("temperature") < 0)
        {
            return reader.Refuse("the first line names no columns 'global' and 'temperature'; global,temperature and, where known, direct,diffuse,humidity,wind would be right");
        }

        if (At("direct") >= 0 != At("diffuse") >= 0)
        {
            return reader.Refuse("of 'direct' and 'diffuse' one is missing; both or neither would be right");
        }

        List<WeatherHour> hours = [];
        while (reader.Next() is { } row)
        {
            string[] fields = row.Split(separator);
            if (fields.Length != names.Length)
            {
                return reader.Refuse($"this line has {fields.Length} fields; {names.Length}, as the first line has, would be right");
            }

            if (hours.Count == WeatherYear.HourCount)
            {
                return reader.Refuse("there are more hours than an ordinary year has; 8760 would be right");
            }

            double? direct = null;
            double? diffuse = null;
            if (reader.Value(fields, At("global"), 0, MostLight, "light in W/m²") is not { } global
                || reader.Value(fields, At("temperature"), -90, 60, "a temperature in °C") is not { } celsius
                || (At("direct") >= 0
                    && ((direct = reader.Value(fields, At("direct"), 0, MostLight, "light in W/m²")) is null || (diffuse = reader.Value(fields, At("diffuse"), 0, MostLight, "light in W/m²")) is null)))
            {
                return null;
            }

            double? humidity = At("humidity") < 0 ? double.NaN : reader.Value(fields, At("humidity"), 0, 100, "a relative humidity in percent") / 100;
            double? wind = At("wind") < 0 ? double.NaN : reader.Value(fields, At("wind"), 0, 100, "a wind in m/s");
            if (humidity is null || wind is null)
            {
                return null;
            }

            HourLight light = direct is { } beam ? new(global, beam, diffuse!.Value) : SunLight.Split(global, WeatherYear.SunAt(year, 0, hours.Count, place));
            hours.Add(new(light, celsius, humidity.Value, wind.Value));
        }

        return Whole(reader, name, year, 0, hours, null);
    }

    private static WeatherYear? Whole(Reader reader, string name, int year, double zone, List<WeatherHour> hours, SunSite? place) => hours.Count == WeatherYear.HourCount
        ? WeatherYear.Of(name, year, zone, [.. hours], place)
        : reader.Refuse($"it has {hours.Count} hours; 8760, an ordinary year, would be right");

    private static bool Number(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    /// <summary>Lines one by one, and the first problem with its place.</summary>
    private sealed class Reader(string text)
    {
        private int line;
        private int at;

        internal int WrongLine { get; private set; }

        internal int WrongColumn { get; private set; }

        internal string Problem { get; private set; } = "";

        /// <summary>The next line that is not empty; null at the end.</summary>
        internal string? Next()
        {
            while (at < text.Length)
            {
                int end = text.IndexOf('\n', at);
                end = end < 0 ? text.Length : end;
                string next = text[at..end].TrimEnd('\r');
                at = end + 1;
                line++;
                if (next.Length > MostLineLength)
                {
                    Refuse($"this line has {next.Length} characters; at most {MostLineLength} would be right");
                    return null;
                }

                if (!string.IsNullOrWhiteSpace(next))
                {
                    return next;
                }
            }

            return null;
        }

        internal WeatherYear? Refuse(string problem, int column = 0)
        {
            if (Problem.Length == 0)
            {
                (Problem, WrongLine, WrongColumn) = (problem, line, column);
            }

            return null;
        }

        internal double? Value(string[] fields, int index, double least, double most, string what)
        {
            if (Number(fields[index], out double value) && value >= least - 1e-9 && value <= most)
            {
                return Math.Max(least, value);
            }

            Refuse(FormattableString.Invariant($"'{fields[index].Trim()}' is not {what} from {least:0} to {most:0}"), index + 1);
            return null;
        }
    }
}
