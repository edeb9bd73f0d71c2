using static Mastwright.Geodesy.GeodesicLine;

namespace Mastwright.Geodesy;

/// <summary>The inverse geodesic problem: the bearing is found by Newton's method, with a bracket that it cannot leave.</summary>
/// <remarks>
/// Source: C. F. F. Karney, "Algorithms for geodesics", Journal of Geodesy 87 (2013), sections 4 and 5. Symbols are the
/// paper's: β reduced latitude, α azimuth, σ arc and ω longitude on the auxiliary sphere, λ longitude, m reduced length.
/// The ends are first swapped and mirrored so that β1 ≤ 0, |β2| ≤ |β1| and 0 ≤ λ12 ≤ π.
/// </remarks>
internal ref struct GeodesicInverse
{
    private const double Precision = 2.220446049250313e-16;
    private const double RootPrecision = 1.4901161193847656e-8;
    private const double AntipodalYLimit = 200 * Precision;
    private const double AntipodalXLimit = 1000 * RootPrecision;
    private const double Tiny = 1e-150;
    private const double F1 = 1 - Wgs84.Flattening;

    /// <summary>Arc, in radians, under which the spherical answer with a mean radius is exact: about 0.2 m on the ground.</summary>
    private static readonly double ShortArc = 0.1 * RootPrecision / Math.Sqrt(Wgs84.Flattening * (1 - (Wgs84.Flattening / 2)) / 2);

    private double _sinBeta1, _cosBeta1, _sinBeta2, _cosBeta2;
    private double _dn1, _dn2;
    private double _lambda12, _sinLambda12, _cosLambda12;
    private double _sinAlpha1, _cosAlpha1, _sinAlpha2, _cosAlpha2;
    private double _sigma12, _epsilon;
    private double _sinSigma1, _cosSigma1, _sinSigma2, _cosSigma2;

    internal static GeodesicSegment Solve(GeoPoint from, GeoPoint to)
    {
        double longitudeDegrees = Degrees.Coarsened(Degrees.LongitudeDifference(from.LongitudeDegrees, to.LongitudeDegrees));
        double eastSign = longitudeDegrees < 0 ? -1 : 1;
        longitudeDegrees *= eastSign;
        double latitude1 = Degrees.Coarsened(from.LatitudeDegrees);
        double latitude2 = Degrees.Coarsened(to.LatitudeDegrees);
        double swapSign = Math.Abs(latitude1) < Math.Abs(latitude2) ? -1 : 1;
        if (swapSign < 0)
        {
            eastSign = -eastSign;
            (latitude1, latitude2) = (latitude2, latitude1);
        }

        double northSign = latitude1 < 0 ? 1 : -1;
        GeodesicInverse problem = new(latitude1 * northSign, latitude2 * northSign, longitudeDegrees);
        double distanceMetres = problem.Distance(longitudeDegrees, atPole: latitude1 * northSign == -90);
        if (distanceMetres < 1e-9)
        {
            // Nearer than a double can tell two places apart on the ground: the bearing would be noise.
            return default;
        }

        if (swapSign < 0)
        {
            (problem._sinAlpha1, problem._sinAlpha2) = (problem._sinAlpha2, problem._sinAlpha1);
            (problem._cosAlpha1, problem._cosAlpha2) = (problem._cosAlpha2, problem._cosAlpha1);
        }

        return new GeodesicSegment(
            distanceMetres,
            Degrees.Bearing(problem._sinAlpha1 * swapSign * eastSign, problem._cosAlpha1 * swapSign * northSign),
            Degrees.Bearing(problem._sinAlpha2 * swapSign * eastSign, problem._cosAlpha2 * swapSign * northSign));
    }

    private GeodesicInverse(double latitude1, double latitude2, double longitudeDegrees)
    {
        _lambda12 = longitudeDegrees / Degrees.PerRadian;
        (_sinLambda12, _cosLambda12) = Degrees.SinCos(longitudeDegrees);
        (_sinBeta1, _cosBeta1) = ReducedLatitude(latitude1);
        (_sinBeta2, _cosBeta2) = ReducedLatitude(latitude2);

        // Opposite or equal latitudes must stay so after rounding: later differences of squares rely on it.
        if (Math.Abs(latitude1) == Math.Abs(latitude2))
        {
            _cosBeta2 = _cosBeta1;
            _sinBeta2 = Math.CopySign(_sinBeta1, _sinBeta2);
        }

        _dn1 = Math.Sqrt(1 + (Wgs84.SecondEccentricitySquared * _sinBeta1 * _sinBeta1));
        _dn2 = Math.Sqrt(1 + (Wgs84.SecondEccentricitySquared * _sinBeta2 * _sinBeta2));
    }

    private double Distance(double longitudeDegrees, bool atPole)
    {
        if (atPole || _sinLambda12 == 0)
        {
            return AlongMeridian();
        }

        if (_sinBeta1 == 0 && longitudeDegrees <= 180 * F1)
        {
            (_sinAlpha1, _cosAlpha1, _sinAlpha2, _cosAlpha2) = (1, 0, 1, 0);
            return Wgs84.EquatorialRadiusMetres * _lambda12;
        }

        double shortArcRadius = Guess();
        if (shortArcRadius > 0)
        {
            return _sigma12 * Wgs84.PolarRadiusMetres * shortArcRadius;
        }

        FindAzimuth();
        return Lengths(out _) * Wgs84.PolarRadiusMetres;
    }

    private double AlongMeridian()
    {
        (_sinAlpha1, _cosAlpha1, _sinAlpha2, _cosAlpha2) = (_sinLambda12, _cosLambda12, 0, 1);
        (_sinSigma1, _cosSigma1) = Unit(_sinBeta1, _cosAlpha1 * _cosBeta1);
        (_sinSigma2, _cosSigma2) = (_sinBeta2, _cosBeta2);
        _sigma12 = Arc();
        _epsilon = GeodesicSeries.Epsilon(Wgs84.SecondEccentricitySquared);
        return Lengths(out _) * Wgs84.PolarRadiusMetres;
    }

    /// <summary>Newton's method on the longitude reached from a trial azimuth; a step outside the bracket becomes a bisection.</summary>
    private void FindAzimuth()
    {
        (double sinA, double cosA, double sinB, double cosB) = (Tiny, 1, Tiny, -1);
        bool isNear = false;
        for (int trial = 0; trial < 100; trial++)
        {
            double excess = LongitudeExcess(out double slope);
            if (!(Math.Abs(excess) >= (isNear ? 8 : 1) * Precision))
            {
                return;
            }

            if (excess > 0 && _cosAlpha1 / _sinAlpha1 > cosB / sinB)
            {
                (sinB, cosB) = (_sinAlpha1, _cosAlpha1);
            }
            else if (excess < 0 && _cosAlpha1 / _sinAlpha1 < cosA / sinA)
            {
                (sinA, cosA) = (_sinAlpha1, _cosAlpha1);
            }

            if (trial < 20 && slope > 0 && TakeNewtonStep(-excess / slope))
            {
                isNear = Math.Abs(excess) <= 16 * Precision;
                continue;
            }

            (_sinAlpha1, _cosAlpha1) = Unit((sinA + sinB) / 2, (cosA + cosB) / 2);
            isNear = Math.Abs(sinA - _sinAlpha1) + (cosA - _cosAlpha1) < AntipodalYLimit
                || Math.Abs(_sinAlpha1 - sinB) + (_cosAlpha1 - cosB) < AntipodalYLimit;
        }
    }

    private bool TakeNewtonStep(double stepRadians)
    {
        (double sin, double cos) = Math.SinCos(stepRadians);
        double sinNew = (_sinAlpha1 * cos) + (_cosAlpha1 * sin);
        if (!(sinNew > 0) || Math.Abs(stepRadians) >= Math.PI)
        {
            return false;
        }

        (_sinAlpha1, _cosAlpha1) = Unit(sinNew, (_cosAlpha1 * cos) - (_sinAlpha1 * sin));
        return true;
    }

    /// <summary>How far, in radians, the trial azimuth overshoots the wanted longitude; the slope is by the azimuth (equation 46).</summary>
    private double LongitudeExcess(out double slope)
    {
        if (_sinBeta1 == 0 && _cosAlpha1 == 0)
        {
            _cosAlpha1 = -Tiny;
        }

        double sinAlpha0 = _sinAlpha1 * _cosBeta1;
        double cosAlpha0 = double.Hypot(_cosAlpha1, _sinAlpha1 * _sinBeta1);
        double sinOmega1 = sinAlpha0 * _sinBeta1;
        double cosOmega1 = _cosAlpha1 * _cosBeta1;
        (_sinSigma1, _cosSigma1) = Unit(_sinBeta1, cosOmega1);

        // Near the equator the cosines round to one while the sines still differ: each test asks what its formula needs.
        _sinAlpha2 = _cosBeta2 == _cosBeta1 ? _sinAlpha1 : sinAlpha0 / _cosBeta2;
        _cosAlpha2 = _cosBeta2 == _cosBeta1 && Math.Abs(_sinBeta2) == -_sinBeta1
            ? Math.Abs(_cosAlpha1)
            : Math.Sqrt((cosOmega1 * cosOmega1) + BetaSquareDifference()) / _cosBeta2;
        double sinOmega2 = sinAlpha0 * _sinBeta2;
        double cosOmega2 = _cosAlpha2 * _cosBeta2;
        (_sinSigma2, _cosSigma2) = Unit(_sinBeta2, cosOmega2);
        _sigma12 = Arc();

        double sinOmega12 = Math.Max(0, (cosOmega1 * sinOmega2) - (sinOmega1 * cosOmega2));
        double cosOmega12 = (cosOmega1 * cosOmega2) + (sinOmega1 * sinOmega2);
        double eta = Math.Atan2(
            (sinOmega12 * _cosLambda12) - (cosOmega12 * _sinLambda12), (cosOmega12 * _cosLambda12) + (sinOmega12 * _sinLambda12));
        _epsilon = GeodesicSeries.Epsilon(cosAlpha0 * cosAlpha0 * Wgs84.SecondEccentricitySquared);
        Span<double> c3 = stackalloc double[GeodesicSeries.Terms];
        GeodesicSeries.C3(_epsilon, c3);
        double b3 = GeodesicSeries.SineSum(c3, _sinSigma2, _cosSigma2) - GeodesicSeries.SineSum(c3, _sinSigma1, _cosSigma1);
        double excess = eta - (Wgs84.Flattening * GeodesicSeries.A3(_epsilon) * sinAlpha0 * (_sigma12 + b3));

        if (_cosAlpha2 == 0)
        {
            slope = -2 * F1 * _dn1 / _sinBeta1;
        }
        else
        {
            _ = Lengths(out double reducedLength);
            slope = reducedLength * F1 / (_cosAlpha2 * _cosBeta2);
        }

        return excess;
    }

    /// <summary>cos²β2 - cos²β1, from whichever of sine and cosine is the smaller and so the more exact.</summary>
    private readonly double BetaSquareDifference() => _cosBeta1 < -_sinBeta1
        ? (_cosBeta2 - _cosBeta1) * (_cosBeta1 + _cosBeta2)
        : (_sinBeta1 - _sinBeta2) * (_sinBeta1 + _sinBeta2);

    private readonly double Arc() => Math.Atan2(
        Math.Max(0, (_cosSigma1 * _sinSigma2) - (_sinSigma1 * _cosSigma2)), (_cosSigma1 * _cosSigma2) + (_sinSigma1 * _sinSigma2));

    /// <summary>Distance over b (equation 7) and reduced length over b (equation 38) of the arc from σ1 to σ2.</summary>
    private readonly double Lengths(out double reducedLength)
    {
        Span<double> c = stackalloc double[GeodesicSeries.Terms];
        GeodesicSeries.C1(_epsilon, c);
        double a1 = GeodesicSeries.A1(_epsilon);
        double i1 = a1 * (_sigma12 + GeodesicSeries.SineSum(c, _sinSigma2, _cosSigma2) - GeodesicSeries.SineSum(c, _sinSigma1, _cosSigma1));
        GeodesicSeries.C2(_epsilon, c);
        double a2 = GeodesicSeries.A2(_epsilon);
        double i2 = a2 * (_sigma12 + GeodesicSeries.SineSum(c, _sinSigma2, _cosSigma2) - GeodesicSeries.SineSum(c, _sinSigma1, _cosSigma1));
        reducedLength = (_dn2 * _cosSigma1 * _sinSigma2) - (_dn1 * _sinSigma1 * _cosSigma2) - (_cosSigma1 * _cosSigma2 * (i1 - i2));
        return i1;
    }

    /// <summary>Sets a first azimuth. Returns 0, or for a line short enough to be done the radius of its sphere over b.</summary>
    private double Guess()
    {
        double sinBeta12 = (_sinBeta2 * _cosBeta1) - (_cosBeta2 * _sinBeta1);
        double cosBeta12 = (_cosBeta2 * _cosBeta1) + (_sinBeta2 * _sinBeta1);
        double sinBetaSum = (_sinBeta2 * _cosBeta1) + (_cosBeta2 * _sinBeta1);
        bool isShort = cosBeta12 >= 0 && sinBeta12 < 0.5 && _cosBeta2 * _lambda12 < 0.5;
        double meanRadius = 1;
        double sinOmega = _sinLambda12;
        double cosOmega = _cosLambda12;
        if (isShort)
        {
            double sinMean = _sinBeta1 + _sinBeta2;
            double cosMean = _cosBeta1 + _cosBeta2;
            double sinMeanSquared = sinMean * sinMean / ((sinMean * sinMean) + (cosMean * cosMean));
            meanRadius = Math.Sqrt(1 + (Wgs84.SecondEccentricitySquared * sinMeanSquared));
            (sinOmega, cosOmega) = Math.SinCos(_lambda12 / (F1 * meanRadius));
        }

        _sinAlpha1 = _cosBeta2 * sinOmega;
        _cosAlpha1 = cosOmega >= 0
            ? sinBeta12 + (_cosBeta2 * _sinBeta1 * sinOmega * sinOmega / (1 + cosOmega))
            : sinBetaSum - (_cosBeta2 * _sinBeta1 * sinOmega * sinOmega / (1 - cosOmega));
        double sinSigma = double.Hypot(_sinAlpha1, _cosAlpha1);
        double cosSigma = (_sinBeta1 * _sinBeta2) + (_cosBeta1 * _cosBeta2 * cosOmega);
        if (isShort && sinSigma < ShortArc)
        {
            double turn = cosOmega >= 0 ? sinOmega * sinOmega / (1 + cosOmega) : 1 - cosOmega;
            (_sinAlpha2, _cosAlpha2) = (_cosBeta1 * sinOmega, sinBeta12 - (_cosBeta1 * _sinBeta2 * turn));
            _sigma12 = Math.Atan2(sinSigma, cosSigma);
            return meanRadius;
        }

        if (cosSigma < 0 && sinSigma < 6 * Wgs84.ThirdFlattening * Math.PI * _cosBeta1 * _cosBeta1)
        {
            GuessNearAntipode(sinBetaSum);
        }

        (_sinAlpha1, _cosAlpha1) = _sinAlpha1 > 0 ? Unit(_sinAlpha1, _cosAlpha1) : (1, 0);
        return 0;
    }

    /// <summary>Section 5: near the antipode the lines' envelope is an astroid, and the azimuth is found on that.</summary>
    private void GuessNearAntipode(double sinBetaSum)
    {
        double epsilon = GeodesicSeries.Epsilon(_sinBeta1 * _sinBeta1 * Wgs84.SecondEccentricitySquared);
        double lambdaScale = Wgs84.Flattening * _cosBeta1 * GeodesicSeries.A3(epsilon) * Math.PI;
        double x = Math.Atan2(-_sinLambda12, -_cosLambda12) / lambdaScale;
        double y = sinBetaSum / (lambdaScale * _cosBeta1);
        if (y > -AntipodalYLimit && x > -1 - AntipodalXLimit)
        {
            _sinAlpha1 = Math.Min(1, -x);
            _cosAlpha1 = -Math.Sqrt(1 - (_sinAlpha1 * _sinAlpha1));
            return;
        }

        double k = Astroid.Root(x, y);
        (double sin, double cos) = Math.SinCos(lambdaScale * -x * k / (1 + k));
        _sinAlpha1 = _cosBeta2 * sin;
        _cosAlpha1 = sinBetaSum - (_cosBeta2 * _sinBeta1 * sin * sin / (1 + cos));
    }
}
