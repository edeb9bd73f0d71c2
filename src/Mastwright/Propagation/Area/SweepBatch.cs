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

    internal bool IsFull => Count == Size;

    /// <summary>All columns, one after another.</summary>
    internal float[] Values { get; } = new float[(int)Column.ColumnCount * Size];

    internal void Add(ref readonly SweepCell cell, int index, SweepMarks mark)
    {
        int n = Count++;
        cells[n] = index;
        marks[n] = mark;
        Span<float> v = Values.AsSpan(n);
        double d = cell.Length * 1e-3;
        double fall = (t.StationAntenna - cell.AntennaMetres) * 1e-3;
        Set(v, Column.Length, d);
        Set(v, Column.RadialEnd, cell.Points * t.Step * 1e-3);
        Set(v, Column.SlantSquare, (d * d) + (fall * fall));
        Set(v, Column.MedianEdge, SignedSquare(in cell, cell.Median));
        Set(v, Column.DuctingEdge, t.NeedsDucting ? SignedSquare(in cell, cell.Ducting) : 0);
        Set(v, Column.OverSmoothStation, cell.OverSmoothStation);
        Set(v, Column.OverSmoothCell, cell.OverSmoothCell);
        Set(v, Column.EffectiveStation, cell.EffectiveStation);
        Set(v, Column.EffectiveCell, cell.EffectiveCell);
        Set(v, Column.Roughness, cell.Roughness);
        double bend = cell.Length * t.MedianFall;
        Set(v, Column.StationSlope, cell.IsLineOfSight ? cell.LineSlope - bend : cell.HorizonFromStation);
        Set(v, Column.CellSlope, cell.IsLineOfSight ? -cell.LineSlope - bend : cell.HorizonFromCell);
        Set(v, Column.StationHorizon, cell.StationHorizonMetres * 1e-3);
        Set(v, Column.CellHorizon, cell.CellHorizonMetres * 1e-3);
        Set(v, Column.Latitude, Math.Abs(cell.Latitude));
        if (HasZones)
        {
            Set(v, Column.SeaFraction, cell.Climate.SeaFraction);
            Set(v, Column.LongestLand, cell.Climate.LongestLandMetres * 1e-3);
            Set(v, Column.LongestInland, cell.Climate.LongestInlandMetres * 1e-3);
            Set(v, Column.StationToCoast, cell.StationToCoastMetres * 1e-3);
            Set(v, Column.CellToCoast, cell.CellToCoastMetres * 1e-3);
            Set(v, Column.CellAntenna, cell.AntennaMetres);
            Ground.Zone receiver = t.Input.StationReceives ? t.StationZone : cell.Zone;
            Set(v, Column.Places, receiver == Ground.Zone.Sea ? 0 : t.PlacesDb);
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
        ReadOnlySpan<float> losses = Values.AsSpan((int)Column.Loss * Size, Count);
        ReadOnlySpan<float> elevations = Values.AsSpan((int)Column.Elevation * Size, Count);
        for (int n = 0; n < losses.Length; n++)
        {
            int cell = cells[n];
            result.Losses[cell] = losses[n];
            result.Elevations[cell] = elevations[n] * degrees;
            result.MarkBytes[cell] = (byte)marks[n];
        }

        Count = 0;
    }

    /// <summary>v·|v| of Bullington's edge: P.1812 (16) to (20).</summary>
    /// <remarks>In the edge's own v the distances cancel: (Stim − Str)²·d·db/(d − db) is (Stim − Str)(Srim + Str)·d.</remarks>
    private double SignedSquare(ref readonly SweepCell cell, BullingtonReading reading)
    {
        double above = reading.SlopeFromTransmitter - cell.LineSlope;
        return edgeScale * cell.Length * (above < 0 ? reading.ClearanceKey : above * Math.Max(0, reading.SlopeFromReceiver + cell.LineSlope));
    }

    private static void Set(Span<float> values, Column column, double value) => values[(int)column * Size] = (float)value;
}
