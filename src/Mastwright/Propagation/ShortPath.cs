using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Propagation;

/// <summary>Paths under 0.25 km, which ITU-R P.1812 does not cover: free space and the one edge nearest to the ray.</summary>
/// <remarks>
/// Sources: Rec. ITU-R P.525 and the single knife edge of Rec. ITU-R P.526. Reflections and houses on either side are left out: close to
/// the ground or among houses the true loss is often some dB, at times tens of dB, higher.
/// </remarks>
internal static class ShortPath
{
    internal static PathLossPrediction Predict(PathProfile profile, P1812Input input, ImmutableArray<RangeProblem> problems)
    {
        ReadOnlySpan<double> x = profile.DistancesMetres;
        double hts = profile.HeightsMetres[0] + input.TransmitterHeightMetres;
        double hrs = profile.HeightsMetres[^1] + input.ReceiverHeightMetres;
        double length = profile.LengthMetres;
        double radius = EffectiveEarth.FromGradient(input.RefractivityGradient);
        double v = double.NegativeInfinity;
        double at = 0;
        for (int i = 1; i < x.Length - 1; i++)
        {
            double toEnd = length - x[i];
            double top = profile.HeightsMetres[i] + (input.AddCover ? profile.CoverMetres[i] : 0) + EffectiveEarth.BulgeMetres(x[i], toEnd, radius);
            double ray = ((hts * toEnd) + (hrs * x[i])) / length;
            double here = KnifeEdge.Parameter(top - ray, x[i], toEnd, input.FrequencyHz);
            if (here > v)
            {
                v = here;
                at = x[i];
            }
        }

        double slant = Math.Sqrt((length * length) + ((hts - hrs) * (hts - hrs)));
        ImmutableArray<LedgerLine> lines =
        [
            new("free-space", "Free space", FreeSpace.LossDb(slant, input.FrequencyHz), "ITU-R P.525"),
            new("diffraction", "Principal edge in the way", KnifeEdge.LossDb(v), "ITU-R P.526, single knife edge", FormattableString.Invariant($"at {at:0} m, v = {v:0.00}")),
            new(
                "places",
                "Places around the receiver",
                profile.Zones[^1] == Ground.Zone.Sea ? 0 : LocationVariability.LossDb(input.LocationPercent, input.LocationSigmaDb),
                "as ITU-R P.1812 (69)",
                FormattableString.Invariant($"not exceeded at {input.LocationPercent:0.##} % of the places, deviation {input.LocationSigmaDb:0.##} dB")),
        ];
        return new()
        {
            LossDb = lines[0].Value + lines[1].Value + lines[2].Value,
            Method = PathLoss.ShortMethod,
            RangeProblems = problems,
            Lines = lines,
        };
    }
}
