using System.Collections.Immutable;
using System.Text;
using Mastwright.Geodesy;
using Mastwright.Station.Sun;

namespace Mastwright.Storage.Plans;

/// <summary>Binds the weather of a site: a file with its hours, or two numbers a month.</summary>
internal static class WeatherBinder
{
    /// <summary>What a day may have more than a clear sky's sun gives, in kWh a square metre: twilight, and the rounding of tables. Common practice.</summary>
    private const double Twilight = 0.02;

    /// <summary>The year of the file that the site names; null when it names none or it cannot be read.</summary>
    internal static WeatherYear? Bind(MappingReader site, GeoPoint? place)
    {
        KeyShape key = SiteKeys.Weather;
        string path = site.PathOf(key);
        if (site.Find(key) is not { } node || place is not { } at || ScalarBinder.Text(site.Binding, node, path, key.Value)?.Trim() is not { } name)
        {
            return null;
        }

        // A file without its own direct light is split by the sun of the place, so that two places share no year.
        string known = FormattableString.Invariant($"{name}\n{at.LatitudeDegrees:R} {at.LongitudeDegrees:R}");
        if (site.Binding.Weathers.TryGetValue(known, out WeatherYear? year))
        {
            return year;
        }

        if (site.Binding.Folder.Resolve(name, out string refusal) is not { } full)
        {
            site.Binding.Add(node, path, "plan-outside", refusal, key.Value.Wanted);
        }
        else if (PlanSource.ReadBounded(name, full, out PlanProblem? problem) is not { } bytes)
        {
            site.Binding.Add(node, path, problem!.Code, problem.Message, problem.Wanted);
        }
        else if (!WeatherText.TryParse(name, Encoding.UTF8.GetString(bytes), new(at.LatitudeDegrees, at.LongitudeDegrees), out year, out int line, out int column, out string wrong))
        {
            site.Binding.Problems.Add(new()
            {
                Code = "plan-weather",
                File = name,
                Line = line,
                Column = line > 0 ? 1 : 0,
                Path = path,
                Message = ScalarBinder.Sentence(column > 0 ? FormattableString.Invariant($"field {column}: {wrong}") : wrong),
            });
        }

        site.Binding.Weathers[known] = year;
        return year;
    }

    /// <summary>The months' means; null when there are none, or a fault in them.</summary>
    internal static MonthlyClimate? Climate(MappingReader site, GeoPoint? place)
    {
        if (site.Find(SiteKeys.Climate) is not { } node || MappingReader.Open(site.Binding, node, site.PathOf(SiteKeys.Climate), ClimateKeys.Shape) is not { } reader)
        {
            return null;
        }

        ImmutableArray<double>? light = Months(reader, ClimateKeys.Light);
        ImmutableArray<double>? celsius = Months(reader, ClimateKeys.Temperature);
        reader.Done();
        if (light is { } given && place is { } at)
        {
            ImmutableArray<double> clear = MonthlyClimate.ClearKilowattHours(new(at.LatitudeDegrees, at.LongitudeDegrees));
            int month = Enumerable.Range(0, 12).FirstOrDefault(one => given[one] > clear[one] + Twilight, -1);
            int dark = Enumerable.Range(0, 12).FirstOrDefault(one => given[one] == 0 && clear[one] > Twilight, -1);
            MonthlyClimate? Refused(FormattableString found, string right)
            {
                reader.Binding.Add(reader.Find(ClimateKeys.Light)!, reader.PathOf(ClimateKeys.Light), "plan-range", FormattableString.Invariant(found), right);
                return null;
            }

            if (dark >= 0)
            {
                return Refused(
                    $"In month {dark + 1} there is no light at all, where a clear sky gives {clear[dark]:0.##} kWh a day.",
                    "the mean of a day of the month, in kWh a square metre; 0 only where the sun does not rise");
            }

            if (month >= 0)
            {
                return Refused(
                    $"In month {month + 1} {given[month]:0.##} kWh a day are more than a clear sky gives there ({clear[month]:0.##}).",
                    "the mean of a day of the month, in kWh a square metre");
            }
        }

        return light is { } twelve && celsius is { } temperatures ? new() { LightKilowattHours = twelve, Celsius = temperatures } : null;
    }

    private static ImmutableArray<double>? Months(MappingReader reader, KeyShape key)
    {
        NumberShape shape = (NumberShape)((ListShape)key.Value).Item;
        ImmutableArray<PlanItem> items = reader.List(key);
        if (items.IsEmpty)
        {
            return null;
        }

        double?[] numbers = [.. items.Select(item => ScalarBinder.Number(reader.Binding, item.Node, item.Path, shape))];
        if (numbers.Length != 12)
        {
            reader.Binding.Add(
                reader.Find(key)!, reader.PathOf(key), "plan-range", FormattableString.Invariant($"A year has twelve months; here {(numbers.Length == 1 ? "is 1 number" : $"are {numbers.Length} numbers")}."), "twelve numbers, January first");
            return null;
        }

        return numbers.Contains(null) ? null : [.. numbers.Select(number => number!.Value)];
    }
}
