using System.Globalization;
using Mastwright.Network;
using Mastwright.Propagation;

namespace Mastwright.Plans;

/// <summary>Why a link comes out as it does, and what would change it, in words with numbers.</summary>
internal static class LinkReasons
{
    /// <summary>The one thing that costs most beyond free space.</summary>
    internal static string Why(LinkDirection direction, LinkPath path)
    {
        if (path.Clearance is not { } clearance || path.Out is not { } prediction)
        {
            return "";
        }

        double ground = prediction.Lines.Where(line => line.Code is "diffraction" or "knife-edge").Sum(line => line.Value);
        double metres = DistanceFrom(direction, path, clearance.Worst);
        string at = (metres < 1000 ? Text($"{metres:0} m") : Text($"{metres / 1000:0.0} km")) + $" from {direction.From.Name}";
        if (clearance.Worst.ClearanceMetres < 0)
        {
            return Text($"what stands {at} reaches {-clearance.Worst.ClearanceMetres:0} m above the line between the antennas; ground and cover cost {ground:0} dB");
        }

        if (!clearance.IsClear)
        {
            return Text($"the line is free, but {at} only {clearance.Worst.ClearanceRadii:0.0} of the first Fresnel zone is; ground and cover cost {ground:0} dB");
        }

        return Text($"the path is clear ({clearance.Worst.ClearanceRadii:0.0} Fresnel radii at the tightest place, {at})");
    }

    /// <summary>What to do about a link that is not ok.</summary>
    internal static string Advice(LinkDirection direction, LinkPath path, PathSettings settings)
    {
        if (path.Clearance is not { } clearance)
        {
            return "";
        }

        double wanted = settings.Wanted.MarginDb - (direction.MarginDb?.Median ?? 0);
        string gain = Text($"{wanted:0} dB more in the budget (antenna, feed, power within the rules, or a slower setting)");
        return clearance.IsClear
            ? $"Find {gain}."
            : $"Raise an antenna, move it, or relay over the top: 'path' gives the mast heights. Or find {gain}.";
    }

    private static double DistanceFrom(LinkDirection direction, LinkPath path, ClearancePoint point) =>
        direction.IsReversed && path.Profile is { } profile ? profile.LengthMetres - point.DistanceMetres : point.DistanceMetres;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
