using System.Numerics;

namespace Mastwright.Propagation;

/// <summary>The smooth surface fitted to the ground of a path, as heights above sea level at its two ends.</summary>
/// <remarks>Source: Rec. ITU-R P.1812 attachment 1 section 5.6, equations (83) to (90) and (93). Cover is left out.</remarks>
internal readonly struct SmoothEarthFit
{
    private readonly double length;

    private SmoothEarthFit(double length) => this.length = length;

    /// <summary>Height of the fit at the transmitter before any limit, equation (85).</summary>
    internal double UncappedTransmitterMetres { get; private init; }

    /// <summary>Height of the fit at the receiver before any limit, equation (86).</summary>
    internal double UncappedReceiverMetres { get; private init; }

    /// <summary>Height at the transmitter, not above the ground, equation (90a).</summary>
    internal double TransmitterMetres { get; private init; }

    /// <summary>Height at the receiver, not above the ground, equation (90b).</summary>
    internal double ReceiverMetres { get; private init; }

    /// <summary>Height at the transmitter for the diffraction model, lowered where ground stands in the way, equation (89).</summary>
    internal double DiffractionTransmitterMetres { get; private init; }

    /// <summary>Height at the receiver for the diffraction model, equation (89).</summary>
    internal double DiffractionReceiverMetres { get; private init; }

    internal static SmoothEarthFit Of(PathProfile profile, ref readonly ProfileReading path)
    {
        double d = path.Length;
        double atT = ((2 * profile.FirstSum * d) - profile.SecondSum) / (d * d);
        double atR = (profile.SecondSum - (profile.FirstSum * d)) / (d * d);
        double firstGround = profile.HeightsMetres[0];
        double lastGround = profile.HeightsMetres[^1];
        double loweredT = atT;
        double loweredR = atR;
        if (path.Obstruction > 0)
        {
            double slopeT = path.RawSlopeFromTransmitter - path.LineSlope; // (87b)
            double slopeR = path.RawSlopeFromReceiver + path.LineSlope; // (87c)
            loweredT -= path.Obstruction * slopeT / (slopeT + slopeR); // (88a)
            loweredR -= path.Obstruction * slopeR / (slopeT + slopeR); // (88b)
        }

        return new(d)
        {
            UncappedTransmitterMetres = atT,
            UncappedReceiverMetres = atR,
            TransmitterMetres = Math.Min(atT, firstGround),
            ReceiverMetres = Math.Min(atR, lastGround),
            DiffractionTransmitterMetres = Math.Min(loweredT, firstGround),
            DiffractionReceiverMetres = Math.Min(loweredR, lastGround),
        };
    }

    /// <summary>The two sums over the profile that the fit is made of, equations (83) and (84), added from the transmitter on.</summary>
    internal static (double First, double Second) Sums(ReadOnlySpan<double> x, ReadOnlySpan<double> ground)
    {
        double first = 0;
        double second = 0;
        for (int i = 1; i < x.Length; i++)
        {
            double step = x[i] - x[i - 1];
            first += step * (ground[i] + ground[i - 1]);
            second += step * ((ground[i] * (x[i] + x[i] + x[i - 1])) + (ground[i - 1] * (x[i] + x[i - 1] + x[i - 1])));
        }

        return (first, second);
    }

    /// <summary>Roughness hm: the largest height of the ground above the fit between the two horizons, equation (93).</summary>
    internal double RoughnessMetres(ReadOnlySpan<double> x, ReadOnlySpan<double> ground, int from, int to)
    {
        double slope = (ReceiverMetres - TransmitterMetres) / length;
        double largest = double.NegativeInfinity;
        int i = from;
        if (to - from > Vector<double>.Count)
        {
            Vector<double> highest = new(largest);
            for (; i <= to + 1 - Vector<double>.Count; i += Vector<double>.Count)
            {
                highest = Vector.MaxNative(highest, new Vector<double>(ground[i..]) - (new Vector<double>(x[i..]) * slope));
            }

            for (int lane = 0; lane < Vector<double>.Count; lane++)
            {
                largest = Math.Max(largest, highest[lane]);
            }
        }

        for (; i <= to; i++)
        {
            double above = ground[i] - (slope * x[i]);
            largest = above > largest ? above : largest;
        }

        return largest - TransmitterMetres;
    }
}
