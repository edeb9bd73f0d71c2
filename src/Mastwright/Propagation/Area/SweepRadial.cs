using System.Runtime.Intrinsics;
using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>One straight line out from the station, walked once; asks about cells beyond its newest point are answered at any time.</summary>
/// <remarks>
/// <para>
/// With z = g − x²/(2a) the slope from the station to a point with the bulge of the Earth towards a receiver differs from (z − hts)/x by
/// the same amount for all points. So one walk serves every receiver: the largest slope so far is the station's horizon, the upper hull
/// of z holds every horizon of any receiver. Sums give the smooth surface, a restarted hull the roughness.
/// </para>
/// <para>The points of a cell's path: 0, s, 2s … on the radial, the last eight before the cell on the cell's own bearing (<see cref="OwnPoints"/>), the cell.</para>
/// </remarks>
internal sealed class SweepRadial
{
    private readonly SweepRaster raster;
    private readonly SweepTerms t;
    private readonly double[] x;
    private readonly double[] inverse;
    private readonly Vector512<double> ownToEnd;
    private readonly Vector512<double> ownPerMetre;
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
        ownToEnd = OwnPoints.ToEnd(t.Step);
        ownPerMetre = Vector512<double>.One / ownToEnd;
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

    /// <summary>The path to a cell; the newest point is the last below the cell's own points.</summary>
    /// <param name="cell">Receives the path. Its length, latitude and zone are set already.</param>
    /// <param name="cellGround">Height of the ground at the cell.</param>
    /// <param name="own">The points on the cell's own bearing.</param>
    internal void Ask(ref SweepCell cell, double cellGround, in OwnPoints own)
    {
        double d = cell.Length;
        double hrs = cellGround + t.Input.ReceiverHeightMetres;
        double line = (hrs - t.StationAntenna) / d;
        cell.AntennaMetres = hrs;
        cell.LineSlope = line;
        cell.Points = newest;

        // Horizons.
        double c50 = t.MedianFall;
        Vector512<double> at = own.Distances;
        Vector512<double> perMetre = Vector512<double>.One / at;
        Vector512<double> rise = (own.Ground - Vector512.Create(t.StationAntenna)) * perMetre;
        Vector512<double> bent = rise - (at * c50);
        (double horizonSlope, int lane) = Lanes.FirstLargest(bent);
        int from = newest + 1 + lane;
        if (!(horizonSlope > horizon))
        {
            horizonSlope = horizon;
            from = horizonPoint;
        }

        cell.HorizonFromStation = horizonSlope;
        cell.IsLineOfSight = horizonSlope <= line - (c50 * d);
        int to;
        double bareKey = double.NegativeInfinity;
        double bareBack = double.NegativeInfinity;
        if (cell.IsLineOfSight)
        {
            (from, bareKey) = Nearest(bareRay, bare, ground, c50, own.Ground, in cell, at);
            to = from;
        }
        else
        {
            (to, bareBack) = Horizon(bareHull, ground, c50, hrs, own.Ground, in cell);
        }

        cell.HorizonFromCell = bareBack;
        cell.StationHorizonMetres = from > newest ? at[from - newest - 1] : x[from];
        cell.CellHorizonMetres = to > newest ? ownToEnd[to - newest - 1] : d - x[to];

        // Bullington's edges.
        Vector512<double> tops = own.Ground + own.Cover;
        if (t.HasCover)
        {
            double slope = Lanes.Largest(((tops - Vector512.Create(t.StationAntenna)) * perMetre) - (at * c50));
            cell.Median = Edge(medianHull, medianRay, median, c50, Math.Max(medianSlope, slope), hrs, tops, in cell, at);
        }
        else
        {
            double slope = horizonSlope + (c50 * d);
            bool isClear = slope < line;
            cell.Median = new(
                slope,
                isClear ? 0 : double.IsNegativeInfinity(bareBack) ? Horizon(bareHull, ground, c50, hrs, own.Ground, in cell).Slope + (c50 * d) : bareBack + (c50 * d),
                isClear ? double.IsNegativeInfinity(bareKey) ? Nearest(bareRay, bare, ground, c50, own.Ground, in cell, at).Key : bareKey : 0);
        }

        if (t.NeedsDucting)
        {
            double cb = t.DuctingFall;
            double slope = Lanes.Largest(((tops - Vector512.Create(t.StationAntenna)) * perMetre) - (at * cb));
            cell.Ducting = Edge(ductingHull, ductingRay, ducting, cb, Math.Max(ductingSlope, slope), hrs, tops, in cell, at);
        }

        Fit(ref cell, cellGround, own.Ground, at, Math.Max(flatSlope, Lanes.Largest(rise)), hrs, from, to);
        cell.Climate = new(0, d, d);
        cell.StationToCoastMetres = 500_000;
        cell.CellToCoastMetres = 500_000;
        if (raster.HasZones)
        {
            SweepClimate whole = climate;
            whole.Add(newest, zones[newest], (at[0] - x[newest - 1]) / 2);
            whole.Add(newest + 1, own.ZoneAt(0), (at[1] - x[newest]) / 2);
            for (int i = 1; i < OwnPoints.Count; i++)
            {
                whole.Add(newest + 1 + i, own.ZoneAt(i), t.Step);
            }

            whole.Add(newest + 1 + OwnPoints.Count, cell.Zone, t.Step / 2);
            cell.Climate = whole.Of(d);
            (cell.StationToCoastMetres, cell.CellToCoastMetres) = whole.ToCoast(t.Step, newest, d);
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

    /// <summary>The cell's horizon: its point and its slope with the bulge beyond it taken off; of equals the last.</summary>
    private (int Point, double Slope) Horizon(UpperHull hull, double[] heights, double c, double hrs, Vector512<double> own, ref readonly SweepCell cell)
    {
        double d = cell.Length;
        (double slope, int lane) = Lanes.LastLargest(((own - Vector512.Create(hrs)) * ownPerMetre) - (ownToEnd * c));
        int point = hull.Tangent(d, hrs - (c * d * d));
        double toEnd = d - x[point];
        double seen = ((heights[point] - hrs) / toEnd) - (c * toEnd);
        return seen > slope ? (point, seen) : (newest + 1 + lane, slope);
    }

    /// <summary>The point nearest to the ray and its key; of equals the last.</summary>
    private (int Point, double Key) Nearest(
        NearestToRay ray, double[] z, double[] heights, double c, Vector512<double> own, ref readonly SweepCell cell, Vector512<double> at)
    {
        double d = cell.Length;
        double line = cell.LineSlope;
        Vector512<double> products = at * ownToEnd;
        Vector512<double> heightsAbove = own - Vector512.Create(t.StationAntenna) - (at * line) + (products * c);
        (double key, int lane) = Lanes.LastLargest(heightsAbove * Vector512.Abs(heightsAbove) / products);
        int point = ray.Find(z, t.Step, newest, d, t.StationAntenna, line - (c * d));
        double product = x[point] * (d - x[point]);
        double above = heights[point] - t.StationAntenna - (x[point] * line) + (product * c);
        double nearest = above * Math.Abs(above) / product;
        return nearest > key ? (point, nearest) : (newest + 1 + lane, key);
    }

    private BullingtonReading Edge(
        UpperHull hull, NearestToRay ray, double[] z, double c, double slope, double hrs, Vector512<double> own, ref readonly SweepCell cell, Vector512<double> at)
    {
        double whole = slope + (c * cell.Length);
        return whole < cell.LineSlope
            ? new(whole, 0, Nearest(ray, z, top, c, own, in cell, at).Key)
            : new(whole, Horizon(hull, top, c, hrs, own, in cell).Slope + (c * cell.Length), double.NegativeInfinity);
    }

    /// <summary>The smooth surface, P.1812 equations (83) to (93), as <see cref="SmoothEarthFit"/> has it.</summary>
    private void Fit(ref SweepCell cell, double cellGround, Vector512<double> own, Vector512<double> at, double rawSlope, double hrs, int from, int to)
    {
        double d = cell.Length;
        double s = t.Step;
        double xk = x[newest];
        double hk = ground[newest];
        double x0 = at[0];
        double h0 = own[0];

        // Between points of equal step a point counts with both its neighbours: twice its height, and six times height by distance.
        double first = firstSum + ((x0 - xk) * (h0 + hk)) + (s * ((2 * Vector512.Sum(own)) - h0 + cellGround));
        double second = secondSum
            + ((x0 - xk) * ((h0 * (x0 + x0 + xk)) + (hk * (x0 + xk + xk))))
            + (s * ((6 * (Vector512.Sum(own * at) - (h0 * x0))) + (h0 * (x0 + x0 + at[1])) + (cellGround * (d + d + at[OwnPoints.Count - 1]))));
        double atT = ((2 * first * d) - second) / (d * d);
        double atR = (second - (first * d)) / (d * d);
        double loweredT = atT;
        double loweredR = atR;
        double line = cell.LineSlope;
        if (rawSlope > line)
        {
            int point = betweenHorizons.Highest(newest, line);
            double obstruction = Math.Max(Lanes.Largest(own - (at * line)), ground[point] - (x[point] * line)) - t.StationAntenna;
            point = betweenHorizons.Tangent(newest, d, hrs);
            double back = Math.Max(Lanes.Largest((own - Vector512.Create(hrs)) * ownPerMetre), (ground[point] - hrs) / (d - x[point]));
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
        cell.Roughness = HighestAbove((hsr - hst) / d, from, to, own, at) - hst;
    }

    private double HighestAbove(double slope, int from, int to, Vector512<double> own, Vector512<double> at)
    {
        double highest = double.NegativeInfinity;
        if (to > newest)
        {
            Vector512<double> above = own - (at * slope);
            for (int i = Math.Max(from - newest - 1, 0); i <= to - newest - 1; i++)
            {
                highest = Math.Max(highest, above[i]);
            }
        }

        if (from > newest)
        {
            return highest;
        }

        // In line of sight both horizons are one point, which need not be the station's horizon.
        int point = from == to ? from : betweenHorizons.Highest(Math.Min(to, newest), slope);
        return Math.Max(highest, ground[point] - (slope * x[point]));
    }
}
