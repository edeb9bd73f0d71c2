using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using static Mastwright.Propagation.Area.FastMath;
using static Mastwright.Propagation.Area.SweepBatch;

namespace Mastwright.Propagation.Area;

/// <summary><see cref="SweepClosedForm"/> for many cells at once, in single precision and without branches.</summary>
/// <remarks>
/// Source: Rec. ITU-R P.1812; equations numbered as there. Every power is exp2(c·log2 x), kept as a logarithm as long as it can be. Against
/// the double form 99 % of cells agree within 1e-3 dB (measured in VectorClosedFormTests); the rest sit on steps of the Recommendation.
/// </remarks>
/// <typeparam name="T">The width.</typeparam>
internal sealed class VectorClosedForm<T>
    where T : struct, ILanes<T>
{
    /// <summary>Decibels of a power ratio of two: 10·log10 2.</summary>
    private const float Db = 3.0102999566f;
    private const float LogOfE = 1.4426950409f;
    private const float LogOf10 = 3.3219280949f;

    private readonly bool needsDucting;
    private readonly bool hasZones;
    private readonly float step;
    private readonly float places;
    private readonly float median;
    private readonly float frequency;
    private readonly float freeSpace;
    private readonly float scatter;
    private readonly float coupling;
    private readonly float rootOfFrequency;
    private readonly float cubeRoot;
    private readonly float gamma;
    private readonly float logOfTime;
    private readonly float timeDeviations;
    private readonly float logOfShare;
    private readonly float wavelength;
    private readonly float stationAtSea;
    private readonly float land;
    private readonly float sea;

    internal VectorClosedForm(in SweepTerms t, bool hasZones)
    {
        this.hasZones = hasZones;
        needsDucting = t.NeedsDucting;
        step = (float)(t.Step / 1000);
        places = (float)t.PlacesDb;
        median = (float)(t.MedianRadius / 1000);
        double f = t.Frequency;
        frequency = (float)f;
        freeSpace = (float)(92.4 + (20 * t.LogFrequency));
        scatter = (float)t.ScatterDb;
        coupling = (float)(102.45 + (20 * t.LogFrequency) + (f < 0.5 ? 45.375 - (137 * f) + (92.5 * f * f) : 0) - 12); // (47), (47a), (53)
        rootOfFrequency = (float)Math.Sqrt(f);
        cubeRoot = (float)Math.Cbrt(f);
        gamma = (float)(5e-5 * t.MedianRadius / 1000 * Math.Cbrt(f)); // (51)
        logOfTime = (float)Math.Log2(t.Input.TimePercent);
        timeDeviations = (float)t.TimeDeviations;
        logOfShare = (float)Math.Log10(t.Input.TimePercent / 50);
        wavelength = (float)P1812.WavelengthMetres(t.Input.FrequencyHz);
        stationAtSea = (float)(-6 / (1 + Math.Exp(-0.14 * (50 - t.StationAntenna)))); // (49), without its distance
        land = (float)SurfaceWave.Admittance(f, t.Input.Polarisation, 22, 0.003);
        sea = (float)SurfaceWave.Admittance(f, t.Input.Polarisation, 80, 5);
    }

    /// <summary>Solves all cells of a batch.</summary>
    internal void Solve(SweepBatch batch)
    {
        batch.Pad(T.Count);
        ref float values = ref MemoryMarshal.GetArrayDataReference(batch.Values);
        for (int n = 0; n < batch.Count; n += T.Count)
        {
            Solve(ref values, n);
        }
    }

    private static T Get(ref float values, Column column, int n) => T.Load(ref values, ((int)column * Size) + n);

    private static T All(float value) => T.All(value);

    private void Solve(ref float values, int n)
    {
        T one = All(1);
        T zero = All(0);
        T d = Get(ref values, Column.Length, n);
        T logD = Log2(d);
        T thetaT = Atan(Get(ref values, Column.StationSlope, n));
        T.Store(thetaT, ref values, ((int)Column.Elevation * Size) + n);
        thetaT *= All(1000);
        T thetaR = Atan(Get(ref values, Column.CellSlope, n)) * All(1000);
        T dlt = Get(ref values, Column.StationHorizon, n);
        T dlr = Get(ref values, Column.CellHorizon, n);
        T omega = hasZones ? Get(ref values, Column.SeaFraction, n) : zero;
        T theta = T.MultiplyAdd(d, All(1000 / median), thetaT + thetaR); // (82)

        // Ducting time: (2) to (5).
        T inland = hasZones ? Get(ref values, Column.LongestInland, n) : d;
        T land = hasZones ? Get(ref values, Column.LongestLand, n) : d;
        T logInland = hasZones ? Log2(T.Max(inland, All(1e-6f))) : logD;
        T tau = one - Exp2(Exp2(logInland * All(2.41f)) * All(-4.12e-4f * LogOfE));
        T sum = Exp2(land * All(-LogOf10) / (All(16) - (tau * All(6.6f)))) + Exp2((tau * All(-5 * 0.354f * LogOf10)) + All(-5 * 0.496f * LogOf10));
        T logMu = T.Min(Log2(sum) * All(0.2f), zero);
        T phi = Get(ref values, Column.Latitude, n);
        T logBeta0 = T.Select(
            T.Less(All(70), phi),
            (logMu * All(1.3f)) + All(2.0600474f), // log2 4.17
            (phi * All(-0.015f * LogOf10)) + All(1.67f * LogOf10) + (logMu * ((phi * All(0.0176f)) + All(0.065f))));

        // Line of sight: (8) to (11).
        T lbfs = All(freeSpace) + (Log2(Get(ref values, Column.SlantSquare, n)) * All(Db));
        T horizons = dlt + dlr;
        T lb0p = lbfs;
        T multipath = zero;
        if (needsDucting)
        {
            multipath = All(2.6f) * (one - Exp2(horizons * All(-0.1f * LogOfE)));
            lb0p += multipath * All(logOfShare);
        }

        // Diffraction.
        T ld50 = Diffraction(ref values, n, Column.MedianEdge, d, logD, omega, median);
        T ldp = ld50;
        T weight = zero;
        if (needsDucting)
        {
            T ldb = Diffraction(ref values, n, Column.DuctingEdge, d, logD, omega, (float)(EffectiveEarth.DuctingFactor * EffectiveEarth.MeanRadiusMetres / 1000));
            weight = T.Select(T.Less(All(logOfTime), logBeta0), one, T.Min(All(timeDeviations) / Deviations(logBeta0), one)); // (40)
            ldp += (ldb - ld50) * weight; // (41)
        }

        T lbd50 = lbfs + ld50;
        T lbd = lb0p + ldp;
        T lbs = All(scatter) + (logD * All(2 * Db)) + (theta * All(0.573f)); // (44)

        // Ducting: (46) to (56).
        T roots = T.Sqrt(Get(ref values, Column.EffectiveStation, n)) + T.Sqrt(Get(ref values, Column.EffectiveCell, n));
        T alpha = T.Max(All(-0.6f) - (Exp2(logD * All(3.1f)) * tau * All(3.5e-9f)), All(-3.4f));
        T logBeta = logBeta0 + T.Min(zero, alpha * ((Log2(d / roots) * All(2)) + All(MathF.Log2(500 / median))));
        T rough = T.Max(Get(ref values, Column.Roughness, n) - All(10), zero);
        logBeta -= rough * All(4.6e-5f * LogOfE) * (All(43) + (T.Min(d - horizons, All(40)) * All(6)));
        T log10Beta = logBeta * All(1 / LogOf10);
        T exponent = All(1.076f) * Exp2(
            (Log2(All(2.0058f) - log10Beta) * All(-1.012f))
            - (Exp2(logD * All(1.13f)) * All(1e-6f * LogOfE) * (All(9.51f) + (log10Beta * ((log10Beta * All(0.198f)) - All(4.8f))))));
        T logRatio = All(logOfTime) - logBeta;
        T lba = All(coupling)
            + (Log2(horizons) * All(2 * Db))
            + Shielding(dlt, thetaT) + Shielding(dlr, thetaR)
            + (All(gamma) * (T.MultiplyAdd(d, All(1000 / median), T.Min(thetaT, dlt * All(0.1f))) + T.Min(thetaR, dlr * All(0.1f))))
            + ((All(1.2f) + (d * All(3.7e-3f))) * logRatio * All(1 / LogOf10))
            + (All(12) * Exp2(exponent * logRatio));
        if (hasZones)
        {
            T antenna = Get(ref values, Column.CellAntenna, n);
            T cellAtSea = All(-6) / (one + Exp2((All(50) - antenna) * All(-0.14f * LogOfE)));
            lba += OverSea(Get(ref values, Column.StationToCoast, n), dlt, omega, All(stationAtSea))
                + OverSea(Get(ref values, Column.CellToCoast, n), dlr, omega, cellAtSea);
        }

        // Combination: (57) to (69).
        T fj = one / (one + Exp2((theta - All(0.3f)) * All(16 * LogOfE)));
        T fk = one / (one + Exp2((d - All(20)) * All(0.15f * LogOfE)));
        T lminb0p = lbd50;
        T overLand = (one - omega) * ldp;
        if (needsDucting)
        {
            T lb0b = lbfs + (multipath * ((logBeta0 * All(1 / LogOf10)) - All(1.69897f))); // log10 50
            lminb0p = T.Select(T.Less(All(logOfTime), logBeta0), lb0p + overLand, lbd50 + ((lb0b + overLand - lbd50) * weight)); // (59)
        }

        T lminbap = SoftMaximum(lba, lb0p, 2.5f); // (60)
        T lbda = T.Select(T.Less(lbd, lminbap), lbd, lminbap + ((lbd - lminbap) * fk)); // (61)
        T lbam = lbda + ((lminb0p - lbda) * fj); // (62)
        T lbc = zero - SoftMaximum(zero - lbs, zero - lbam, 2.17147241f); // (63)
        T location = hasZones ? Get(ref values, Column.Places, n) : All(places);
        T.Store(T.Max(lb0p, lbc + location), ref values, ((int)Column.Loss * Size) + n);
    }

    private T Diffraction(ref float values, int n, Column edge, T d, T logD, T omega, float radius)
    {
        T h1 = Get(ref values, Column.OverSmoothStation, n);
        T h2 = Get(ref values, Column.OverSmoothCell, n);
        T ridge = Bullington(Get(ref values, edge, n), d);
        T zero = All(0);
        T one = All(1);

        // The place of least clearance, P.526 section 3.2.
        T both = h1 + h2;
        T c = (h1 - h2) / both;
        T m = d * d * All(250 / radius) / both;
        T moreM = m + one;
        T third = m * All(3);
        T argument = T.Min(c * All(1.5f) / moreM * T.Sqrt(third / moreM), one);
        T b = All(2) * T.Sqrt(moreM / third) * SineOfThird(T.Max(argument, All(-1)));
        b = T.Max(T.Min(b, one), All(-1));
        T d1 = d * All(0.5f) * (one + b);
        T d2 = d * All(0.5f) * (one - b);

        // The round Earth: P.1812 (22) to (27).
        T roots = T.Sqrt(h1) + T.Sqrt(h2);
        T ratio = d / roots;
        T grazing = All(500) * ratio * ratio;
        T clearance = (((h1 - (d1 * d1 * All(500 / radius))) * d2) + ((h2 - (d2 * d2 * All(500 / radius))) * d1)) / d;
        T needed = All(17.456f) * T.Sqrt(d1 * d2 * All(wavelength) / d);
        T share = one - T.Min(T.Max(clearance / T.Max(needed, All(1e-6f)), zero), one);
        T beyond = T.Less(grazing, All(radius));

        // At or beyond the horizon the median radius is the smaller: its loss stands whole.
        T logA = Log2(T.Min(grazing, All(radius)));
        T sphere = FirstTerm(d, logD, h1, h2, logA, omega);
        sphere = T.Max(sphere, zero) * T.Select(beyond, share, one);

        T smooth = Smooth(d, h1, h2, d1, radius);
        return ridge + T.Max(sphere - smooth, zero);
    }

    /// <summary>Bullington's edge over the smooth Earth: <see cref="SweepSmoothEdge"/>.</summary>
    private T Smooth(T d, T h1, T h2, T d1, float radius)
    {
        T c = All(500 / radius);
        T zero = All(0);
        T last = d - All(step);
        Around(last, T.Sqrt(h1 * All(radius / 500)), out T near, out T far);
        T above = T.Max(SlopeOverLine(d, near, h1, h2, c), SlopeOverLine(d, far, h1, h2, c));
        Around(last, d - T.Sqrt(h2 * All(radius / 500)), out near, out far);
        T back = T.Max(SlopeOverLine(d, d - near, h2, h1, c), SlopeOverLine(d, d - far, h2, h1, c));
        Around(last, d1, out near, out far);
        T clear = T.Max(ClearanceKey(d, near, h1, h2, c), ClearanceKey(d, far, h1, h2, c));
        T edge = T.Select(T.Less(above, zero), clear, above * T.Max(back, zero));
        return Bullington(edge * d * All(2e-3f / wavelength), d);
    }

    /// <summary>Slope from one end to the smooth Earth at x, above that of the line to the other, m per km.</summary>
    private static T SlopeOverLine(T d, T x, T h, T other, T c) => ((d - x) * (c - (h / (x * d)))) - (other / d);

    private static T ClearanceKey(T d, T x, T h1, T h2, T c)
    {
        T rest = d - x;
        T product = x * rest;
        T above = (c * product) - (((h1 * rest) + (h2 * x)) / d);
        return above * T.Abs(above) / product;
    }

    private void Around(T last, T place, out T near, out T far)
    {
        T s = All(step);
        T inverse = All(1 / step);

        // Whole steps: adding and taking away 2^23 rounds down once half is taken off. The points just there may swap sides.
        T magic = All(8_388_608f);
        T behind = T.Max(((T.Max(T.Min(place, last), All(0)) * inverse) + All(0.5f) + magic) - magic, All(1));
        far = T.Min(behind * s, last);
        near = T.Max(T.Min((behind - All(1)) * s, last), T.Min(s, last));
    }

    private static T Bullington(T signedSquare, T d)
    {
        T v = T.WithSign(T.Sqrt(T.Abs(signedSquare)), signedSquare);
        T shifted = v - All(0.1f);
        T edge = All(6.9f) + (Log2(T.Max(T.Sqrt((shifted * shifted) + All(1)) + shifted, All(1e-3f))) * All(2 * Db));
        edge = T.Select(T.Less(All(-0.78f), v), edge, All(0));
        return edge + ((All(1) - Exp2(edge * All(-LogOfE / 6))) * (All(10) + (d * All(0.02f))));
    }

    private T FirstTerm(T d, T logD, T h1, T h2, T logA, T omega)
    {
        T loss = Surface(d, logD, h1, h2, logA, land);
        return hasZones ? (loss * (All(1) - omega)) + (Surface(d, logD, h1, h2, logA, sea) * omega) : loss;
    }

    /// <summary>P.1812 (29) to (36).</summary>
    private T Surface(T d, T logD, T h1, T h2, T logA, float admittance)
    {
        T one = All(1);
        T inverseRoot = Exp2(logA * All(-1f / 3));
        T k = inverseRoot * All(admittance);
        T k2 = k * k;
        T beta = (one + (k2 * (All(1.6f) + (k2 * All(0.67f))))) / (one + (k2 * (All(4.5f) + (k2 * All(1.53f)))));
        T x = beta * inverseRoot * inverseRoot * d * All(21.88f * cubeRoot);
        T y = beta * inverseRoot * All(0.9575f * cubeRoot * cubeRoot);
        T logX = Log2(x);
        T distance = T.Select(
            T.Less(x, All(1.6f)),
            (logX * All(-2 * Db)) - (Exp2(logX * All(1.425f)) * All(5.6488f)),
            All(11) + (logX * All(Db)) - (x * All(17.6f)));
        T least = All(2 + (2 * Db * MathF.Log2(admittance))) - (logA * All(2 * Db / 3));
        T gains = T.Max(HeightGain(beta * y * h1), least) + T.Max(HeightGain(beta * y * h2), least);
        return All(0) - distance - gains;
    }

    private static T HeightGain(T b)
    {
        T isLow = T.Less(b, All(2));
        T past = T.Max(b - All(1.1f), All(0));
        T log = Log2(T.Max(T.Select(isLow, b + (b * b * b * All(0.1f)), past), All(1e-30f)));
        return T.Select(isLow, log * All(2 * Db), (T.Sqrt(past) * All(17.6f)) - (log * All(Db / 2)) - All(8));
    }

    /// <summary>P.1812 (48).</summary>
    private T Shielding(T horizon, T angle)
    {
        T excess = T.Max(angle - (horizon * All(0.1f)), All(0));
        T root = T.Sqrt(horizon) * All(0.361f * rootOfFrequency);
        return (Log2(All(1) + (excess * root)) * All(2 * Db)) + (excess * All(0.264f * cubeRoot));
    }

    /// <summary>P.1812 (49).</summary>
    private static T OverSea(T toCoast, T horizon, T omega, T gain)
    {
        T loss = gain * Exp2(toCoast * toCoast * All(-0.25f * LogOfE));
        loss = T.Select(T.Less(horizon, toCoast), All(0), loss);
        loss = T.Select(T.Less(All(5), toCoast), All(0), loss);
        return T.Select(T.Less(omega, All(0.75f)), All(0), loss);
    }

    /// <summary>The Recommendation's inverse normal at β0, given its logarithm in percent.</summary>
    private static T Deviations(T logPercent)
    {
        T log = logPercent - All(6.6438562f); // log2 100
        T t = T.Sqrt(T.Max(log * All(-2 / LogOfE), All(1e-6f)));
        return t - (((((t * All(0.010328f)) + All(0.802853f)) * t) + All(2.515516698f))
            / ((((((t * All(0.001308f)) + All(0.189269f)) * t) + All(1.432788f)) * t) + All(1)));
    }

    private static T SoftMaximum(T a, T b, float scale)
    {
        T apart = T.Abs(a - b) * All(-LogOfE / scale);
        return T.Max(a, b) + (Log2(All(1) + Exp2(apart)) * All(scale / LogOfE));
    }
}
