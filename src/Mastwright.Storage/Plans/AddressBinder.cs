using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Plans;

namespace Mastwright.Storage.Plans;

/// <summary>Binds what records call a station.</summary>
internal static class AddressBinder
{
    /// <summary>An address without a space, then a range of days where it was this station's for a time.</summary>
    internal const string Pattern = "^\\S{1,200}(\\s+([0-9]{4}-[0-9]{2}-[0-9]{2})?\\.\\.([0-9]{4}-[0-9]{2}-[0-9]{2})?)?$";

    internal static ImmutableArray<StationAddress> Bind(MappingReader reader)
    {
        ImmutableArray<StationAddress>.Builder addresses = ImmutableArray.CreateBuilder<StationAddress>();
        ValueShape shape = ((OneOrManyShape)SiteKeys.Addresses.Value).Item;
        foreach (PlanItem item in reader.Many(SiteKeys.Addresses))
        {
            if (ScalarBinder.Text(reader.Binding, item.Node, item.Path, shape)?.Trim() is not { } text)
            {
                continue;
            }

            string[] parts = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
            string[] days = parts.Length == 2 ? parts[1].Split("..") : ["", ""];
            if (parts.Length is 1 or 2 && days.Length == 2 && Day(days[0], out long? from) && Day(days[1], out long? to) && !(to <= from))
            {
                addresses.Add(new(parts[0], from, to));
            }
            else
            {
                reader.Binding.Add(item.Node, item.Path, "plan-value", "This is no address with its days.", shape.Wanted);
            }
        }

        return addresses.ToImmutable();
    }

    private static bool Day(string text, out long? microseconds)
    {
        microseconds = null;
        if (text.Length == 0)
        {
            return true;
        }

        if (!DateTimeOffset.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset day))
        {
            return false;
        }

        microseconds = day.ToUnixTimeMilliseconds() * 1000;
        return true;
    }
}
