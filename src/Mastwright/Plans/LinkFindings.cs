using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.Radio;

namespace Mastwright.Plans;

/// <summary>What is to be said of a link besides its margin.</summary>
internal static class LinkFindings
{
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
}
