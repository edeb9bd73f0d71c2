using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Paths;

/// <summary>The legend of a path picture: only what the picture shows.</summary>
internal static class PathLegend
{
    /// <summary>Its entries.</summary>
    public static ImmutableArray<LegendEntry> Of(PathPictureModel model, PathGeometry geometry, Palette palette)
    {
        List<LegendEntry> entries = !geometry.HasRay ? [] :
        [
            LegendEntry.Line("direct ray", new(palette.Ray, 1.8)),
            LegendEntry.Area("first Fresnel zone", new(palette.Fresnel.Veil(0.08)), palette.Fresnel),
            LegendEntry.Line("0.6 of it, wanted clear", new(palette.Fresnel, 1.2) { Dashes = [6, 4] }),
        ];
        bool blocked = false;
        bool intruding = false;
        for (int i = 0; i < geometry.Ray.Length; i++)
        {
            if (geometry.Missing[i])
            {
                continue;
            }

            blocked |= geometry.Top[i] > geometry.Ray[i];
            intruding |= geometry.Top[i] > geometry.Ray[i] - (RadioLayer.WantedShare * geometry.Fresnel[i]);
        }

        if (blocked)
        {
            entries.Add(LegendEntry.Area("blocks the ray", new(palette.Blocked.Veil(RadioLayer.BlockedVeil)), palette.Blocked));
        }

        if (intruding)
        {
            entries.Add(LegendEntry.Area("within 0.6 of the zone", new(palette.Blocked.Veil(0.16), new(HatchKind.Rising, palette.Blocked.Veil(0.8))), palette.Blocked));
        }

        entries.AddRange(Cover(model, palette));
        if (model.LowKFactor is double low && !geometry.Known.IsEmpty)
        {
            entries.Add(LegendEntry.Line($"ground at k = {Wording.KFactor(low)}", new(palette.GroundEdge.Veil(0.75), 1.1) { Dashes = [2, 3] }));
        }

        if (!model.Missing.IsDefaultOrEmpty)
        {
            entries.Add(LegendEntry.Area(MissingLayer.Words, new(palette.Paper, new(HatchKind.Crossed, palette.Missing)), palette.Missing));
        }

        return [.. entries];
    }

    private static IEnumerable<LegendEntry> Cover(PathPictureModel model, Palette palette)
    {
        SortedSet<CoverKind> kinds = [];
        for (int i = 0; i < model.DistancesMetres.Length; i++)
        {
            if (PathGeometry.IsMissing(model, model.DistancesMetres[i]))
            {
                continue;
            }

            CoverKind kind = model.CoverKinds.IsDefaultOrEmpty ? CoverKind.None : model.CoverKinds[i];
            kinds.Add(GroundLayer.IsSea(model, i, kind) ? CoverKind.Water : kind);
        }

        return kinds.Select(kind => LegendEntry.Area(CoverStyle.NameOf(kind), CoverStyle.FillOf(kind, palette), CoverStyle.EdgeOf(kind, palette)));
    }
}
