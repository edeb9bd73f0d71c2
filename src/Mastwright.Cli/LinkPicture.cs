using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Paths;
using Mastwright.Plans;
using Mastwright.Propagation;

namespace Mastwright.Cli;

/// <summary>The picture of a link's path from its report.</summary>
internal static class LinkPicture
{
    internal static Drawing Draw(Assessment assessment, LinkReport link, bool isDark)
    {
        TerrainProfile terrain = link.Path.Terrain!;
        ImmutableArray<double> distances = [.. Enumerable.Range(0, terrain.Count).Select(terrain.DistanceMetres)];
        ClearanceAnalysis? clearance = link.Path.Clearance;
        PathPictureModel model = new()
        {
            TransmitterName = link.From.Name,
            ReceiverName = link.To.Name,
            DistancesMetres = distances,
            GroundMetres = [.. link.Path.Profile is { } profile ? profile.HeightsMetres.ToArray() : Filled(terrain.HeightsMetres)],
            CoverHeightMetres = [.. link.Path.Profile is { } cover ? cover.CoverMetres.ToArray() : terrain.CoverHeightsMetres.ToArray()],
            CoverKinds = [.. terrain.CoverCodes.ToArray().Select(Kind)],
            Zones = [.. terrain.Zones],
            Missing = [.. terrain.Gaps.Where(gap => gap.ToMetres > gap.FromMetres).Select(gap => new PathStretch(gap.FromMetres, gap.ToMetres))],
            TransmitterHeightMetres = link.Path.FromHeightMetres?.Median ?? 0,
            ReceiverHeightMetres = link.Path.ToHeightMetres?.Median ?? 0,
            FrequencyHz = assessment.Settings.FrequencyHz,
            KFactor = link.Path.Air.KFactor,
            LowKFactor = assessment.Settings.LowKFactor,
            Obstructions = clearance is null ? [] :
            [
                .. clearance.Obstructions.Select(obstruction => new PathObstruction(
                    obstruction.Worst.DistanceMetres, -obstruction.Worst.ClearanceMetres, -obstruction.Worst.ClearanceRadii)),
            ],
            Verdict = link.Finding.Verdict,
            MarginDb = link.Finding.Margin,
            Headline = Headline(link),
            Notes = Notes(assessment, link),
            Directions =
            [
                new(link.From.Name, link.To.Name, link.Out.MarginDb?.Median, link.Out.Verdict),
                new(link.To.Name, link.From.Name, link.Back.MarginDb?.Median, link.Back.Verdict),
            ],
        };
        return PathPicture.Draw(model, PictureSize.Wide, isDark ? Theme.Dark : Theme.Light);
    }

    private static string Headline(LinkReport link) => link.Finding.Details.GetValueOrDefault("why") is { Length: > 0 } why
        ? char.ToUpperInvariant(why[0]) + why[1..] + "."
        : FindingSentences.Text(link.Finding);

    private static ImmutableArray<string> Notes(Assessment assessment, LinkReport link)
    {
        List<string> notes = [];
        if (link.Weaker.Odds is { } odds)
        {
            notes.Add($"Works with {LinkOdds.Percent(odds.Works)} confidence; if it works, delivers {LinkOdds.Percent(odds.DeliversIfItWorks)} of packets.");
        }

        if (link.Path.Out is { } prediction)
        {
            notes.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"{prediction.Method} at {assessment.Settings.FrequencyHz / 1e6:0.###} MHz, {assessment.Settings.TimePercent:0.#} % of the time: {prediction.LossDb:0.0} dB between the antennas."));
        }

        return [.. notes];
    }

    /// <summary>What a code of the cover raster (ESA WorldCover) looks like.</summary>
    private static CoverKind Kind(byte code) => code switch
    {
        10 or 95 => CoverKind.Trees,
        20 or 30 or 40 or 90 or 100 => CoverKind.Grass,
        50 => CoverKind.Buildings,
        80 => CoverKind.Water,
        _ => CoverKind.None,
    };

    /// <summary>Heights with the gaps bridged by straight lines, for the picture alone, which marks them.</summary>
    private static double[] Filled(ReadOnlySpan<double> heights)
    {
        double[] filled = heights.ToArray();
        int last = -1;
        for (int i = 0; i <= filled.Length; i++)
        {
            if (i < filled.Length && double.IsNaN(filled[i]))
            {
                continue;
            }

            double before = last >= 0 ? filled[last] : i < filled.Length ? filled[i] : 0;
            double after = i < filled.Length ? filled[i] : before;
            for (int gap = last + 1; gap < i; gap++)
            {
                filled[gap] = before + ((after - before) * (gap - last) / (i - last));
            }

            last = i;
        }

        return filled;
    }
}
