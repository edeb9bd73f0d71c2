using System.Collections.Immutable;

namespace Mastwright.Propagation;

/// <summary>Clearance of a path in metres and in Fresnel radii, for pictures and for choosing a mast.</summary>
/// <remarks>Source: Rec. ITU-R P.526 section 2.1 (Fresnel radius); 0.6 of the first zone as the usual mark of a clear path, Rec. ITU-R P.530 practice (from memory).</remarks>
public static class FresnelClearance
{
    /// <summary>Share of the first Fresnel zone that a clear path leaves free: 0.6.</summary>
    public const double ClearRadii = 0.6;

    /// <summary>Analyses a path.</summary>
    /// <param name="profile">The path, transmitter first. Its cover counts except at the first and last points.</param>
    /// <param name="transmitterHeightMetres">Height of the transmitting antenna above the ground, in metres, zero or more.</param>
    /// <param name="receiverHeightMetres">Height of the receiving antenna above the ground, in metres, zero or more.</param>
    /// <param name="frequencyHz">Frequency in Hz, above zero.</param>
    /// <param name="kFactor">Effective earth-radius factor, above zero: 4/3 for a usual atmosphere.</param>
    /// <param name="addCover">Whether the cover counts; false for a surface model.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static ClearanceAnalysis Analyse(
        PathProfile profile, double transmitterHeightMetres, double receiverHeightMetres, double frequencyHz, double kFactor, bool addCover = true)
    {
        ArgumentNullException.ThrowIfNull(profile);
        double radius = EffectiveEarth.FromFactor(kFactor);
        double wavelength = FreeSpace.WavelengthMetres(frequencyHz);
        ReadOnlySpan<double> x = profile.DistancesMetres;
        double length = profile.LengthMetres;
        double hts = profile.HeightsMetres[0] + Domain.ZeroOrMore(transmitterHeightMetres, nameof(transmitterHeightMetres));
        double hrs = profile.HeightsMetres[^1] + Domain.ZeroOrMore(receiverHeightMetres, nameof(receiverHeightMetres));
        ImmutableArray<ClearancePoint>.Builder points = ImmutableArray.CreateBuilder<ClearancePoint>(x.Length);
        double slopeT = double.NegativeInfinity;
        double slopeR = double.NegativeInfinity;
        int worst = 1;
        for (int i = 0; i < x.Length; i++)
        {
            double toEnd = length - x[i];
            bool inside = i > 0 && i < x.Length - 1;
            double bulge = x[i] * toEnd / (2 * radius);
            double ground = profile.HeightsMetres[i] + bulge;
            double surface = ground + (addCover && inside ? profile.CoverMetres[i] : 0);
            points.Add(new(
                x[i], ground, surface, ((hts * toEnd) + (hrs * x[i])) / length, inside ? Math.Sqrt(wavelength * x[i] * toEnd / length) : 0));
            if (inside)
            {
                worst = points[i].ClearanceRadii < points[worst].ClearanceRadii ? i : worst;
                slopeT = Math.Max(slopeT, (surface - hts) / x[i]);
                slopeR = Math.Max(slopeR, (surface - hrs) / toEnd);
            }
        }

        // Angles are to the local horizontal, which the chord frame tilts by half the arc of the path.
        double line = (hrs - hts) / length;
        double tilt = length / (2 * radius);
        ImmutableArray<ClearancePoint> all = points.MoveToImmutable();
        return new()
        {
            Points = all,
            Obstructions = Runs(all),
            Worst = all[worst],
            TransmitterElevationDegrees = double.RadiansToDegrees(Math.Atan(Math.Max(slopeT, line) - tilt)),
            ReceiverElevationDegrees = double.RadiansToDegrees(Math.Atan(Math.Max(slopeR, -line) - tilt)),
            KFactor = kFactor,
        };
    }

    private static ImmutableArray<Obstruction> Runs(ImmutableArray<ClearancePoint> points)
    {
        ImmutableArray<Obstruction>.Builder runs = ImmutableArray.CreateBuilder<Obstruction>();
        int first = -1;
        int worst = -1;
        for (int i = 1; i < points.Length; i++)
        {
            if (points[i].ClearanceRadii < ClearRadii)
            {
                first = first < 0 ? i : first;
                worst = worst < 0 || points[i].ClearanceRadii < points[worst].ClearanceRadii ? i : worst;
            }
            else if (first > 0)
            {
                runs.Add(new(first, i - 1, points[worst], KnifeEdge.LossDb(points[worst].EdgeParameter)));
                first = -1;
                worst = -1;
            }
        }

        return runs.ToImmutable();
    }
}
