using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Station.Supply;

namespace Mastwright.Station.BoxClimate;

/// <summary>The heat that a supply leaves in the box: of everything behind its last cable.</summary>
public static class BoxHeat
{
    /// <summary>The heat part by part, on average, in W; null when the supply was not worked out.</summary>
    /// <param name="parts">The supply from its source to the loads.</param>
    /// <param name="supply">What came of it.</param>
    /// <remarks>What a radio radiates is counted as heat too: some milliwatts on the warm side.</remarks>
    public static Ledger? Of(ImmutableArray<SupplyPart> parts, SupplyResult supply)
    {
        ArgumentNullException.ThrowIfNull(supply);
        if (supply.Mean.IsEmpty)
        {
            return null;
        }

        HashSet<string> inBox = [.. BehindLastCable(parts).Select(part => part.PlanPath)];
        return new("heat in the box, on average", "W",
        [
            .. supply.Mean.Where(point => inBox.Contains(point.PlanPath) && point.HeatWatts > 0)
                .Select((point, i) => new LedgerLine(FormattableString.Invariant($"part-{i + 1}"), point.Label, point.HeatWatts, point.PlanPath)),
        ]);
    }

    private static IEnumerable<SupplyPart> BehindLastCable(ImmutableArray<SupplyPart> parts)
    {
        int last = parts.Length - 1;
        while (last >= 0 && parts[last] is not SupplyCable)
        {
            last--;
        }

        foreach (SupplyPart part in parts.Skip(last + 1))
        {
            yield return part;
            foreach (SupplyPart behind in part is SupplyBranches fork ? fork.Branches.SelectMany(branch => BehindLastCable(branch.Parts)) : [])
            {
                yield return behind;
            }
        }
    }
}
