using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Paths;
using Mastwright.Plans;
using Mastwright.Propagation;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Reports.Paths;

/// <summary>The picture of a link's path from its report.</summary>
internal static class LinkPicture
{
    private const double BesideEndMetres = 0.001;

    internal static Drawing Draw(Assessment assessment, LinkReport link, bool isDark, PictureSize? size = null)
    {
        TerrainProfile terrain = link.Path.KnownGround ?? link.Path.Terrain!;
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
            Missing = [.. Missing(terrain)],
            TransmitterHeightMetres = HeightMetres(link.Path.FromHeightMetres, link.From.Height, terrain.HeightsMetres[0]),
            ReceiverHeightMetres = HeightMetres(link.Path.ToHeightMetres, link.To.Height, terrain.HeightsMetres[^1]),
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
            MarginLowDb = link.Weaker.MarginDb?.Low,
            MarginHighDb = link.Weaker.MarginDb?.High,
            Headline = Headline(link),
            Notes = Notes(assessment, link),
            Directions =
            [
                new(link.From.Name, link.To.Name, link.Out.MarginDb?.Median, link.Out.Verdict, link.Out.MarginDb?.Low, link.Out.MarginDb?.High),
                new(link.To.Name, link.From.Name, link.Back.MarginDb?.Median, link.Back.Verdict, link.Back.MarginDb?.Low, link.Back.MarginDb?.High),
            ],
        };
        return PathPicture.Draw(model, size ?? PictureSize.Wide, isDark ? Theme.Dark : Theme.Light);
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

    /// <summary>
    /// How high an antenna stands above its ground: as the path has it, else, where the path could not be worked out for another reason,
    /// as the plan gives it. Null when the plan does not say, or when it says a height above the sea and nobody knows the ground.
    /// </summary>
    private static double? HeightMetres(Estimate? ofPath, MountHeight? mount, double groundMetres)
    {
        if (ofPath is { } known)
        {
            return known.Median;
        }

        return mount switch
        {
            null => null,
            { Above: HeightAbove.Roof } roof => roof.Metres.Median + (roof.RoofMetres?.Median ?? 0),
            { Above: HeightAbove.SeaLevel } sea => double.IsNaN(groundMetres) ? null : Math.Max(0, sea.Metres.Median - groundMetres),
            _ => mount.Metres.Median,
        };
    }

    /// <summary>
    /// The stretches without a height, each from the last point that has one to the next; where that is an end of the path, from just
    /// beside it, since one that reaches the end takes the end with it.
    /// </summary>
    private static IEnumerable<PathStretch> Missing(TerrainProfile terrain)
    {
        for (int i = 0; i < terrain.Count; i++)
        {
            if (double.IsNaN(terrain.HeightsMetres[i]))
            {
                double from = i == 1 ? BesideEndMetres : terrain.DistanceMetres(Math.Max(0, i - 1));
                while (i < terrain.Count - 1 && double.IsNaN(terrain.HeightsMetres[i]))
                {
                    i++;
                }

                bool endsBeside = i == terrain.Count - 1 && !double.IsNaN(terrain.HeightsMetres[i]);
                yield return new(from, endsBeside ? terrain.LengthMetres - BesideEndMetres : terrain.DistanceMetres(i));
            }
        }
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

    /// <summary>Heights with the gaps bridged by straight lines, since the picture takes numbers only; it shows none of them.</summary>
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
