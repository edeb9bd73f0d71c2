using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.BoxClimate;

/// <summary>Two metals that touch in the open: the less noble one goes. Common practice, no calculation of how fast.</summary>
public static class GalvanicPair
{
    /// <summary>Difference in volts of two metals' anodic indices: zero or more.</summary>
    public static double DifferenceVolts(MetalRow one, MetalRow other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        return Math.Abs(one.Volts - other.Volts);
    }

    /// <summary>Judges a pair.</summary>
    /// <param name="path">Where in the plan the first metal stands.</param>
    /// <param name="where">What touches what: "the antenna's clamp on the mast".</param>
    /// <param name="first">Key of the first metal.</param>
    /// <param name="second">Key of the second metal.</param>
    /// <param name="place">The place; null when nobody said: then one of the outdoor places with the least difference counts.</param>
    /// <param name="rows">Metals and places.</param>
    /// <returns>The finding; null when the catalogue has no rows of metals at all.</returns>
    public static Finding? Judge(string path, string where, string first, string second, BoxPlaceRow? place, BoxCatalogue rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        if (rows.Metals.Rows.IsEmpty)
        {
            return null;
        }

        foreach (string key in new[] { first, second })
        {
            if (rows.Metals.Find(key) is null)
            {
                return BoxReading.NotListed(path, "metal", key, rows.Metals);
            }
        }

        MetalRow one = rows.Metals.Find(first)!;
        MetalRow other = rows.Metals.Find(second)!;
        double difference = DifferenceVolts(one, other);
        double limit = place?.GalvanicVolts ?? rows.Places.Rows.Select(row => row.GalvanicVolts).Append(double.PositiveInfinity).Min();
        bool isFar = difference > limit + 1e-9;
        return new()
        {
            Code = "galvanic-pair",
            Subject = path,
            Verdict = isFar ? Verdict.Tight : Verdict.Ok,
            Quantity = "difference of two metals",
            Unit = "V",
            Value = Estimate.Exactly(difference),
            Limit = limit,
            Margin = limit - difference,
            Source = $"common practice; {one.Source}",
            Details = FindingDetails.Of(
                ("where", where), ("one", one.Key), ("other", other.Key), ("difference", Volts(difference)), ("limit", Volts(limit)),
                ("place", place is null ? "the harshest place" : "this place"),
                ("goes", isFar ? $" In the wet the {(one.Volts > other.Volts ? one : other).Key} goes." : ""),
                ("open", "")),
        };
    }

    private static string Volts(double volts) => FormattableString.Invariant($"{volts:0.00} V");
}
