using System.Globalization;
using System.Text;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Storage.Plans.Exchange;

namespace Mastwright.Storage.Plans;

/// <summary>Adds a correction to a plan and makes it the one in use; comments, order and everything else stay as they are.</summary>
public static class CorrectionText
{
    /// <summary>The text with the correction after the last, and named by 'correction'.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="correction">The correction; its key is new to the plan.</param>
    public static PlanTextResult Adopt(PlanText plan, AdoptedCorrection correction)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(correction);
        if (!KeyNameShape.IsKey(correction.Key) || plan.Has($"corrections/{correction.Key}"))
        {
            return new(null, Taken(plan.Source.Name, correction.Key));
        }

        BlockPlace at = BlockPlace.Of(plan, "corrections");
        if (at.Refusal is { } refusal)
        {
            return new(null, refusal);
        }

        string newLine = plan.Text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        string lead = at.Index > 0 && plan.Text[at.Index - 1] != '\n' ? newLine : "";
        PlanTextResult added = plan.Changed(plan.Text.Insert(at.Index, lead + at.Heading(newLine) + Block(correction, at.Indent, newLine)));
        return added.Text is { } text ? text.With("correction", correction.Key) : added;
    }

    /// <summary>Why a correction of a name cannot be added to a plan; null where it can.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="name">The name.</param>
    public static PlanProblem? Refusal(Plan plan, string name)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(name);
        return KeyNameShape.IsKey(name) && plan.Corrections.All(one => one.Key != name) ? null : Taken("--adopt", name);
    }

    private static string Block(AdoptedCorrection correction, int indent, string newLine)
    {
        StringBuilder block = new();
        string outer = new(' ', indent);
        string inner = new(' ', indent + 2);
        block.Append(outer).Append(correction.Key).Append(':').Append(newLine);
        void Line(string key, string value) => block.Append(inner).Append(key).Append(": ").Append(value).Append(newLine);
        if (correction.Source.Length > 0)
        {
            Line("source", YamlScalar.Write(correction.Source));
        }

        Line("offset", Ranged(correction.OffsetDb, Dimension.Ratio));
        if (correction.CoverMetres is { } cover)
        {
            Line("cover-height", Ranged(cover, Dimension.Length));
        }

        if (correction.StationHeightMetres is { } height)
        {
            Line("station-height", Ranged(height, Dimension.Length));
        }

        Line("spread", Exact(correction.SpreadDb));
        if (!correction.AppliesTo.IsEmpty)
        {
            Line("applies-to", $"[{string.Join(", ", correction.AppliesTo)}]");
        }

        if (!correction.Stations.IsEmpty)
        {
            block.Append(inner).Append("stations:").Append(newLine);
            foreach ((string key, OwnCorrection own) in correction.Stations)
            {
                string spread = own.SpreadDb is { } left ? $", spread: {Exact(left)}" : "";
                block.Append(inner).Append("  ").Append(key).Append(": {offset: ").Append(Ranged(own.OffsetDb, Dimension.Ratio)).Append(spread).Append('}').Append(newLine);
            }
        }

        return block.ToString();
    }

    /// <summary>A range to a tenth of its unit: as wide to both sides where it is so before it is rounded.</summary>
    private static string Ranged(Estimate value, Dimension dimension)
    {
        double median = Math.Round(value.Median, 1);
        bool isEven = Math.Abs(value.High - value.Median - (value.Median - value.Low)) < 1e-9;
        return Quantity.Format(isEven ? Estimate.PlusMinus(median, Math.Round(value.HalfRange, 1)) : value.Map(one => Math.Round(one, 1)), dimension);
    }

    private static string Exact(double db) => string.Create(CultureInfo.InvariantCulture, $"{db:0.0} dB");

    private static PlanProblem Taken(string file, string name) => new()
    {
        Code = "plan-key",
        File = file,
        Path = $"corrections/{name}",
        Message = "A new correction cannot have this name.",
        Wanted = "a name of small letters, digits and hyphens that no correction has yet",
    };
}
