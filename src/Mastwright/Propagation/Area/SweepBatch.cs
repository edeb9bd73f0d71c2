using System.Runtime.Intrinsics;

namespace Mastwright.Propagation.Area;

/// <summary>Paths of many cells as columns of single-precision numbers, filled one by one and solved together.</summary>
/// <remarks>
/// What cancels is already taken apart in double precision: Bullington's v² is a product of differences, not a difference of numbers. Kilometres
/// where the Recommendation has them.
/// </remarks>
internal sealed class SweepBatch
{
    /// <summary>Cells solved together: all columns stay in the nearest cache.</summary>
    internal const int Size = 256;

    private readonly SweepTerms t;
    private readonly double edgeScale;
    private readonly int[] cells = new int[Size];
    private readonly SweepMarks[] marks = new SweepMarks[Size];

    internal SweepBatch(in SweepTerms terms, bool hasZones)
    {
        t = terms;
        HasZones = hasZones;
        edgeScale = 2 / P1812.WavelengthMetres(terms.Input.FrequencyHz);
    }

    /// <summary>The columns.</summary>
    internal enum Column
    {
        Length,
        RadialEnd,
        SlantSquare,
        MedianEdge,
        DuctingEdge,
        OverSmoothStation,
        OverSmoothCell,
        EffectiveStation,
        EffectiveCell,
        Roughness,
        StationSlope,
        CellSlope,
        StationHorizon,
        CellHorizon,
        Latitude,
        SeaFraction,
        LongestLand,
        LongestInland,
        StationToCoast,
        CellToCoast,
        CellAntenna,
        Places,
        Loss,
        Elevation,

        // What the steps of the closed form hand to one another.
        LogLength,
        StationAngle,
        CellAngle,
        Tau,
        LogBeta0,
        LogBeta,
        LeastClearance,
        SphereRadius,
        SphereShare,
        FirstTerm,
        SmoothEdge,
        MedianLoss,
        DuctingLoss,
        Ducted,
        ColumnCount,
    }

    internal bool HasZones { get; }

    internal int Count { get; private set; }

    /// <summary>Whether another eight cells may not find room.</summary>
    internal bool IsFull => Count > Size - EightLanes.Count;

    /// <summary>All columns, one after another.</summary>
    internal float[] Values { get; } = new float[(int)Column.ColumnCount * Size];

    /// <summary>Adds the cells of a group.</summary>
    internal void Add(SweepGroup group)
    {
        int n = Count;
        Count += group.Count;
        ulong inSight = group.IsLineOfSight.ExtractMostSignificantBits();
        for (int lane = 0; lane < group.Count; lane++)
        {
            cells[n + lane] = group.IndexOf(lane);
            marks[n + lane] = group.IsMissing(lane) ? SweepMarks.GroundMissing | (group.MarksOf(lane, 0)) : group.MarksOf(lane, inSight);
        }

        ref float v = ref Values[n];
        Vector512<double> d = group.Length * 1e-3;
        Vector512<double> fall = (Vector512.Create(t.StationAntenna) - group.Antenna) * 1e-3;
        Vector512<double> bend = group.Length * t.MedianFall;
        Set(ref v, Column.Length, d);
        Set(ref v, Column.RadialEnd, group.RadialEnd * 1e-3);
        Set(ref v, Column.SlantSquare, (d * d) + (fall * fall));
        Set(ref v, Column.MedianEdge, SignedSquare(group, group.Median));
        if (t.NeedsDucting)
        {
            Set(ref v, Column.DuctingEdge, SignedSquare(group, group.Ducting));
        }

        Set(ref v, Column.OverSmoothStation, group.OverSmoothStation);
        Set(ref v, Column.OverSmoothCell, group.OverSmoothCell);
        Set(ref v, Column.EffectiveStation, group.EffectiveStation);
        Set(ref v, Column.EffectiveCell, group.EffectiveCell);
        Set(ref v, Column.Roughness, group.Roughness);
        Set(ref v, Column.StationSlope, Vector512.ConditionalSelect(group.IsLineOfSight, group.Line - bend, group.HorizonFromStation));
        Set(ref v, Column.CellSlope, Vector512.ConditionalSelect(group.IsLineOfSight, -group.Line - bend, group.HorizonFromCell));
        Set(ref v, Column.StationHorizon, group.StationHorizonMetres * 1e-3);
        Set(ref v, Column.CellHorizon, group.CellHorizonMetres * 1e-3);
        Set(ref v, Column.Latitude, Vector512.Abs(group.Latitude));
        if (HasZones)
        {
            Set(ref v, Column.StationToCoast, group.StationToCoastMetres.All * 1e-3);
            Set(ref v, Column.CellToCoast, group.CellToCoastMetres.All * 1e-3);
            Set(ref v, Column.CellAntenna, group.Antenna);
            for (int lane = 0; lane < group.Count; lane++)
            {
                ref readonly RadioClimate climate = ref group.ClimateOf(lane);
                Ground.Zone receiver = t.Input.StationReceives ? t.StationZone : group.ZoneOf(lane);
                Set(n + lane, Column.SeaFraction, climate.SeaFraction);
                Set(n + lane, Column.LongestLand, climate.LongestLandMetres * 1e-3);
                Set(n + lane, Column.LongestInland, climate.LongestInlandMetres * 1e-3);
                Set(n + lane, Column.Places, receiver == Ground.Zone.Sea ? 0 : t.PlacesDb);
            }
        }
    }

    /// <summary>Fills up to a whole number of vectors by repeating the last cell.</summary>
    internal void Pad(int width)
    {
        for (int n = Count; n % width != 0; n++)
        {
            for (int column = 0; column < (int)Column.Loss; column++)
            {
                Values[(column * Size) + n] = Values[(column * Size) + Count - 1];
            }
        }
    }

    /// <summary>Writes what was solved into the map and empties the batch.</summary>
    internal void Write(SweepResult result)
    {
        const float degrees = (float)(180 / Math.PI);
        bool isMarked = result.MarkBytes.Length > 0;
        ReadOnlySpan<float> losses = Values.AsSpan((int)Column.Loss * Size, Count);
        ReadOnlySpan<float> elevations = Values.AsSpan((int)Column.Elevation * Size, Count);
        for (int n = 0; n < losses.Length; n++)
        {
            int cell = cells[n];
            if ((marks[n] & SweepMarks.GroundMissing) != SweepMarks.None)
            {
                AreaSweep.StoreMissing(result, cell, marks[n]);
                continue;
            }

            result.Losses[cell] = losses[n];
            result.Elevations[cell] = elevations[n] * degrees;
            if (isMarked)
            {
                result.MarkBytes[cell] = (byte)marks[n];
            }
        }

        Count = 0;
    }

    /// <summary>v·|v| of Bullington's edge: P.1812 (16) to (20).</summary>
    /// <remarks>In the edge's own v the distances cancel: (Stim − Str)²·d·db/(d − db) is (Stim − Str)(Srim + Str)·d.</remarks>
    private Vector512<double> SignedSquare(SweepGroup group, in BullingtonLanes reading)
    {
        Vector512<double> above = reading.FromStation - group.Line;
        Vector512<double> back = Vector512.MaxNative(Vector512<double>.Zero, reading.FromCell + group.Line);
        return group.Length * edgeScale * Vector512.ConditionalSelect(Vector512.LessThan(above, Vector512<double>.Zero), reading.ClearanceKey, above * back);
    }

    private static void Set(ref float first, Column column, Vector512<double> values) =>
        Vector256.Narrow(values.GetLower(), values.GetUpper()).StoreUnsafe(ref first, (nuint)((int)column * Size));

    private void Set(int n, Column column, double value) => Values[((int)column * Size) + n] = (float)value;
}
