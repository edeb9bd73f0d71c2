using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Propagation;
using Mastwright.Quantities;

namespace Mastwright.Plans;

/// <summary>Works out the path between two stations: at the best guess, and over the ranges of places and heights.</summary>
internal sealed class LinkPathSolver(PathSettings settings, PathAir air, Func<GeoPoint, GeoPoint, GroundMosaic> ground)
{
    /// <summary>Distance in metres below which two places are one.</summary>
    internal const double OnePlaceMetres = 1;

    internal LinkPath Solve(LinkStation from, LinkStation to)
    {
        double distanceMetres = Geodesic.Inverse(from.Position.Point, to.Position.Point).DistanceMetres;
        if (distanceMetres < OnePlaceMetres)
        {
            return new() { Air = air, Missing = [$"two places ({from.PlanPath}/position and {to.PlanPath}/position are one place)"] };
        }

        if (distanceMetres > ModelRange.LongestPathMetres)
        {
            return new() { Air = air, Missing = ["a method for paths over 3000 km (ITU-R P.1812 ends there)"] };
        }

        GroundMosaic mosaic = ground(from.Position.Point, to.Position.Point);
        return Solve(from, to, mosaic, TerrainProfile.Extract(mosaic, from.Position.Point, to.Position.Point));
    }

    /// <summary>The same over a profile that was cut before.</summary>
    internal LinkPath Solve(LinkStation from, LinkStation to, GroundMosaic mosaic, TerrainProfile terrain)
    {
        ImmutableArray<string> missing =
        [
            .. terrain.Gaps.Select(gap => $"ground: {gap}"),
            .. from.Height is null ? [from.FitOutPath + "/height"] : Array.Empty<string>(),
            .. to.Height is null ? [to.FitOutPath + "/height"] : Array.Empty<string>(),
        ];
        if (!missing.IsEmpty)
        {
            return new() { Air = air, Terrain = terrain, KnownGround = KnownGround(mosaic, terrain, from, to), Missing = missing };
        }

        EndGround fromGround = EndGround.At(mosaic, terrain, from, isStart: true);
        EndGround toGround = EndGround.At(mosaic, terrain, to, isStart: false);
        (Estimate fromMetres, bool fromBuried) = EndHeight.AboveGround(from.Height!, fromGround.Metres);
        (Estimate toMetres, bool toBuried) = EndHeight.AboveGround(to.Height!, toGround.Metres);
        PathProfile profile = Profile(mosaic, terrain, fromGround.Metres.Median, toGround.Metres.Median);
        ClearanceAnalysis clearance = FresnelClearance.Analyse(profile, fromMetres.Median, toMetres.Median, settings.FrequencyHz, air.KFactor);
        EndLoss fromEnd = EndLoss.Of(from, settings.FrequencyHz, fromMetres.Median, clearance.TransmitterElevationDegrees, terrain.HasSurface);
        EndLoss toEnd = EndLoss.Of(to, settings.FrequencyHz, toMetres.Median, clearance.ReceiverElevationDegrees, terrain.HasSurface);
        if (fromEnd.CoverTakenOutMetres > 0 || toEnd.CoverTakenOutMetres > 0)
        {
            profile = WithoutReplacedCover(profile, fromEnd, toEnd);
            clearance = FresnelClearance.Analyse(profile, fromMetres.Median, toMetres.Median, settings.FrequencyHz, air.KFactor);
        }

        LinkPath path = new()
        {
            Air = air,
            Terrain = terrain,
            Profile = profile,
            FromHeightMetres = fromMetres,
            ToHeightMetres = toMetres,
            Clearance = clearance,
            ClearanceLowK = FresnelClearance.Analyse(profile, fromMetres.Median, toMetres.Median, settings.FrequencyHz, settings.LowKFactor),
            LocationDb = settings.LocationDb ?? LocationVariability.SigmaDb(settings.FrequencyHz, terrain.StepMetres, toMetres.Median, terrain.CoverHeightsMetres[^1]),
            Findings = [.. fromEnd.Findings, .. toEnd.Findings, .. fromGround.Findings, .. toGround.Findings, .. Buried(from, fromBuried), .. Buried(to, toBuried)],
            Assumptions = [.. air.Assumptions, .. fromEnd.Assumptions, .. toEnd.Assumptions, .. fromGround.Assumptions, .. toGround.Assumptions],
            Missing = [.. fromEnd.Missing, .. toEnd.Missing],
        };
        if (!path.Missing.IsEmpty)
        {
            return path;
        }

        return WithLosses(path, from, to, mosaic, fromEnd, toEnd);
    }

    private LinkPath WithLosses(LinkPath path, LinkStation from, LinkStation to, GroundMosaic mosaic, EndLoss fromEnd, EndLoss toEnd)
    {
        PathProfile profile = path.Profile!;
        double fromMetres = path.FromHeightMetres!.Value.Median;
        double toMetres = path.ToHeightMetres!.Value.Median;
        Ends ends = new(from, to, mosaic, fromEnd, toEnd);
        PathLossPrediction outPrediction = PathLoss.Predict(profile, Input(from, to, fromMetres, toMetres, path, isReversed: false));
        PathLossPrediction backPrediction = PathLoss.Predict(profile.Reversed(), Input(from, to, fromMetres, toMetres, path, isReversed: true));
        LossSpread outRange = new(outPrediction.LossDb);
        LossSpread backRange = new(backPrediction.LossDb);
        TryEnd(path, ends, varyStart: true, outRange, backRange);
        outRange.Close();
        backRange.Close();
        TryEnd(path, ends, varyStart: false, outRange, backRange);
        outRange.Close();
        backRange.Close();

        ImmutableArray<LedgerLine> endLines = [.. fromEnd.Lines, .. toEnd.Lines];
        Estimate endLoss = fromEnd.RangeDb + toEnd.RangeDb;
        ImmutableArray<SpreadPart> spreads = [.. fromEnd.Spreads, .. toEnd.Spreads];
        return path with
        {
            Out = outPrediction,
            Back = backPrediction,
            OutLoss = Range(outPrediction, outRange, endLines, endLoss, spreads),
            BackLoss = Range(backPrediction, backRange, endLines, endLoss, spreads),
            Tries = outRange.Count,
            Assumptions = outRange.Skipped == 0
                ? path.Assumptions
                : path.Assumptions.Add(new("places-without-ground", $"{outRange.Skipped} of {outRange.Skipped + outRange.Count} places within the range of {from.Name} or {to.Name} have no ground and were left out", "plan and ground")),
        };
    }

    /// <summary>Tries the places and heights within the range of one end, the other at its best guess.</summary>
    private void TryEnd(LinkPath path, Ends ends, bool varyStart, LossSpread outRange, LossSpread backRange)
    {
        LinkStation varied = varyStart ? ends.From : ends.To;
        foreach (GeoPoint place in PlaceSamples.Around(varied.Position, path.Terrain!.StepMetres))
        {
            bool isBestGuess = place == varied.Position.Point;
            GeoPoint start = varyStart ? place : ends.From.Position.Point;
            GeoPoint end = varyStart ? ends.To.Position.Point : place;
            TerrainProfile? terrain = isBestGuess ? path.Terrain : null;
            if (!isBestGuess && Geodesic.Inverse(start, end).DistanceMetres >= OnePlaceMetres)
            {
                terrain = Cut(ends.Mosaic, start, end, path.Terrain.StepMetres);
            }

            if (terrain is null)
            {
                outRange.Skipped++;
                backRange.Skipped++;
            }
            else
            {
                TryGroundsAndHeights(path, terrain, ends, varyStart, isBestGuess, outRange, backRange);
            }
        }
    }

    /// <summary>Tries the range of the ground under the varied end, and over each ground the range of its antenna's height.</summary>
    private void TryGroundsAndHeights(LinkPath path, TerrainProfile terrain, Ends ends, bool varyStart, bool isBestGuess, LossSpread outRange, LossSpread backRange)
    {
        Estimate startGround = EndGround.At(ends.Mosaic, terrain, ends.From, isStart: true).Metres;
        Estimate endGround = EndGround.At(ends.Mosaic, terrain, ends.To, isStart: false).Metres;
        if (isBestGuess && IsExact(varyStart ? startGround : endGround, varyStart ? ends.From : ends.To))
        {
            // Nothing to vary: the spreads begin with this loss.
            return;
        }

        LinkPath here = path with { Terrain = terrain };
        foreach (double groundMetres in EndHeight.Tries(varyStart ? startGround : endGround))
        {
            double startMetres = varyStart ? groundMetres : startGround.Median;
            double endMetres = varyStart ? endGround.Median : groundMetres;
            PathProfile profile = WithoutReplacedCover(Profile(ends.Mosaic, terrain, startMetres, endMetres), ends.FromEnd, ends.ToEnd);
            PathProfile reversed = profile.Reversed();
            Estimate from = EndHeight.AboveGround(ends.From.Height!, Estimate.Exactly(startMetres)).Metres;
            Estimate to = EndHeight.AboveGround(ends.To.Height!, Estimate.Exactly(endMetres)).Metres;
            foreach (double metres in EndHeight.Tries(varyStart ? from : to))
            {
                double start = varyStart ? metres : from.Median;
                double end = varyStart ? to.Median : metres;
                outRange.Take(PathLoss.Predict(profile, Input(ends.From, ends.To, start, end, here, isReversed: false)).LossDb);
                backRange.Take(PathLoss.Predict(reversed, Input(ends.From, ends.To, start, end, here, isReversed: true)).LossDb);
            }
        }
    }

    /// <summary>The ground between two places; a place some way off the path may need ground that the best guess does not.</summary>
    private TerrainProfile? Cut(GroundMosaic mosaic, GeoPoint start, GeoPoint end, double stepMetres)
    {
        TerrainProfile terrain = TerrainProfile.Extract(mosaic, start, end, stepMetres);
        if (!terrain.IsComplete)
        {
            terrain = TerrainProfile.Extract(ground(start, end), start, end, stepMetres);
        }

        return terrain.IsComplete ? terrain : null;
    }

    private static bool IsExact(Estimate groundMetres, LinkStation station) =>
        groundMetres.IsExact && EndHeight.AboveGround(station.Height!, groundMetres).Metres.IsExact;

    /// <summary>The input of the loss model for one direction of a path.</summary>
    /// <param name="from">The station at the path's start.</param>
    /// <param name="to">The station at the path's end.</param>
    /// <param name="fromMetres">Height of the antenna at the start above the ground, in metres.</param>
    /// <param name="toMetres">Height of the antenna at the end above the ground, in metres.</param>
    /// <param name="path">The path, from start to end.</param>
    /// <param name="isReversed">Whether the station at the end sends.</param>
    internal P1812Input Input(LinkStation from, LinkStation to, double fromMetres, double toMetres, LinkPath path, bool isReversed)
    {
        TerrainProfile terrain = path.Terrain!;
        (LinkStation sender, LinkStation receiver) = isReversed ? (to, from) : (from, to);
        return new()
        {
            FrequencyHz = settings.FrequencyHz,
            TimePercent = settings.TimePercent,
            LocationPercent = settings.LocationPercent,
            LocationSigmaDb = path.LocationDb,
            TransmitterHeightMetres = isReversed ? toMetres : fromMetres,
            ReceiverHeightMetres = isReversed ? fromMetres : toMetres,
            Polarisation = sender.Polarisation == Station.Antenna.Polarisation.Horizontal ? WavePolarisation.Horizontal : WavePolarisation.Vertical,
            RefractivityGradient = air.RefractivityGradient,
            SurfaceRefractivity = air.SurfaceRefractivity,
            PathCentreLatitudeDegrees = PathCentre.LatitudeDegrees(sender.Position.Point, receiver.Position.Point, terrain.LengthMetres),
            DistanceToCoastTransmitterMetres = isReversed ? terrain.DistanceToCoastToMetres : terrain.DistanceToCoastFromMetres,
            DistanceToCoastReceiverMetres = isReversed ? terrain.DistanceToCoastFromMetres : terrain.DistanceToCoastToMetres,
        };
    }

    /// <summary>The profile with the bare ground at its ends: over a surface model each site's own building and trees are taken out.</summary>
    private static PathProfile Profile(GroundMosaic mosaic, TerrainProfile terrain, double fromGroundMetres, double toGroundMetres) =>
        PathProfiles.From(SurfaceSites.TakeOut(terrain, mosaic, fromGroundMetres, toGroundMetres));

    private static TerrainProfile KnownGround(GroundMosaic mosaic, TerrainProfile terrain, LinkStation from, LinkStation to) => SurfaceSites.TakeOut(
        terrain,
        mosaic,
        SiteGround.Resolve(mosaic, terrain.From, from.GroundHeightMetres, from.PlanPath).HeightMetres?.Median,
        SiteGround.Resolve(mosaic, terrain.To, to.GroundHeightMetres, to.PlanPath).HeightMetres?.Median);

    private static PathProfile WithoutReplacedCover(PathProfile profile, EndLoss fromEnd, EndLoss toEnd)
    {
        profile = fromEnd.CoverTakenOutMetres > 0 ? TerminalClutter.WithoutCover(profile, PathEnd.Transmitter, fromEnd.CoverTakenOutMetres) : profile;
        return toEnd.CoverTakenOutMetres > 0 ? TerminalClutter.WithoutCover(profile, PathEnd.Receiver, toEnd.CoverTakenOutMetres) : profile;
    }

    private static PathLossRange Range(
        PathLossPrediction prediction, LossSpread range, ImmutableArray<LedgerLine> endLines, Estimate endLoss, ImmutableArray<SpreadPart> spreads)
    {
        ImmutableArray<LedgerLine> lines = [.. prediction.Lines.Concat(endLines).Select(line => line with { Value = -line.Value })];
        double places = prediction.Lines.Where(line => line.Code == "places").Sum(line => line.Value);
        return new(Estimate.Of(range.Least, prediction.LossDb, range.Most) + endLoss, lines, places) { Spreads = spreads };
    }

    private static ImmutableArray<Finding> Buried(LinkStation station, bool isBuried) => !isBuried ? [] :
    [
        new()
        {
            Code = "antenna-under-ground",
            Subject = station.FitOutPath + "/height",
            Verdict = Verdict.Fails,
            Source = "height of the ground",
            Details = ImmutableSortedDictionary<string, string>.Empty.Add("name", station.Name),
        },
    ];

    /// <summary>Both ends of a link and the ground between them.</summary>
    private sealed record Ends(LinkStation From, LinkStation To, GroundMosaic Mosaic, EndLoss FromEnd, EndLoss ToEnd);

    /// <summary>
    /// The range of a loss over what each end may be, one end at a time: what stands near one antenna has little to do with what stands
    /// near the other, so the deviations of the two ends add.
    /// </summary>
    private sealed class LossSpread(double best)
    {
        private double below;
        private double above;
        private double belowHere;
        private double aboveHere;

        public double Least => best - below;

        public double Most => best + above;

        /// <summary>How many losses the range was found from, the best guess among them.</summary>
        public int Count { get; private set; } = 1;

        public int Skipped { get; set; }

        public void Take(double lossDb)
        {
            Count++;
            belowHere = Math.Max(belowHere, best - lossDb);
            aboveHere = Math.Max(aboveHere, lossDb - best);
        }

        /// <summary>Ends the trying of one end.</summary>
        public void Close()
        {
            below += belowHere;
            above += aboveHere;
            belowHere = 0;
            aboveHere = 0;
        }
    }
}
