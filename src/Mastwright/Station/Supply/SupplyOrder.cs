using System.Collections.Immutable;

namespace Mastwright.Station.Supply;

/// <summary>Whether the parts of a supply stand in an order that means something.</summary>
public static class SupplyOrder
{
    /// <summary>Finds the first part that stands where it cannot.</summary>
    /// <param name="parts">The parts from the source to the loads.</param>
    /// <returns>The part (null for an empty list) with what is wrong and what would be right; null when all is well.</returns>
    public static SupplyOrderFault? Check(ImmutableArray<SupplyPart> parts)
    {
        if (parts.IsEmpty)
        {
            return null;
        }

        return parts[0] is SupplySource or SupplyBattery
            ? Chain(parts, isStart: true, batteryBefore: false)
            : new(parts[0], "A supply begins with what the power comes from.", "mains-adapter, power-over-cable, injector or battery first");
    }

    private static SupplyOrderFault? Chain(ImmutableArray<SupplyPart> parts, bool isStart, bool batteryBefore)
    {
        bool battery = batteryBefore;
        for (int i = 0; i < parts.Length; i++)
        {
            SupplyPart part = parts[i];
            bool isLast = i == parts.Length - 1;
            if (part is SupplySource && !(isStart && i == 0))
            {
                return new(part, "A source stands behind another part.", "the source first in the list");
            }

            if (part is SupplyLoad or SupplyBranches && !isLast)
            {
                return new(parts[i + 1], "Nothing hangs behind a load or behind branches.", "loads last; several loads as branches");
            }

            if (part is not (SupplyLoad or SupplyBranches) && isLast)
            {
                return new(part, "The line ends without a load.", "board, radio or branches last");
            }

            if (part is SupplyBattery && battery)
            {
                return new(part, "A battery hangs behind another battery.", "one battery between a source and a load");
            }

            battery |= part is SupplyBattery;
            if (part is SupplyBranches fork
                && fork.Branches.Select(branch => Chain(branch.Parts, isStart: false, battery)).FirstOrDefault(fault => fault is not null) is { } within)
            {
                return within;
            }
        }

        return null;
    }
}

/// <summary>A part of a supply that stands where it cannot.</summary>
/// <param name="Part">The part.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Wanted">What would be right.</param>
public sealed record SupplyOrderFault(SupplyPart Part, string Message, string Wanted);
