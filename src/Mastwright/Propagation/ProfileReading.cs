namespace Mastwright.Propagation;

/// <summary>Everything the equations of ITU-R P.1812 need of a profile, read in one walk (and a second where the path is clear).</summary>
/// <remarks>
/// Lengths in metres, slopes in metres per metre. With C = 1/(2a), the slope from the transmitter to a point with the bulge of the
/// Earth, (g + C x(d − x) − hts)/x, equals (g − hts)/x − C x + C d. So both effective radii, and the bare ground, share one division.
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

    /// <summary>The two sums of the smooth-Earth fit, P.1812 equations (83) and (84).</summary>
    internal double FirstSum;
    internal double SecondSum;

    /// <summary>Bullington readings with the cover, at the median radius and at the radius of ducting time.</summary>
    internal BullingtonReading Median;
    internal BullingtonReading Ducting;

    internal static ProfileReading Take(PathProfile profile, double hts, double hrs, double medianRadius, double ductingRadius, bool withCover)
    {
        ReadOnlySpan<double> x = profile.DistancesMetres;
        ReadOnlySpan<double> h = profile.HeightsMetres[..x.Length];
        ReadOnlySpan<double> cover = profile.CoverMetres[..x.Length];
        int last = x.Length - 1;
        double length = x[last];
        double line = (hrs - hts) / length;
        double c50 = 0.5 / medianRadius;
        double cb = 0.5 / ductingRadius;
        bool covered = withCover && cover[1..last].IndexOfAnyExcept(0.0) >= 0;

        double v1 = 0;
        double v2 = 0;
        double rawT = double.NegativeInfinity;
        double rawR = double.NegativeInfinity;
        double obstruction = double.NegativeInfinity;
        double horizonT = double.NegativeInfinity;
        double horizonR = double.NegativeInfinity;
        int pointT = 1;
        int pointR = 1;
        double medianT = double.NegativeInfinity;
        double medianR = double.NegativeInfinity;
        double ductingT = double.NegativeInfinity;
        double ductingR = double.NegativeInfinity;
        double beforeX = x[0];
        double beforeH = h[0];
        for (int i = 1; i < last; i++)
        {
            double xi = x[i];
            double hi = h[i];
            double step = xi - beforeX;
            v1 += step * (hi + beforeH);
            v2 += step * ((hi * (xi + xi + beforeX)) + (beforeH * (xi + beforeX + beforeX)));
            beforeX = xi;
            beforeH = hi;

            double toEnd = length - xi;
            double inverse = 1 / (xi * toEnd);
            double perX = toEnd * inverse;
            double perEnd = xi * inverse;
            double fromT = (hi - hts) * perX;
            double fromR = (hi - hrs) * perEnd;
            rawT = fromT > rawT ? fromT : rawT;
            rawR = fromR > rawR ? fromR : rawR;
            double above = hi - (line * xi);
            obstruction = above > obstruction ? above : obstruction;

            double bentT = fromT - (c50 * xi);
            if (bentT > horizonT)
            {
                horizonT = bentT;
                pointT = i;
            }

            double bentR = fromR - (c50 * toEnd);
            if (bentR >= horizonR)
            {
                horizonR = bentR;
                pointR = i;
            }

            if (covered)
            {
                double rise = cover[i];
                fromT += rise * perX;
                fromR += rise * perEnd;
                bentT = fromT - (c50 * xi);
                bentR = fromR - (c50 * toEnd);
                medianT = bentT > medianT ? bentT : medianT;
                medianR = bentR > medianR ? bentR : medianR;
            }

            double ductT = fromT - (cb * xi);
            double ductR = fromR - (cb * toEnd);
            ductingT = ductT > ductingT ? ductT : ductingT;
            ductingR = ductR > ductingR ? ductR : ductingR;
        }

        double lastStep = length - beforeX;
        ProfileReading reading = new()
        {
            Length = length,
            LineSlope = line,
            RawSlopeFromTransmitter = rawT,
            RawSlopeFromReceiver = rawR,
            Obstruction = obstruction - hts,
            HorizonFromTransmitter = horizonT,
            HorizonFromReceiver = horizonR,
            TransmitterHorizonPoint = pointT,
            ReceiverHorizonPoint = pointR,
            IsLineOfSight = horizonT <= line - (c50 * length),
            FirstSum = v1 + (lastStep * (h[last] + beforeH)),
            SecondSum = v2 + (lastStep * ((h[last] * (length + length + beforeX)) + (beforeH * (length + beforeX + beforeX)))),
            Median = new(
                (covered ? medianT : horizonT) + (c50 * length),
                (covered ? medianR : horizonR) + (c50 * length),
                double.NegativeInfinity),
            Ducting = new(ductingT + (cb * length), ductingR + (cb * length), double.NegativeInfinity),
        };

        if (reading.IsLineOfSight || reading.Median.SlopeFromTransmitter < line || reading.Ducting.SlopeFromTransmitter < line)
        {
            reading.ReadClearances(x, h, covered ? cover : default, hts, c50, cb);
        }

        return reading;
    }

    /// <summary>Finds the point nearest to the ray in Fresnel radii: for the bare ground, and with cover at either radius.</summary>
    /// <remarks>
    /// v is proportional to c/sqrt(x(d − x)); c·|c|/(x(d − x)) has its maximum at the same point and needs no root. Equal values: the last
    /// point, as the published results do.
    /// </remarks>
    private void ReadClearances(ReadOnlySpan<double> x, ReadOnlySpan<double> h, ReadOnlySpan<double> cover, double hts, double c50, double cb)
    {
        double bare = double.NegativeInfinity;
        double median = double.NegativeInfinity;
        double ducting = double.NegativeInfinity;
        int point = 1;
        for (int i = 1; i < x.Length - 1; i++)
        {
            double product = x[i] * (Length - x[i]);
            double inverse = 1 / product;
            double above = h[i] - hts - (LineSlope * x[i]);
            double bent = above + (c50 * product);
            double key = bent * Math.Abs(bent) * inverse;
            if (key >= bare)
            {
                bare = key;
                point = i;
            }

            if (!cover.IsEmpty)
            {
                above += cover[i];
                bent = above + (c50 * product);
                key = bent * Math.Abs(bent) * inverse;
                median = key > median ? key : median;
            }

            bent = above + (cb * product);
            key = bent * Math.Abs(bent) * inverse;
            ducting = key > ducting ? key : ducting;
        }

        Median = Median with { ClearanceKey = cover.IsEmpty ? bare : median };
        Ducting = Ducting with { ClearanceKey = ducting };
        if (IsLineOfSight)
        {
            TransmitterHorizonPoint = point;
            ReceiverHorizonPoint = point;
        }
    }
}
