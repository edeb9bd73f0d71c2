using System.Text;
using Mastwright.Propagation;

namespace Mastwright.Cli.Output;

/// <summary>What stands in the way of a ray, in words.</summary>
internal static class ClearanceText
{
    internal static void Append(StringBuilder text, ClearanceAnalysis clearance)
    {
        if (clearance.IsClear)
        {
            text.Wrapped(FormattableString.Invariant($"At k = {clearance.KFactor:0.00} nothing stands within 0.6 of the first Fresnel zone: the least clearance is {clearance.Worst.ClearanceMetres:0.0} m ({Radii(clearance.Worst)}) at {clearance.Worst.DistanceMetres / 1000:0.00} km."), 0);
            return;
        }

        text.Line($"In the way at k = {clearance.KFactor:0.00} (less than 0.6 of the first Fresnel zone free)");
        text.Line($"      from      to     worst   clearance   in radii   as one edge");
        foreach (Obstruction obstruction in clearance.Obstructions)
        {
            ClearancePoint worst = obstruction.Worst;
            text.Line($"  {clearance.Points[obstruction.FirstPoint].DistanceMetres / 1000,8:0.00} {clearance.Points[obstruction.LastPoint].DistanceMetres / 1000,7:0.00} {worst.DistanceMetres / 1000,7:0.00} km {worst.ClearanceMetres,9:0.0} m {worst.ClearanceRadii,10:0.00} {obstruction.EdgeLossDb,10:0.0} dB");
        }
    }

    internal static string Radii(ClearancePoint point) => FormattableString.Invariant($"{point.ClearanceRadii:0.00} Fresnel radii");
}
