using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.Radio;

namespace Mastwright.Plans;

/// <summary>What is to be said of a link besides its margin.</summary>
internal static class LinkFindings
{
    /// <summary>Height above ground in metres from which an antenna stands over most trees and houses. Common practice.</summary>
    private const double CoverMattersBelowMetres = 10;

    /// <summary>Model error in dB from which a plan has allowed for cover that it does not know; see docs/physics/prediction-error.md.</summary>
    private const double WideModelErrorDb = 10;

    internal static IEnumerable<Finding> Of(
        LinkStation from, LinkStation to, StationChainResult fromChain, StationChainResult toChain, LinkPath path, GeodesicSegment segment, Plan plan, StationCatalogue catalogue)
    {
        string subject = $"{from.Subject} ~ {to.Subject}";
        if (PolarisationMismatch.Judge(from.Polarisation, to.Polarisation, subject) is { } polarisation)
        {
            yield return polarisation;
        }

        if (path.Out is { } prediction)
        {
            foreach (Propagation.RangeProblem problem in prediction.RangeProblems)
            {
                yield return new()
                {
                    Code = "path-outside-model",
                    Subject = subject,
                    Verdict = Verdict.Unknown,
                    Source = "ITU-R P.1812",
                    Details = ImmutableSortedDictionary<string, string>.Empty
                        .Add("problem", problem.Text)
                        .Add("method", prediction.Method),
                };
            }
        }

        if ((plan.Spread.ModelErrorDb ?? 0) < WideModelErrorDb && WithoutCover(from, to, path))
        {
            yield return new()
            {
                Code = "path-without-cover",
                Subject = subject,
                Verdict = Verdict.Unknown,
                Source = "open 868 MHz measurements; see docs/physics/prediction-error.md",
            };
        }

        if (CoverKnown(path) is { } known and > 0 and < 1)
        {
            yield return new()
            {
                Code = "path-cover-partial",
                Subject = subject,
                Verdict = Verdict.Unknown,
                Source = "cover files of the plan",
                Details = FindingDetails.Of(("known", LinkOdds.Percent(known))),
            };
        }

        if (path.Clearance is { } clearance)
        {
            foreach ((LinkStation end, StationChainResult chain, double elevation, double bearing) in new[]
            {
                (from, fromChain, clearance.TransmitterElevationDegrees, segment.InitialBearingDegrees),
                (to, toChain, clearance.ReceiverElevationDegrees, (segment.FinalBearingDegrees + 180) % 360),
            })
            {
                Finding direction = AntennaFindings.Direction(chain.Pattern, elevation, bearing, $"{end.Subject} in {subject}");
                if (end.IsSite && direction.Verdict != Verdict.Ok)
                {
                    yield return direction;
                }
            }
        }

        if (from.FitOut is { } one && to.FitOut is { } other)
        {
            yield return FrequencyError.Judge(plan.Modem, one.Radio, other.Radio, catalogue, subject);
        }
    }

    /// <summary>Share of the points on land whose cover is known; null where cover does not count or there is no land.</summary>
    private static double? CoverKnown(LinkPath path)
    {
        if (path is not { Profile: not null, Terrain: { HasSurface: false } terrain })
        {
            return null;
        }

        int land = 0;
        int known = 0;
        for (int i = 0; i < terrain.Count; i++)
        {
            land += terrain.Zones[i] == Zone.Sea ? 0 : 1;
            known += terrain.Zones[i] != Zone.Sea && terrain.CoverCodes[i] != 0 ? 1 : 0;
        }

        return land == 0 ? null : (double)known / land;
    }

    /// <summary>Whether nothing is known of trees and houses on land although an antenna stands low enough for them to matter.</summary>
    private static bool WithoutCover(LinkStation from, LinkStation to, LinkPath path)
    {
        if (path is not { Profile: not null, Terrain: { HasSurface: false } terrain } || terrain.CoverCodes.ContainsAnyExcept((byte)0))
        {
            return false;
        }

        bool IsLow(LinkStation station, Estimate? metres) =>
            metres is { Median: < CoverMattersBelowMetres } && station.Surroundings is { ClutterKind.Length: 0, ClutterHeightMetres: null };
        return terrain.Zones.ContainsAnyExcept(Zone.Sea) && (IsLow(from, path.FromHeightMetres) || IsLow(to, path.ToHeightMetres));
    }
}
