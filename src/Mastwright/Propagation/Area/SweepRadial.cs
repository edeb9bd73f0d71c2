using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>One straight line out from the station, walked once; asks about cells beyond its newest point are answered at any time.</summary>
/// <remarks>
/// <para>
/// With z = g − x²/(2a) the slope from the station to a point with the bulge of the Earth towards a receiver differs from (z − hts)/x by
/// the same amount for all points. So one walk serves every receiver: the largest slope so far is the station's horizon, the upper hull
/// of z holds every horizon of any receiver. Sums give the smooth surface, a restarted hull the roughness.
/// </para>
/// <para>The points of a cell's path: 0, s, 2s … below D − s on the radial, D − s on the cell's own bearing, and the cell.</para>
/// </remarks>
internal sealed class SweepRadial
{
    private readonly SweepRaster raster;
    private readonly SweepTerms t;
    private readonly double[] x;
    private readonly double[] inverse;
    private readonly double[] ground;
    private readonly double[] bare;
    private readonly double[] median;
    private readonly double[] ducting;
    private readonly double[] top;
    private readonly Zone[] zones;
    private readonly UpperHull bareHull;
    private readonly UpperHull medianHull;
    private readonly UpperHull ductingHull;
    private readonly RestartedHull betweenHorizons;
    private readonly NearestToRay bareRay;
    private readonly NearestToRay medianRay;
    private readonly NearestToRay ductingRay;
    private SweepClimate climate;
    private int newest;
    private double horizon;
    private int horizonPoint;
    private double medianSlope;
    private double ductingSlope;
    private double flatSlope;
    private double firstSum;
    private double secondSum;

    internal SweepRadial(SweepRaster raster, in SweepTerms terms)
    {
        this.raster = raster;
        t = terms;
        int capacity = (int)Math.Ceiling(raster.Reach * 1.5) + 4;
        x = new double[capacity];
        inverse = new double[capacity];
        for (int i = 0; i < capacity; i++)
        {
            x[i] = i * t.Step;
            inverse[i] = 1 / x[i];
        }

        ground = new double[capacity];
        bare = new double[capacity];
        bareHull = new(capacity);
        bareRay = new(capacity);
        betweenHorizons = new(capacity);
        zones = raster.HasZones ? new Zone[capacity] : [];
        top = t.HasCover ? new double[capacity] : ground;
        median = t.HasCover ? new double[capacity] : bare;
        medianHull = t.HasCover ? new(capacity) : bareHull;
        medianRay = t.HasCover ? new(capacity) : bareRay;
        ducting = t.NeedsDucting ? new double[capacity] : [];
        ductingHull = t.NeedsDucting ? new(capacity) : bareHull;
        ductingRay = t.NeedsDucting ? new(capacity) : bareRay;
    }

    /// <summary>Number of points with known ground, the station's among them.</summary>
    internal int Known { get; private set; }

    internal ReadOnlySpan<double> Distances => x;

    internal ReadOnlySpan<double> Ground => ground;

    internal double CoverMetres(int point) => t.HasCover ? top[point] - ground[point] : 0;

    internal Zone ZoneAt(int point) => raster.HasZones ? zones[point] : Zone.Inland;

    /// <summary>Reads the ground along a bearing and starts again from the station.</summary>
    /// <param name="east">Cells to the east for each step, the sine of the bearing.</param>
    /// <param name="south">Cells to the south for each step.</param>
    /// <param name="last">Last point to read.</param>
    internal void Start(double east, double south, int last)
    {
        Read(east, south, last);
        newest = 0;
        bareHull.Clear();
        medianHull.Clear();
        ductingHull.Clear();
        bareRay.Clear();
        medianRay.Clear();
        ductingRay.Clear();
        climate = SweepClimate.Empty;
        horizon = medianSlope = ductingSlope = flatSlope = double.NegativeInfinity;
        horizonPoint = 0;
        firstSum = 0;
        secondSum = 0;
    }

    /// <summary>Walks on to a point; never back.</summary>
    internal void WalkTo(int point)
    {
        while (newest < point)
        {
            newest++;
            Push(newest);
        }
    }

    /// <summary>The path to a cell; the newest point is the last with a distance below the cell's less one step.</summary>
    /// <param name="cell">Receives the path. Its length, latitude and zone are set already.</param>
    /// <param name="cellGround">Height of the ground at the cell.</param>
    /// <param name="lastGround">The same one step before the cell, and the cover and zone there.</param>
    /// <param name="lastCover">Height of the cover there.</param>
    /// <param name="lastZone">Zone there.</param>
    internal void Ask(ref SweepCell cell, double cellGround, double lastGround, double lastCover, Zone lastZone)
    {
        double d = cell.Length;
        double hts = t.StationAntenna;
        double hrs = cellGround + t.Input.ReceiverHeightMetres;
        double line = (hrs - hts) / d;
        double xv = d - t.Step;
        double toEnd = d - xv;
        cell.AntennaMetres = hrs;
        cell.LineSlope = line;
        cell.LastPoint = xv;
        cell.Points = newest;

        // Horizons.
        double c50 = t.MedianFall;
        int virtualPoint = newest + 1;
        double rise = (lastGround - hts) / xv;
        double bent = rise - (c50 * xv);
        bool virtualIsHorizon = bent > horizon;
        double horizonSlope = virtualIsHorizon ? bent : horizon;
        int from = virtualIsHorizon ? virtualPoint : horizonPoint;
        cell.HorizonFromStation = horizonSlope;
        cell.IsLineOfSight = horizonSlope <= line - (c50 * d);
        int to;
        double bareKey = double.NegativeInfinity;
        double bareBack = double.NegativeInfinity;
        if (cell.IsLineOfSight)
        {
            (from, bareKey) = Nearest(bareRay, bare, ground, c50, lastGround, in cell);
            to = from;
        }
        else
        {
            (to, bareBack) = Horizon(bareHull, ground, c50, hrs, lastGround, in cell);
        }

        cell.HorizonFromCell = bareBack;
        cell.StationHorizonMetres = from > newest ? xv : x[from];
        cell.CellHorizonMetres = to > newest ? toEnd : d - x[to];

        // Bullington's edges.
        double lastTop = lastGround + lastCover;
        if (t.HasCover)
        {
            cell.Median = Edge(medianHull, medianRay, median, c50, Math.Max(medianSlope, ((lastTop - hts) / xv) - (c50 * xv)), hrs, lastTop, in cell);
        }
        else
        {
            double slope = horizonSlope + (c50 * d);
            bool isClear = slope < line;
            cell.Median = new(
                slope,
                isClear ? 0 : double.IsNegativeInfinity(bareBack) ? Horizon(bareHull, ground, c50, hrs, lastGround, in cell).Slope + (c50 * d) : bareBack + (c50 * d),
                isClear ? double.IsNegativeInfinity(bareKey) ? Nearest(bareRay, bare, ground, c50, lastGround, in cell).Key : bareKey : 0);
        }

        if (t.NeedsDucting)
        {
            double cb = t.DuctingFall;
            cell.Ducting = Edge(ductingHull, ductingRay, ducting, cb, Math.Max(ductingSlope, ((lastTop - hts) / xv) - (cb * xv)), hrs, lastTop, in cell);
        }

        Fit(ref cell, cellGround, lastGround, Math.Max(flatSlope, rise), hrs, from, to);
        cell.Climate = new(0, d, d);
        cell.StationToCoastMetres = 500_000;
        cell.CellToCoastMetres = 500_000;
        if (raster.HasZones)
        {
            SweepClimate whole = climate;
            double before = newest == 0 ? 0 : x[newest - 1];
            whole.Add(newest, zones[newest], (xv - before) / 2);
            whole.Add(virtualPoint, lastZone, (d - x[newest]) / 2);
            whole.Add(virtualPoint + 1, cell.Zone, toEnd / 2);
            cell.Climate = whole.Of(d);
            (cell.StationToCoastMetres, cell.CellToCoastMetres) = whole.ToCoast(t.Step, newest, xv, d);
        }
    }

    private void Read(double east, double south, int last)
    {
        ground[0] = t.StationGround;
        if (t.HasCover)
        {
            top[0] = ground[0];
        }

        if (raster.HasZones)
        {
            zones[0] = t.StationZone;
        }

        Known = 1 + raster.Read(
            east,
            south,
            last,
            ground.AsSpan(1),
            t.HasCover ? top.AsSpan(1) : [],
            raster.HasZones ? zones.AsSpan(1) : []);
    }

    private void Push(int i)
    {
        double at = x[i];
        double h = ground[i];
        double hts = t.StationAntenna;
        double fall = t.MedianFall * at;
        double perMetre = inverse[i];
        double rise = (h - hts) * perMetre;
        double z = h - (fall * at);
        bare[i] = z;
        bareHull.Push(i, at, z);
        flatSlope = Math.Max(flatSlope, rise);
        double bent = rise - fall;
        if (bent > horizon)
        {
            horizon = bent;
            horizonPoint = i;
            betweenHorizons.Restart(i, at, h);
        }
        else
        {
            betweenHorizons.Push(i, at, h);
        }

        double g = top[i];
        double slope = (g - hts) * perMetre;
        if (t.HasCover)
        {
            z = g - (fall * at);
            median[i] = z;
            medianHull.Push(i, at, z);
            medianSlope = Math.Max(medianSlope, slope - fall);
        }

        if (t.NeedsDucting)
        {
            fall = t.DuctingFall * at;
            z = g - (fall * at);
            ducting[i] = z;
            ductingHull.Push(i, at, z);
            ductingSlope = Math.Max(ductingSlope, slope - fall);
        }

        double before = x[i - 1];
        double low = ground[i - 1];
        double step = at - before;
        firstSum += step * (h + low);
        secondSum += step * ((h * (at + at + before)) + (low * (at + before + before)));
        if (raster.HasZones)
        {
            climate.Add(i - 1, zones[i - 1], i == 1 ? t.Step / 2 : t.Step);
        }
    }

    /// <summary>The cell's horizon: its point and its slope with the bulge beyond it taken off.</summary>
    private (int Point, double Slope) Horizon(UpperHull hull, double[] heights, double c, double hrs, double lastHeight, ref readonly SweepCell cell)
    {
        double d = cell.Length;
        double toEnd = d - cell.LastPoint;
        double slope = ((lastHeight - hrs) / toEnd) - (c * toEnd);
        if (newest == 0)
        {
            return (1, slope);
        }

        int point = hull.Tangent(d, hrs - (c * d * d));
        toEnd = d - x[point];
        double seen = ((heights[point] - hrs) / toEnd) - (c * toEnd);
        return seen > slope ? (point, seen) : (newest + 1, slope);
    }

    private (int Point, double Key) Nearest(NearestToRay ray, double[] z, double[] heights, double c, double lastHeight, ref readonly SweepCell cell)
    {
        double d = cell.Length;
        double key = Key(cell.LastPoint, lastHeight, c, in cell);
        if (newest == 0)
        {
            return (1, key);
        }

        int point = ray.Find(z, t.Step, newest, d, t.StationAntenna, cell.LineSlope - (c * d));
        double nearest = Key(x[point], heights[point], c, in cell);
        return nearest > key ? (point, nearest) : (newest + 1, key);
    }

    private double Key(double at, double height, double c, ref readonly SweepCell cell)
    {
        double product = at * (cell.Length - at);
        double above = height - t.StationAntenna - (at * cell.LineSlope) + (product * c);
        return above * Math.Abs(above) / product;
    }

    private BullingtonReading Edge(UpperHull hull, NearestToRay ray, double[] z, double c, double slope, double hrs, double lastTop, ref readonly SweepCell cell)
    {
        double whole = slope + (c * cell.Length);
        return whole < cell.LineSlope
            ? new(whole, 0, Nearest(ray, z, top, c, lastTop, in cell).Key)
            : new(whole, Horizon(hull, top, c, hrs, lastTop, in cell).Slope + (c * cell.Length), double.NegativeInfinity);
    }

    /// <summary>The smooth surface, P.1812 equations (83) to (93), as <see cref="SmoothEarthFit"/> has it.</summary>
    private void Fit(ref SweepCell cell, double cellGround, double lastGround, double rawSlope, double hrs, int from, int to)
    {
        double d = cell.Length;
        double xv = cell.LastPoint;
        double xk = x[newest];
        double hk = ground[newest];
        double step = xv - xk;
        double first = firstSum + (step * (lastGround + hk));
        double second = secondSum + (step * ((lastGround * (xv + xv + xk)) + (hk * (xv + xk + xk))));
        step = d - xv;
        first += step * (cellGround + lastGround);
        second += step * ((cellGround * (d + d + xv)) + (lastGround * (d + xv + xv)));
        double atT = ((2 * first * d) - second) / (d * d);
        double atR = (second - (first * d)) / (d * d);
        double loweredT = atT;
        double loweredR = atR;
        double line = cell.LineSlope;
        if (rawSlope > line)
        {
            double obstruction = lastGround - (xv * line);
            double back = (lastGround - hrs) / (d - xv);
            if (newest > 0)
            {
                int point = betweenHorizons.Highest(newest, line);
                obstruction = Math.Max(obstruction, ground[point] - (x[point] * line));
                point = betweenHorizons.Tangent(newest, d, hrs);
                back = Math.Max(back, (ground[point] - hrs) / (d - x[point]));
            }

            obstruction -= t.StationAntenna;
            if (obstruction > 0)
            {
                double slopeT = rawSlope - line;
                double slopeR = back + line;
                loweredT -= obstruction * slopeT / (slopeT + slopeR);
                loweredR -= obstruction * slopeR / (slopeT + slopeR);
            }
        }

        double hst = Math.Min(atT, t.StationGround);
        double hsr = Math.Min(atR, cellGround);
        cell.OverSmoothStation = t.StationAntenna - Math.Min(loweredT, t.StationGround);
        cell.OverSmoothCell = hrs - Math.Min(loweredR, cellGround);
        cell.EffectiveStation = t.Input.StationHeightMetres + t.StationGround - hst;
        cell.EffectiveCell = t.Input.ReceiverHeightMetres + cellGround - hsr;
        cell.Roughness = HighestAbove((hsr - hst) / d, from, to, xv, lastGround) - hst;
    }

    private double HighestAbove(double slope, int from, int to, double xv, double lastGround)
    {
        double highest = to > newest ? lastGround - (slope * xv) : double.NegativeInfinity;
        if (from > newest)
        {
            return highest;
        }

        // In line of sight both horizons are one point, which need not be the station's horizon.
        int point = from == to ? from : betweenHorizons.Highest(Math.Min(to, newest), slope);
        return Math.Max(highest, ground[point] - (slope * x[point]));
    }
}
