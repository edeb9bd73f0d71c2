using System.Runtime.CompilerServices;
using static Mastwright.Propagation.Area.FastMath;
using static Mastwright.Propagation.Area.SweepBatch;

namespace Mastwright.Propagation.Area;

/// <summary>The diffraction loss of many cells at one effective radius, in single precision and without branches.</summary>
/// <remarks>Source: Rec. ITU-R P.1812 section 4.3 and Rec. ITU-R P.526 section 3.2, as <see cref="DiffractionTerms"/> and <see cref="SweepSmoothEdge"/>.</remarks>
/// <typeparam name="T">The width.</typeparam>
internal sealed class VectorDiffraction<T>
    where T : struct, ILanes<T>
{
    private readonly bool hasZones;
    private readonly float step;
    private readonly float wavelength;
    private readonly float cubeRoot;
    private readonly float land;
    private readonly float sea;

    internal VectorDiffraction(in SweepTerms t, bool hasZones)
    {
        this.hasZones = hasZones;
        step = (float)(t.Step / 1000);
        wavelength = (float)P1812.WavelengthMetres(t.Input.FrequencyHz);
        cubeRoot = (float)Math.Cbrt(t.Frequency);
        land = (float)SurfaceWave.Admittance(t.Frequency, t.Input.Polarisation, 22, 0.003);
        sea = (float)SurfaceWave.Admittance(t.Frequency, t.Input.Polarisation, 80, 5);
    }

    /// <summary>Leaves the loss of the edge in one column and of the round Earth in another.</summary>
    internal void Solve(ref float values, int count, Column edge, Column loss, float radius)
    {
        Clearance(ref values, count, radius);
        SmoothEdge(ref values, count, radius);
        FirstTerm(ref values, count, land, isSea: false);
        if (hasZones)
        {
            FirstTerm(ref values, count, sea, isSea: true);
        }

        Sum(ref values, count, edge, loss);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Get(ref float values, Column column, int n) => T.Load(ref values, ((int)column * Size) + n);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Put(T value, ref float values, Column column, int n) => T.Store(value, ref values, ((int)column * Size) + n);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T All(float value) => T.All(value);

    /// <summary>Place of the least clearance over the smooth Earth, and how much of the grazing loss counts there: (22) to (27).</summary>
    private void Clearance(ref float values, int count, float radius)
    {
        for (int n = 0; n < count; n += T.Count)
        {
            T one = All(1);
            T d = Get(ref values, Column.Length, n);
            T h1 = Get(ref values, Column.OverSmoothStation, n);
            T h2 = Get(ref values, Column.OverSmoothCell, n);
            T both = h1 + h2;
            T m = d * d * All(250 / radius) / both;
            T moreM = m + one;
            T third = m * All(3);
            T argument = (h1 - h2) * All(1.5f) / (both * moreM) * T.Sqrt(third / moreM);
            T b = All(2) * T.Sqrt(moreM / third) * SineOfThird(T.Max(T.Min(argument, one), All(-1)));
            b = T.Max(T.Min(b, one), All(-1));
            T d1 = d * All(0.5f) * (one + b);
            T d2 = d * All(0.5f) * (one - b);
            T ratio = d / (T.Sqrt(h1) + T.Sqrt(h2));
            T grazing = All(500) * ratio * ratio;
            T clearance = (((h1 - (d1 * d1 * All(500 / radius))) * d2) + ((h2 - (d2 * d2 * All(500 / radius))) * d1)) / d;
            T needed = All(17.456f) * T.Sqrt(d1 * d2 * All(wavelength) / d);
            T share = one - T.Min(T.Max(clearance / T.Max(needed, All(1e-6f)), All(0)), one);

            // At or beyond the horizon the true radius is the smaller: its loss stands whole.
            Put(d1, ref values, Column.LeastClearance, n);
            Put(T.Min(grazing, All(radius)), ref values, Column.SphereRadius, n);
            Put(T.Select(T.Less(grazing, All(radius)), share, one), ref values, Column.SphereShare, n);
        }
    }

    /// <summary>Bullington's edge over the smooth Earth.</summary>
    private void SmoothEdge(ref float values, int count, float radius)
    {
        for (int n = 0; n < count; n += T.Count)
        {
            T d = Get(ref values, Column.Length, n);
            T h1 = Get(ref values, Column.OverSmoothStation, n);
            T h2 = Get(ref values, Column.OverSmoothCell, n);
            T c = All(500 / radius);
            T last = Get(ref values, Column.RadialEnd, n);
            Around(d, last, T.Sqrt(h1 * All(radius / 500)), out T near, out T far);
            T above = T.Max(SlopeOverLine(d, near, h1, h2, c), SlopeOverLine(d, far, h1, h2, c));
            Around(d, last, d - T.Sqrt(h2 * All(radius / 500)), out near, out far);
            T back = T.Max(SlopeOverLine(d, d - near, h2, h1, c), SlopeOverLine(d, d - far, h2, h1, c));
            Around(d, last, Get(ref values, Column.LeastClearance, n), out near, out far);
            T clear = T.Max(ClearanceKey(d, near, h1, h2, c), ClearanceKey(d, far, h1, h2, c));
            T edge = T.Select(T.Less(above, All(0)), clear, above * T.Max(back, All(0)));
            Put(Bullington(edge * d * All(2e-3f / wavelength), d), ref values, Column.SmoothEdge, n);
        }
    }

    /// <summary>Slope from one end to the smooth Earth at x, above that of the line to the other, m per km.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T SlopeOverLine(T d, T x, T h, T other, T c) => ((d - x) * (c - (h / (x * d)))) - (other / d);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T ClearanceKey(T d, T x, T h1, T h2, T c)
    {
        T rest = d - x;
        T product = x * rest;
        T above = (c * product) - (((h1 * rest) + (h2 * x)) / d);
        return above * T.Abs(above) / product;
    }

    /// <summary>The points of the path before and behind a place: on the radial, or among the cell's own, which count from the cell.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Around(T d, T last, T place, out T near, out T far)
    {
        T s = All(step);

        // Adding and taking away 2^23 rounds to a whole number; of a place just on a point either pair will do.
        T magic = All(8_388_608f);
        T inverse = All(1 / step);
        T behind = T.Max(((T.Max(T.Min(place, last), All(0)) * inverse) + All(0.5f) + magic) - magic, All(1));
        T before = T.Min(T.Max(((T.Max(d - T.Max(place, last), All(0)) * inverse) + All(-0.5f) + magic) - magic, All(1)), All(OwnPoints.Count));
        T isOwn = T.Less(last, place);
        far = T.Select(isOwn, d - (before * s), T.Min(behind * s, last));
        near = T.Select(isOwn, T.Max(far - s, T.Min(last, far)), T.Max(far - s, s));
    }

    /// <summary>(15) and (21), given v·|v|.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Bullington(T signedSquare, T d)
    {
        T v = T.WithSign(T.Sqrt(T.Abs(signedSquare)), signedSquare);
        T shifted = v - All(0.1f);
        T edge = All(6.9f) + (Log2(T.Max(T.Sqrt((shifted * shifted) + All(1)) + shifted, All(1e-3f))) * All(2 * Db));
        edge = T.Select(T.Less(All(-0.78f), v), edge, All(0));
        return edge + ((All(1) - Exp2(edge * All(-LogOfE / 6))) * (All(10) + (d * All(0.02f))));
    }

    /// <summary>The first term of the residue series over land, or over sea and mixed with that over land: (28) to (36).</summary>
    private void FirstTerm(ref float values, int count, float admittance, bool isSea)
    {
        for (int n = 0; n < count; n += T.Count)
        {
            T one = All(1);
            T logA = Log2(Get(ref values, Column.SphereRadius, n));
            T inverseRoot = Exp2(logA * All(-1f / 3));
            T k = inverseRoot * All(admittance);
            T k2 = k * k;
            T beta = (one + (k2 * (All(1.6f) + (k2 * All(0.67f))))) / (one + (k2 * (All(4.5f) + (k2 * All(1.53f)))));
            T x = beta * inverseRoot * inverseRoot * Get(ref values, Column.Length, n) * All(21.88f * cubeRoot);
            T y = beta * beta * inverseRoot * All(0.9575f * cubeRoot * cubeRoot);
            T logX = Log2(x);
            T loss = T.Select(
                T.Less(x, All(1.6f)),
                (logX * All(2 * Db)) + (Exp2(logX * All(1.425f)) * All(5.6488f)),
                (x * All(17.6f)) - All(11) - (logX * All(Db)));
            T least = All(2 + (2 * Db * MathF.Log2(admittance))) - (logA * All(2 * Db / 3));
            loss -= T.Max(HeightGain(y * Get(ref values, Column.OverSmoothStation, n)), least);
            loss -= T.Max(HeightGain(y * Get(ref values, Column.OverSmoothCell, n)), least);
            if (isSea)
            {
                T overLand = Get(ref values, Column.FirstTerm, n);
                loss = overLand + ((loss - overLand) * Get(ref values, Column.SeaFraction, n));
            }

            Put(loss, ref values, Column.FirstTerm, n);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T HeightGain(T b)
    {
        T isLow = T.Less(b, All(2));
        T past = T.Max(b - All(1.1f), All(0));
        T log = Log2(T.Max(T.Select(isLow, b + (b * b * b * All(0.1f)), past), All(1e-30f)));
        return T.Select(isLow, log * All(2 * Db), (T.Sqrt(past) * All(17.6f)) - (log * All(Db / 2)) - All(8));
    }

    /// <summary>(39).</summary>
    private static void Sum(ref float values, int count, Column edge, Column loss)
    {
        for (int n = 0; n < count; n += T.Count)
        {
            T ridge = Bullington(Get(ref values, edge, n), Get(ref values, Column.Length, n));
            T sphere = T.Max(Get(ref values, Column.FirstTerm, n), All(0)) * Get(ref values, Column.SphereShare, n);
            Put(ridge + T.Max(sphere - Get(ref values, Column.SmoothEdge, n), All(0)), ref values, loss, n);
        }
    }
}
