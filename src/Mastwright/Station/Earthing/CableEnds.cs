using System.Collections.Immutable;
using Mastwright.Station.Supply;

namespace Mastwright.Station.Earthing;

/// <summary>A data or power cable of a supply, and at which of its ends a surge arrester stands.</summary>
/// <param name="Cable">The cable.</param>
/// <param name="IsGuardedAtSource">Whether one stands between it and the cable or the source before it.</param>
/// <param name="IsGuardedAtLoads">Whether one stands between it and the cable or every load behind it.</param>
public sealed record CableEnds(SupplyCable Cable, bool IsGuardedAtSource, bool IsGuardedAtLoads)
{
    /// <summary>The cables of a supply with their ends, from the source to the loads. An arrester where two cables meet counts for both.</summary>
    /// <param name="parts">The parts from the source to the loads.</param>
    public static ImmutableArray<CableEnds> Of(ImmutableArray<SupplyPart> parts) => [.. In(parts, isGuarded: false)];

    private static IEnumerable<CableEnds> In(ImmutableArray<SupplyPart> parts, bool isGuarded)
    {
        for (int i = 0; i < parts.Length; i++)
        {
            switch (parts[i])
            {
                case SupplyArrester:
                    isGuarded = true;
                    break;
                case SupplyCable cable:
                    yield return new(cable, isGuarded, IsGuardedFrom(parts, i + 1));
                    isGuarded = false;
                    break;
                case SupplyBranches fork:
                    foreach (CableEnds behind in fork.Branches.SelectMany(branch => In(branch.Parts, isGuarded)))
                    {
                        yield return behind;
                    }

                    break;
            }
        }
    }

    private static bool IsGuardedFrom(ImmutableArray<SupplyPart> parts, int first)
    {
        foreach (SupplyPart part in parts.AsSpan()[first..])
        {
            switch (part)
            {
                case SupplyArrester:
                    return true;
                case SupplyCable:
                    return false;
                case SupplyBranches fork:
                    return fork.Branches.All(branch => IsGuardedFrom(branch.Parts, 0));
            }
        }

        return false;
    }
}
