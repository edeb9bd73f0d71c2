using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Mastwright.Ground;
using Eight = System.Runtime.Intrinsics.Vector512<double>;

namespace Mastwright.Propagation.Area;

/// <summary>Eight cells of one radial asked together, a lane to each: what the closed form of P.1812 needs of their paths.</summary>
/// <remarks>
/// <para>The points of a cell's path: 0, s, 2s … on the radial, the last on the cell's own bearing (<see cref="OwnPoints"/>), the cell.</para>
/// <para>
/// Only the questions to the hulls are asked cell by cell. All else is the same arithmetic for every cell: eight at once, without branches. Lanes
/// without a cell hold numbers of no meaning.
/// </para>
/// <para>
/// What is asked for every cell is compiled at its best at once: a map is drawn before the runtime would find that worth the while, and wide vectors
/// that are compiled quickly cost ten times as much.
/// </para>
/// </remarks>
internal sealed class SweepGroup
{
    private readonly SweepRaster raster;
    private readonly SweepTerms t;
    private readonly OwnPoints own;
    private readonly long[] indices = new long[EightLanes.Count];
    private readonly int[] knots = new int[EightLanes.Count];
    private readonly Zone[] zones = new Zone[EightLanes.Count];
    private readonly RadioClimate[] climates = new RadioClimate[EightLanes.Count];
    private EightLanes lengths;
    private EightLanes antennas;
    private EightLanes lines;
    private Eight east;
    private Eight north;
    private Eight cellGround;
    private Eight last;
    private uint missing;

    // What the own points add: largest slopes from the station and from the cell, and which point has them.
    private OwnSlopes ownBare;
    private OwnSlopes ownMedian;
    private OwnSlopes ownDucting;
    private OwnHorizons ownHorizons;
    private Eight ownFlat;
    private Eight ownFlatBack;
    private Eight ownObstruction;
    private Eight ownSum;
    private Eight ownMoment;

    // What the radial said when its newest point was the cell's last.
    private EightLanes horizonSlope;
    private EightLanes horizonPoint;
    private EightLanes flatSlope;
    private EightLanes medianSlope;
    private EightLanes ductingSlope;
    private EightLanes obstacle;
    private EightLanes obstacleAt;
    private EightLanes back;
    private EightLanes backAt;
    private EightLanes lastGround;
    private EightLanes sum;
    private EightLanes moment;
    private EightLanes bareTangent;
    private EightLanes bareTangentHeight;
    private EightLanes medianTangent;
    private EightLanes medianTangentHeight;
    private EightLanes ductingTangent;
    private EightLanes ductingTangentHeight;

    // The bare ground's horizons: distance from the station, and the own point's number; -1 where it is on the radial.
    private Horizon fromStation;
    private Horizon fromCell;
    private Eight toPoint;

    // How near the bare ground comes to a clear line.
    private Eight bareKey;

    // Where there is sea.
    private EightLanes stationToCoast;
    private EightLanes cellToCoast;

    internal SweepGroup(SweepRaster raster, in SweepTerms terms)
    {
        this.raster = raster;
        t = terms;
        own = new(raster, terms.HasCover);
    }

    /// <summary>Lanes that hold a cell.</summary>
    internal int Count { get; private set; }

    /// <summary>Lengths of the paths.</summary>
    internal Eight Length => lengths.All;

    /// <summary>Heights of the cells' antennas above sea level, and their slopes from the station's.</summary>
    internal Eight Antenna => antennas.All;

    internal Eight Line => lines.All;

    /// <summary>Distance of the last point on the radial.</summary>
    internal Eight RadialEnd => last * t.Step;

    /// <summary>All bits where the bare ground leaves the line clear.</summary>
    internal Eight IsLineOfSight { get; private set; }

    internal Eight HorizonFromStation => fromStation.Slope;

    internal Eight HorizonFromCell => fromCell.Slope;

    internal Eight StationHorizonMetres => fromStation.Metres;

    internal Eight CellHorizonMetres => Length - fromCell.Metres;

    internal BullingtonLanes Median { get; private set; }

    internal BullingtonLanes Ducting { get; private set; }

    internal Eight OverSmoothStation { get; private set; }

    internal Eight OverSmoothCell { get; private set; }

    internal Eight EffectiveStation { get; private set; }

    internal Eight EffectiveCell { get; private set; }

    internal Eight Roughness { get; private set; }

    internal Eight Latitude { get; private set; }

    internal EightLanes StationToCoastMetres => stationToCoast;

    internal EightLanes CellToCoastMetres => cellToCoast;

    /// <summary>Index of a lane's cell in the map.</summary>
    internal int IndexOf(int lane) => (int)indices[lane];

    /// <summary>Whether ground is missing at the cell or on its way: its lane then holds numbers of no meaning.</summary>
    internal bool IsMissing(int lane) => ((missing >> lane) & 1) != 0;

    internal Zone ZoneOf(int lane) => zones[lane];

    internal ref readonly RadioClimate ClimateOf(int lane) => ref climates[lane];

    internal SweepMarks MarksOf(int lane, ulong inSight) =>
        (zones[lane] == Zone.Sea ? SweepMarks.Sea : SweepMarks.None) | ((inSight >> lane & 1) != 0 ? SweepMarks.LineOfSight : SweepMarks.None);

    /// <summary>Turns to another radial.</summary>
    internal void Aim(double alongEast, double alongNorth) => own.Aim(alongEast, -alongNorth);

    /// <summary>Takes one to eight cells, nearest first, and asks the radial about them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void Ask(SweepRadial radial, ReadOnlySpan<(int East, int North)> cells)
    {
        Take(cells, radial.Known);
        own.Read(indices, Length);
        if (raster.HasZones)
        {
            own.ReadZones(indices);
        }

        FindOwnSlopes();
        if (t.NeedsDucting)
        {
            ownDucting = SlopesOf(own.Top, t.DuctingFall);
        }

        Walk(radial);
        FindHorizons(radial);
        Median = t.HasCover
            ? Edge(radial.Median, own.Top, in ownMedian, medianSlope.All, medianTangent.All, medianTangentHeight.All)
            : BareEdge(radial);
        if (t.NeedsDucting)
        {
            Ducting = Edge(radial.Ducting, own.Top, in ownDucting, ductingSlope.All, ductingTangent.All, ductingTangentHeight.All);
        }

        Fit(radial);
    }

    /// <summary>One cell as the plain closed form has it.</summary>
    internal SweepCell CellOf(int lane) => new()
    {
        Length = Length[lane],
        Points = knots[lane],
        AntennaMetres = Antenna[lane],
        LineSlope = Line[lane],
        IsLineOfSight = (IsLineOfSight.ExtractMostSignificantBits() >> lane & 1) != 0,
        HorizonFromStation = HorizonFromStation[lane],
        HorizonFromCell = HorizonFromCell[lane],
        StationHorizonMetres = StationHorizonMetres[lane],
        CellHorizonMetres = CellHorizonMetres[lane],
        Median = Median.Of(lane),
        Ducting = Ducting.Of(lane),
        OverSmoothStation = OverSmoothStation[lane],
        OverSmoothCell = OverSmoothCell[lane],
        EffectiveStation = EffectiveStation[lane],
        EffectiveCell = EffectiveCell[lane],
        Roughness = Roughness[lane],
        Climate = raster.HasZones ? climates[lane] : new(0, Length[lane], Length[lane]),
        StationToCoastMetres = raster.HasZones ? stationToCoast[lane] : 500_000,
        CellToCoastMetres = raster.HasZones ? cellToCoast[lane] : 500_000,
        Zone = zones[lane],
        Latitude = Latitude[lane],
    };

    private static Eight All(double value) => Vector512.Create(value);

    private static Eight Largest(Eight left, Eight right) => Vector512.MaxNative(left, right);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Take(ReadOnlySpan<(int East, int North)> cells, int known)
    {
        Count = cells.Length;
        EightLanes easts = default;
        EightLanes norths = default;
        EightLanes heights = default;
        missing = 0;
        for (int lane = 0; lane < EightLanes.Count; lane++)
        {
            (int atEast, int atNorth) = cells[Math.Min(lane, cells.Length - 1)];
            int index = raster.Layout.At(atEast, atNorth);
            easts[lane] = atEast;
            norths[lane] = atNorth;
            indices[lane] = index;
            heights[lane] = raster.HeightOf(index);
            zones[lane] = raster.ZoneOf(index);
        }

        east = easts.All;
        north = norths.All;
        cellGround = heights.All;
        lengths.All = Vector512.Sqrt((east * east) + (north * north)) * t.Step;
        antennas.All = cellGround + All(t.Input.ReceiverHeightMetres);
        lines.All = (Antenna - All(t.StationAntenna)) / Length;
        Latitude = t.PathCentreLatitude(east * t.Step, north * t.Step);
        last = OwnPoints.LastOnRadial(Length, t.Step);
        missing = (uint)(~Vector512.Equals(cellGround, cellGround) | Vector512.GreaterThanOrEqual(last, All(known))).ExtractMostSignificantBits();
        last = Vector512.MinNative(last, All(known - 1));
        EightLanes points = new() { All = last };
        for (int lane = 0; lane < EightLanes.Count; lane++)
        {
            knots[lane] = (int)points[lane];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void FindOwnSlopes()
    {
        Eight hts = All(t.StationAntenna);
        Eight fall = All(t.MedianFall);
        Eight flat = All(double.NegativeInfinity);
        Eight flatBack = flat;
        Eight bare = flat;
        Eight bareBack = flat;
        Eight obstruction = flat;
        Eight heights = Eight.Zero;
        Eight moments = Eight.Zero;
        Eight stationPoint = Eight.Zero;
        Eight cellPoint = Eight.Zero;
        Eight cover = flat;
        Eight coverBack = flat;
        for (int i = 0; i < OwnPoints.Count; i++)
        {
            Eight number = All(i);
            Eight toEnd = own.ToEnd[i];
            Eight at = Length - toEnd;
            Eight perMetre = Eight.One / at;
            Eight h = own.Ground[i];
            Eight rise = (h - hts) * perMetre;
            flat = Largest(flat, rise);
            rise -= at * fall;
            Eight isHigher = Vector512.GreaterThan(rise, bare);
            stationPoint = Vector512.ConditionalSelect(isHigher, number, stationPoint);
            bare = Largest(bare, rise);
            Eight seen = (h - Antenna) * own.PerMetre[i];
            flatBack = Largest(flatBack, seen);
            seen -= toEnd * fall;
            isHigher = Vector512.GreaterThanOrEqual(seen, bareBack);
            cellPoint = Vector512.ConditionalSelect(isHigher, number, cellPoint);
            bareBack = Largest(bareBack, seen);
            obstruction = Largest(obstruction, h - (at * Line));
            heights += h;
            moments += h * at;
            if (t.HasCover)
            {
                // One division for the bare ground and for what stands on it.
                h = own.Top[i];
                cover = Largest(cover, ((h - hts) * perMetre) - (at * fall));
                coverBack = Largest(coverBack, ((h - Antenna) * own.PerMetre[i]) - (toEnd * fall));
            }
        }

        missing |= (uint)(~Vector512.Equals(heights, heights)).ExtractMostSignificantBits();
        ownFlat = flat;
        ownFlatBack = flatBack;
        ownObstruction = obstruction;

        // Points over again count once.
        Eight again = own.Repeated * own.Ground[0];
        ownSum = heights - again;
        ownMoment = moments - (again * (Length - own.ToEnd[0]));
        ownHorizons = new(stationPoint, cellPoint);
        ownMedian = t.HasCover ? new(cover, coverBack) : new(bare, bareBack);
        ownBare = new(bare, bareBack);
    }

    private OwnSlopes SlopesOf(Eight[] heights, double fall)
    {
        Eight hts = All(t.StationAntenna);
        Eight from = All(double.NegativeInfinity);
        Eight towards = from;
        for (int i = 0; i < OwnPoints.Count; i++)
        {
            Eight toEnd = own.ToEnd[i];
            Eight at = Length - toEnd;
            Eight h = heights[i];
            from = Largest(from, ((h - hts) / at) - (at * fall));
            towards = Largest(towards, ((h - Antenna) * own.PerMetre[i]) - (toEnd * fall));
        }

        return new(from, towards);
    }

    /// <summary>Walks the radial from cell to cell, and keeps what it knows of each.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Walk(SweepRadial radial)
    {
        for (int lane = 0; lane < Count; lane++)
        {
            int point = knots[lane];
            radial.WalkTo(point);
            horizonSlope[lane] = radial.Bare.Slope;
            horizonPoint[lane] = radial.HorizonPoint;
            flatSlope[lane] = radial.FlatSlope;
            lastGround[lane] = radial.Ground[point];
            sum[lane] = radial.Sum;
            moment[lane] = radial.Moment;
            Touch(radial.Bare, lengths[lane], antennas[lane], out bareTangent[lane], out bareTangentHeight[lane]);
            if (t.HasCover)
            {
                medianSlope[lane] = radial.Median.Slope;
                Touch(radial.Median, lengths[lane], antennas[lane], out medianTangent[lane], out medianTangentHeight[lane]);
            }

            if (t.NeedsDucting)
            {
                ductingSlope[lane] = radial.Ducting.Slope;
                Touch(radial.Ducting, lengths[lane], antennas[lane], out ductingTangent[lane], out ductingTangentHeight[lane]);
            }

            FindObstruction(radial, lane, lengths[lane], antennas[lane], lines[lane]);
            if (raster.HasZones)
            {
                CloseClimate(radial, lane);
            }
        }
    }

    /// <summary>The highest ground of the radial above the line, and what of it the cell sees highest, where a flat Earth blocks the line.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void FindObstruction(SweepRadial radial, int lane, double place, double antenna, double line)
    {
        if (!(radial.FlatSlope > line))
        {
            // The radial all lies below the line: what blocks it, if anything does, is one of the cell's own points.
            obstacle[lane] = back[lane] = double.NegativeInfinity;
            obstacleAt[lane] = backAt[lane] = 0;
            return;
        }

        int point = radial.BetweenHorizons.Highest(line);
        obstacle[lane] = radial.Ground[point];
        obstacleAt[lane] = radial.Distances[point];
        point = radial.BetweenHorizons.Tangent(place, antenna);
        back[lane] = radial.Ground[point];
        backAt[lane] = radial.Distances[point];
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Touch(FlattenedGround ground, double place, double antenna, out double point, out double height)
    {
        int tangent = ground.Tangent(place, antenna);
        point = tangent;
        height = ground.Height(tangent);
    }

    private void CloseClimate(SweepRadial radial, int lane)
    {
        int newest = radial.Newest;
        double d = Length[lane];
        SweepClimate whole = radial.Climate;
        int repeated = (int)own.Repeated[lane];
        double first = d - own.ToEnd[0][lane];
        whole.Add(newest, radial.ZoneAt(newest), (first - (newest * t.Step) + t.Step) / 2);
        whole.Add(newest + 1, own.ZoneAt(repeated, lane), (first - (newest * t.Step) + t.Step) / 2);
        for (int i = 1; i < OwnPoints.Count - repeated; i++)
        {
            whole.Add(newest + 1 + i, own.ZoneAt(repeated + i, lane), t.Step);
        }

        int cell = newest + 1 + OwnPoints.Count - repeated;
        whole.Add(cell, zones[lane], t.Step / 2);
        climates[lane] = whole.Of(d);
        (stationToCoast[lane], cellToCoast[lane]) = whole.ToCoast(t.Step, newest, cell, d);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void FindHorizons(SweepRadial radial)
    {
        // The first of equals from the station, so the radial's; the last from the cell, so its own.
        Eight isOwn = Vector512.GreaterThan(ownBare.FromStation, horizonSlope.All);
        fromStation = new(
            Largest(ownBare.FromStation, horizonSlope.All),
            Vector512.ConditionalSelect(isOwn, Length - ToEnd(ownHorizons.StationPoint), horizonPoint.All * t.Step),
            Vector512.ConditionalSelect(isOwn, ownHorizons.StationPoint, All(-1)));
        Eight toEnd = Length - (bareTangent.All * t.Step);
        Eight seen = ((bareTangentHeight.All - Antenna) / toEnd) - (toEnd * t.MedianFall);
        Eight isOnRadial = Vector512.GreaterThan(seen, ownBare.FromCell);
        fromCell = new(
            Largest(seen, ownBare.FromCell),
            Length - Vector512.ConditionalSelect(isOnRadial, toEnd, ToEnd(ownHorizons.CellPoint)),
            Vector512.ConditionalSelect(isOnRadial, All(-1), ownHorizons.CellPoint));
        toPoint = bareTangent.All;
        IsLineOfSight = Vector512.LessThanOrEqual(fromStation.Slope, Line - (Length * t.MedianFall));
        if (IsAny(IsLineOfSight))
        {
            Nearest point = NearestOf(radial.Bare, own.Ground, IsLineOfSight);
            fromStation = fromStation with
            {
                Metres = Vector512.ConditionalSelect(IsLineOfSight, point.Metres, fromStation.Metres),
                OwnPoint = Vector512.ConditionalSelect(IsLineOfSight, point.OwnPoint, fromStation.OwnPoint),
            };
            fromCell = fromCell with
            {
                Metres = Vector512.ConditionalSelect(IsLineOfSight, point.Metres, fromCell.Metres),
                OwnPoint = Vector512.ConditionalSelect(IsLineOfSight, point.OwnPoint, fromCell.OwnPoint),
            };
            toPoint = Vector512.ConditionalSelect(IsLineOfSight, point.Point, toPoint);
            bareKey = point.Key;
        }
    }

    private Eight ToEnd(Eight ownPoint) => Vector512.MinNative((All(OwnPoints.Count) - ownPoint) * t.Step, own.ToEnd[0]);

    private bool IsAny(Eight mask) => (mask.ExtractMostSignificantBits() & LiveLanes) != 0;

    private ulong LiveLanes => (1UL << Count) - 1;

    /// <summary>Bullington's readings without cover: the bare ground's horizons have them.</summary>
    private BullingtonLanes BareEdge(SweepRadial radial)
    {
        Eight bulge = Length * t.MedianFall;
        Eight slope = fromStation.Slope + bulge;
        Eight isClear = Vector512.LessThan(slope, Line);

        // Clear and in sight are the same but for a last bit.
        bool isKnown = !IsAny(Vector512.AndNot(isClear, IsLineOfSight));
        Eight key = isKnown ? bareKey : NearestOf(radial.Bare, own.Ground, isClear).Key;
        return new(slope, fromCell.Slope + bulge, key);
    }

    private BullingtonLanes Edge(FlattenedGround ground, Eight[] heights, in OwnSlopes slopes, Eight slopeOfRadial, Eight tangent, Eight tangentHeight)
    {
        Eight bulge = Length * ground.Fall;
        Eight slope = Largest(slopeOfRadial, slopes.FromStation) + bulge;
        Eight toEnd = Length - (tangent * t.Step);
        Eight seen = ((tangentHeight - Antenna) / toEnd) - (toEnd * ground.Fall);
        Eight isClear = Vector512.LessThan(slope, Line);
        Eight key = IsAny(isClear) ? NearestOf(ground, heights, isClear).Key : Eight.Zero;
        return new(slope, Largest(seen, slopes.FromCell) + bulge, key);
    }

    /// <summary>The points nearest to the rays of the lanes asked; of equals the last.</summary>
    private Nearest NearestOf(FlattenedGround ground, Eight[] heights, Eight asked)
    {
        Eight hts = All(t.StationAntenna);
        Eight key = All(double.NegativeInfinity);
        Eight ownPoint = Eight.Zero;
        for (int i = 0; i < OwnPoints.Count; i++)
        {
            Eight ownToEnd = own.ToEnd[i];
            Eight ownAt = Length - ownToEnd;
            Eight ownProduct = ownAt * ownToEnd;
            Eight ownAbove = heights[i] - hts - (ownAt * Line) + (ownProduct * ground.Fall);
            Eight ownKey = ownAbove * Vector512.Abs(ownAbove) / ownProduct;
            ownPoint = Vector512.ConditionalSelect(Vector512.GreaterThanOrEqual(ownKey, key), All(i), ownPoint);
            key = Largest(key, ownKey);
        }

        EightLanes points = default;
        EightLanes found = default;
        for (ulong lanes = asked.ExtractMostSignificantBits() & LiveLanes; lanes != 0; lanes &= lanes - 1)
        {
            int lane = BitOperations.TrailingZeroCount(lanes);
            int point = ground.Nearest(t.Step, knots[lane], lengths[lane], t.StationAntenna, lines[lane]);
            points[lane] = point;
            found[lane] = ground.Height(point);
        }

        Eight at = points.All * t.Step;
        Eight product = at * (Length - at);
        Eight above = found.All - hts - (at * Line) + (product * ground.Fall);
        Eight onRadial = above * Vector512.Abs(above) / product;
        Eight isOnRadial = Vector512.GreaterThan(onRadial, key);
        return new(
            Vector512.ConditionalSelect(isOnRadial, at, Length - ToEnd(ownPoint)),
            Vector512.ConditionalSelect(isOnRadial, All(-1), ownPoint),
            points.All,
            Vector512.ConditionalSelect(isOnRadial, onRadial, key));
    }

    /// <summary>The smooth surface, P.1812 equations (83) to (93), as <see cref="SmoothEarthFit"/> has it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Fit(SweepRadial radial)
    {
        Eight d = Length;
        double s = t.Step;
        Eight xk = RadialEnd;
        Eight hk = lastGround.All;
        Eight x0 = d - own.ToEnd[0];
        Eight h0 = own.Ground[0];

        // Between points of equal step a point counts with both its neighbours: twice its height, and six times height by distance. The two
        // stretches of equal step are closed at their ends; between them lies the one of another length.
        Eight start = All(t.StationGround);
        Eight first = (((sum.All * 2) + start - hk + (ownSum * 2) - h0 + cellGround) * s) + ((x0 - xk) * (h0 + hk));
        Eight second = ((x0 - xk) * ((h0 * (x0 + x0 + xk)) + (hk * (x0 + xk + xk))))
            + ((((moment.All - (hk * xk) + ownMoment - (h0 * x0)) * 6)
                + (start * s) + (hk * ((xk * 3) - All(s)))
                + (h0 * ((x0 * 3) + All(s))) + (cellGround * ((d * 3) - All(s)))) * s);
        Eight square = d * d;
        Eight atT = ((first * d * 2) - second) / square;
        Eight atR = (second - (first * d)) / square;
        Eight rawSlope = Largest(flatSlope.All, ownFlat);
        Eight isBlocked = Vector512.GreaterThan(rawSlope, Line);
        Eight obstruction = Largest(ownObstruction, obstacle.All - (obstacleAt.All * Line)) - All(t.StationAntenna);
        Eight flatBack = Largest(ownFlatBack, (back.All - Antenna) / (d - backAt.All));
        isBlocked &= Vector512.GreaterThan(obstruction, Eight.Zero);
        Eight slopeT = rawSlope - Line;
        Eight slopeR = flatBack + Line;
        Eight share = obstruction / (slopeT + slopeR);
        Eight loweredT = Vector512.ConditionalSelect(isBlocked, atT - (share * slopeT), atT);
        Eight loweredR = Vector512.ConditionalSelect(isBlocked, atR - (share * slopeR), atR);
        Eight hst = Vector512.MinNative(atT, start);
        Eight hsr = Vector512.MinNative(atR, cellGround);
        OverSmoothStation = All(t.StationAntenna) - Vector512.MinNative(loweredT, start);
        OverSmoothCell = Antenna - Vector512.MinNative(loweredR, cellGround);
        EffectiveStation = All(t.Input.StationHeightMetres) + start - hst;
        EffectiveCell = All(t.Input.ReceiverHeightMetres) + cellGround - hsr;
        Roughness = HighestAbove(radial, (hsr - hst) / d) - hst;
    }

    /// <summary>Height of the ground above lines of a slope, between the two horizons and with them.</summary>
    private Eight HighestAbove(SweepRadial radial, Eight slope)
    {
        Eight highest = All(double.NegativeInfinity);
        for (int i = 0; i < OwnPoints.Count; i++)
        {
            Eight isBetween = Vector512.LessThanOrEqual(fromStation.OwnPoint, All(i)) & Vector512.GreaterThanOrEqual(fromCell.OwnPoint, All(i));
            Eight above = own.Ground[i] - ((Length - own.ToEnd[i]) * slope);
            highest = Vector512.ConditionalSelect(isBetween, Largest(highest, above), highest);
        }

        EightLanes found = default;
        EightLanes foundAt = default;
        EightLanes slopes = new() { All = slope };
        EightLanes to = new() { All = Vector512.ConditionalSelect(Vector512.LessThan(fromCell.OwnPoint, Eight.Zero), toPoint, last) };
        Eight isOnRadial = Vector512.LessThan(fromStation.OwnPoint, Eight.Zero);
        ulong inSight = IsLineOfSight.ExtractMostSignificantBits();
        for (ulong lanes = isOnRadial.ExtractMostSignificantBits() & LiveLanes; lanes != 0; lanes &= lanes - 1)
        {
            int lane = BitOperations.TrailingZeroCount(lanes);

            // In line of sight both horizons are one point, which need not be the station's horizon.
            int point = (int)to[lane];
            point = (inSight >> lane & 1) != 0 ? point : radial.BetweenHorizons.Highest(point, slopes[lane]);
            found[lane] = radial.Ground[point];
            foundAt[lane] = radial.Distances[point];
        }

        return Vector512.ConditionalSelect(isOnRadial, Largest(highest, found.All - (foundAt.All * slope)), highest);
    }

    /// <summary>Largest slopes to the own points, with the bulge taken off.</summary>
    private readonly record struct OwnSlopes(Eight FromStation, Eight FromCell);

    /// <summary>Which of the own points have them.</summary>
    private readonly record struct OwnHorizons(Eight StationPoint, Eight CellPoint);

    private readonly record struct Horizon(Eight Slope, Eight Metres, Eight OwnPoint);

    private readonly record struct Nearest(Eight Metres, Eight OwnPoint, Eight Point, Eight Key);
}

/// <summary><see cref="BullingtonReading"/> of eight cells.</summary>
internal readonly record struct BullingtonLanes(Eight FromStation, Eight FromCell, Eight ClearanceKey)
{
    internal BullingtonReading Of(int lane) => new(FromStation[lane], FromCell[lane], ClearanceKey[lane]);
}
