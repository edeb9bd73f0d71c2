using System.Numerics;

namespace Mastwright.Propagation;

/// <summary>Everything the equations of ITU-R P.1812 need of a profile, read in one walk (and a second where the path is clear).</summary>
/// <remarks>
/// <para>
/// Lengths in metres, slopes in metres per metre. With C = 1/(2a), the slope from the transmitter to a point with the bulge of the
/// Earth, (g + C x(d − x) − hts)/x, equals (g − hts)/x − C x + C d. So both effective radii, and the bare ground, share one division.
/// </para>
/// <para>
/// Points are taken a vector at a time; only maxima are formed, so the width of the vector changes no bit of the result. The last vector
/// overlaps the one before it, which a maximum does not mind.
/// </para>
/// </remarks>
internal struct ProfileReading
{
    internal double Length;
    internal double LineSlope;

    /// <summary>Largest slope from each end to the ground without bulge.</summary>
    internal double RawSlopeFromTransmitter;
    internal double RawSlopeFromReceiver;

    /// <summary>Largest height of the ground above the line between the antennas, without bulge.</summary>
    internal double Obstruction;

    /// <summary>Largest horizon slope from each end (bulge of the median Earth, bare ground) and the point it belongs to.</summary>
    internal double HorizonFromTransmitter;
    internal double HorizonFromReceiver;
    internal int TransmitterHorizonPoint;
    internal int ReceiverHorizonPoint;

    /// <summary>Whether the bare ground leaves the line of sight clear at the median radius.</summary>
    internal bool IsLineOfSight;

    /// <summary>Bullington readings with the cover, at the median radius and at the radius of ducting time.</summary>
    internal BullingtonReading Median;
    internal BullingtonReading Ducting;

    internal static ProfileReading Take(PathProfile profile, double hts, double hrs, double medianRadius, double ductingRadius, bool withCover)
    {
        int inside = profile.Count - 2;
        bool covered = withCover && profile.HasCover;
        scoped ReadOnlySpan<double> x = profile.DistancesMetres.Slice(1, inside);
        scoped ReadOnlySpan<double> h = profile.HeightsMetres.Slice(1, inside);
        scoped ReadOnlySpan<double> cover = covered ? profile.CoverMetres.Slice(1, inside) : h;

        // A path shorter than a vector repeats its last point: a maximum does not mind that either.
        int width = Vector<double>.Count;
        Span<double> padded = stackalloc double[3 * width];
        if (inside < width)
        {
            x = Pad(x, padded[..width]);
            h = Pad(h, padded.Slice(width, width));
            cover = Pad(cover, padded[(2 * width)..]);
        }

        ProfileReading reading = new()
        {
            Length = profile.LengthMetres,
            LineSlope = (hrs - hts) / profile.LengthMetres,
        };
        double c50 = 0.5 / medianRadius;
        double cb = 0.5 / ductingRadius;
        reading.ReadSlopes(x, h, cover, covered, hts, hrs, c50, cb);
        double fall = c50 * reading.Length;
        reading.IsLineOfSight = reading.HorizonFromTransmitter <= reading.LineSlope - fall;
        if (reading.IsLineOfSight || reading.Median.SlopeFromTransmitter < reading.LineSlope || reading.Ducting.SlopeFromTransmitter < reading.LineSlope)
        {
            reading.ReadClearances(x, h, cover, covered, hts, c50, cb);
        }

        // Indices count from the first point of the profile; padding stands for the last inside.
        reading.TransmitterHorizonPoint = Math.Min(reading.TransmitterHorizonPoint + 1, inside);
        reading.ReceiverHorizonPoint = Math.Min(reading.ReceiverHorizonPoint + 1, inside);
        return reading;
    }

    private static ReadOnlySpan<double> Pad(ReadOnlySpan<double> values, Span<double> padded)
    {
        padded.Fill(values[^1]);
        values.CopyTo(padded);
        return padded;
    }

    private void ReadSlopes(
        ReadOnlySpan<double> xs, ReadOnlySpan<double> hs, ReadOnlySpan<double> covers, bool covered, double hts, double hrs, double c50, double cb)
    {
        Vector<double> lowest = new(double.NegativeInfinity);
        Vector<double> rawT = lowest;
        Vector<double> rawR = lowest;
        Vector<double> obstruction = lowest;
        Vector<double> horizonT = lowest;
        Vector<double> horizonR = lowest;
        Vector<double> medianT = lowest;
        Vector<double> medianR = lowest;
        Vector<double> ductingT = lowest;
        Vector<double> ductingR = lowest;
        Vector<long> pointT = Vector<long>.Zero;
        Vector<long> pointR = Vector<long>.Zero;
        Vector<double> length = new(Length);
        Vector<long> lanes = Vector<long>.Indices;
        int width = Vector<double>.Count;
        for (int start = 0; start < xs.Length; start += width)
        {
            start = Math.Min(start, xs.Length - width);
            Vector<double> x = At(xs, start);
            Vector<double> h = At(hs, start);
            Vector<double> toEnd = length - x;
            Vector<double> inverse = Vector<double>.One / (x * toEnd);
            Vector<double> perX = toEnd * inverse;
            Vector<double> perEnd = x * inverse;
            Vector<double> fromT = (h - new Vector<double>(hts)) * perX;
            Vector<double> fromR = (h - new Vector<double>(hrs)) * perEnd;
            rawT = Vector.MaxNative(rawT, fromT);
            rawR = Vector.MaxNative(rawR, fromR);
            obstruction = Vector.MaxNative(obstruction, h - (x * LineSlope));

            Vector<double> bulgeX = x * c50;
            Vector<double> bulgeEnd = toEnd * c50;
            Vector<long> here = lanes + new Vector<long>(start);
            Vector<double> bent = fromT - bulgeX;
            pointT = Vector.ConditionalSelect(Vector.GreaterThan(bent, horizonT), here, pointT);
            horizonT = Vector.MaxNative(horizonT, bent);
            bent = fromR - bulgeEnd;
            pointR = Vector.ConditionalSelect(Vector.GreaterThanOrEqual(bent, horizonR), here, pointR);
            horizonR = Vector.MaxNative(horizonR, bent);
            if (covered)
            {
                Vector<double> rise = At(covers, start);
                fromT += rise * perX;
                fromR += rise * perEnd;
                medianT = Vector.MaxNative(medianT, fromT - bulgeX);
                medianR = Vector.MaxNative(medianR, fromR - bulgeEnd);
            }

            ductingT = Vector.MaxNative(ductingT, fromT - (x * cb));
            ductingR = Vector.MaxNative(ductingR, fromR - (toEnd * cb));
        }

        RawSlopeFromTransmitter = Largest(rawT);
        RawSlopeFromReceiver = Largest(rawR);
        Obstruction = Largest(obstruction) - hts;
        (HorizonFromTransmitter, TransmitterHorizonPoint) = Largest(horizonT, pointT, lastOfEqual: false);
        (HorizonFromReceiver, ReceiverHorizonPoint) = Largest(horizonR, pointR, lastOfEqual: true);
        double rise50 = c50 * Length;
        double riseDucting = cb * Length;
        Median = new(
            (covered ? Largest(medianT) : HorizonFromTransmitter) + rise50,
            (covered ? Largest(medianR) : HorizonFromReceiver) + rise50,
            double.NegativeInfinity);
        Ducting = new(Largest(ductingT) + riseDucting, Largest(ductingR) + riseDucting, double.NegativeInfinity);
    }

    /// <summary>Finds the point nearest to the ray in Fresnel radii: for the bare ground, and with cover at either radius.</summary>
    /// <remarks>
    /// v is proportional to c/sqrt(x(d − x)); c·|c|/(x(d − x)) has its maximum at the same point and needs no root. Equal values: the last
    /// point, as the published results do.
    /// </remarks>
    private void ReadClearances(
        ReadOnlySpan<double> xs, ReadOnlySpan<double> hs, ReadOnlySpan<double> covers, bool covered, double hts, double c50, double cb)
    {
        Vector<double> bare = new(double.NegativeInfinity);
        Vector<double> median = bare;
        Vector<double> ducting = bare;
        Vector<long> point = Vector<long>.Zero;
        Vector<double> length = new(Length);
        Vector<long> lanes = Vector<long>.Indices;
        int width = Vector<double>.Count;
        for (int start = 0; start < xs.Length; start += width)
        {
            start = Math.Min(start, xs.Length - width);
            Vector<double> x = At(xs, start);
            Vector<double> product = x * (length - x);
            Vector<double> inverse = Vector<double>.One / product;
            Vector<double> above = At(hs, start) - new Vector<double>(hts) - (x * LineSlope);
            Vector<double> bulge = product * c50;
            Vector<double> key = Key(above + bulge, inverse);
            point = Vector.ConditionalSelect(Vector.GreaterThanOrEqual(key, bare), lanes + new Vector<long>(start), point);
            bare = Vector.MaxNative(bare, key);
            if (covered)
            {
                above += At(covers, start);
                median = Vector.MaxNative(median, Key(above + bulge, inverse));
            }

            ducting = Vector.MaxNative(ducting, Key(above + (product * cb), inverse));
        }

        (double bareKey, int bestPoint) = Largest(bare, point, lastOfEqual: true);
        Median = Median with { ClearanceKey = covered ? Largest(median) : bareKey };
        Ducting = Ducting with { ClearanceKey = Largest(ducting) };
        if (IsLineOfSight)
        {
            TransmitterHorizonPoint = bestPoint;
            ReceiverHorizonPoint = bestPoint;
        }
    }

    private static Vector<double> Key(Vector<double> above, Vector<double> inverse) => above * Vector.Abs(above) * inverse;

    private static Vector<double> At(ReadOnlySpan<double> values, int start) => new(values.Slice(start, Vector<double>.Count));

    private static double Largest(Vector<double> values)
    {
        double largest = values[0];
        for (int lane = 1; lane < Vector<double>.Count; lane++)
        {
            largest = Math.Max(largest, values[lane]);
        }

        return largest;
    }

    private static (double Value, int Point) Largest(Vector<double> values, Vector<long> points, bool lastOfEqual)
    {
        double largest = values[0];
        long point = points[0];
        for (int lane = 1; lane < Vector<double>.Count; lane++)
        {
            double value = values[lane];
            if (value > largest || (value == largest && (lastOfEqual ? points[lane] > point : points[lane] < point)))
            {
                largest = value;
                point = points[lane];
            }
        }

        return (largest, (int)point);
    }
}
