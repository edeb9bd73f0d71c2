using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Propagation;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.Radio;
using Mastwright.Station.Rules;
using Mastwright.Station.Sun;

namespace Mastwright.Plans;

/// <summary>Every examination that a plan is put through.</summary>
public sealed partial class Assessment
{
    private readonly Plan plan;
    private readonly StationCatalogue catalogue;
    private readonly Func<GeoPoint, GeoPoint, GroundMosaic> ground;
    private readonly RefractivityMaps? maps;
    private readonly PathSettings settings;
    private readonly ImmutableArray<Assumption> assumed;

    /// <summary>Prepares to examine a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="catalogue">Line types, losses of parts, demodulation limits.</param>
    /// <param name="ground">The ground for the path between two places; called from many threads at once.</param>
    /// <param name="maps">The maps of the air that <see cref="AirPlan.MapFolder"/> names; null when it names none.</param>
    public Assessment(Plan plan, StationCatalogue catalogue, Func<GeoPoint, GeoPoint, GroundMosaic> ground, RefractivityMaps? maps = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(catalogue);
        ArgumentNullException.ThrowIfNull(ground);
        this.plan = plan;
        this.catalogue = catalogue;
        this.ground = ground;
        this.maps = maps;
        (settings, assumed) = PathSettingsOfPlan.Of(plan);
    }

    /// <summary>What every path is computed with.</summary>
    public PathSettings Settings => settings;

    /// <summary>Examines the links of the plan.</summary>
    /// <param name="chosen">Fit-out by site key that takes the place of the one in use; empty for those in use.</param>
    /// <param name="site">Key of the one site whose links are wanted; null for all.</param>
    /// <param name="progress">Told the number of links done so far, from any thread; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public PlanReport Run(
        IReadOnlyDictionary<string, string> chosen,
        string? site = null,
        IProgress<int>? progress = null,
        CancellationToken cancellation = default)
    {
        ImmutableArray<LinkStation> stations = LinkSelection.Stations(plan, chosen);
        ImmutableArray<(LinkStation From, LinkStation To)> pairs = LinkSelection.Pairs(plan, stations, site);
        ImmutableArray<LinkStation> concerned = [.. stations.Where(station => pairs.Any(pair => pair.From == station || pair.To == station) || station.Key == site)];
        Dictionary<string, StationChainResult> chains = concerned.ToDictionary(
            station => station.Key, station => StationChains.Of(station, plan, catalogue), StringComparer.Ordinal);

        LinkReport[] links = new LinkReport[pairs.Length];
        int done = 0;
        Parallel.For(0, pairs.Length, new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            links[i] = Link(pairs[i].From, pairs[i].To, chains[pairs[i].From.Key], chains[pairs[i].To.Key]);
            progress?.Report(Interlocked.Increment(ref done));
        });

        ImmutableArray<FitOutReport> fitOuts = [.. concerned.Where(station => station.IsSite).Select(station => FitOutExaminations.Of(station, plan, chains[station.Key], catalogue, HorizonOf))];
        return new()
        {
            Plan = plan,
            Settings = settings,
            Links = [.. links],
            FitOuts = fitOuts,
            Findings =
            [
                .. OfPlan(concerned),
                .. NotCounted(stations),
                .. fitOuts.Length > 0 && RadioRules.RegionUnknown(plan.Region, catalogue.Law) is { } region ? [region] : ImmutableArray<Finding>.Empty,
                .. concerned.SelectMany(station => chains[station.Key].Findings),
                .. fitOuts.SelectMany(report => report.Examination.Findings),
            ],
            NotCounted = [.. plan.Sites.Where(place => stations.All(station => station.Key != place.Key))],
            Assumptions =
            [
                .. assumed
                    .Concat(concerned.SelectMany(station => chains[station.Key].Assumptions))
                    .Concat(links.SelectMany(link => link.Assumptions))
                    .Concat(fitOuts.SelectMany(report => report.Examination.Assumptions))
                    .Distinct(),
            ],
        };
    }

    /// <summary>Puts the fit-outs of a site side by side, each as if it were the one in use.</summary>
    /// <param name="site">Key of the site.</param>
    /// <param name="chosen">Fit-out by site key for the other sites.</param>
    /// <param name="progress">Told the number of links done so far, from any thread; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">The plan has no such site.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public FitOutComparison Compare(string site, IReadOnlyDictionary<string, string> chosen, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(chosen);
        Site own = plan.Sites.FirstOrDefault(one => one.Key == site) ?? throw new ArgumentException("The plan has no such site.", nameof(site));
        ImmutableArray<ComparedFitOut> fitOuts =
        [
            .. own.FitOuts.Select(fitOut => new ComparedFitOut(
                fitOut,
                fitOut.Key == own.InUse,
                Run(new Dictionary<string, string>(chosen, StringComparer.Ordinal) { [site] = fitOut.Key }, site, progress, cancellation),
                PartsNeeded.Of(fitOut, $"sites/{site}/fit-outs/{fitOut.Key}"))),
        ];
        return new(own, fitOuts, ComparedMeasures.Of(site, [.. fitOuts.Select(one => one.Report)]));
    }

    /// <summary>The solar year of a site's fit-out; null where it has no panel.</summary>
    /// <param name="station">A site with its fit-out.</param>
    public SolarResult? Solar(LinkStation station)
    {
        ArgumentNullException.ThrowIfNull(station);
        return station.FitOut?.Solar is null ? null : StationSolar.Of(station, StationBox.Of(station, plan, catalogue).Supply, HorizonOf);
    }

    /// <summary>Examines one link.</summary>
    public LinkReport Link(LinkStation from, LinkStation to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        return Link(from, to, StationChains.Of(from, plan, catalogue), StationChains.Of(to, plan, catalogue));
    }

    /// <summary>What is to be said of the two stations of a link and of the plan, besides what is said of the link.</summary>
    public ImmutableArray<Finding> FindingsBeside(LinkReport link)
    {
        ArgumentNullException.ThrowIfNull(link);
        return
        [
            .. OfPlan([link.From, link.To]),
            .. link.FromChain.Findings,
            .. link.ToChain.Findings,
        ];
    }

    /// <summary>Every value that was assumed for one link: for all paths of the plan, at its two stations and on its own path, each once.</summary>
    public ImmutableArray<Assumption> AssumptionsOf(LinkReport link)
    {
        ArgumentNullException.ThrowIfNull(link);
        return
        [
            .. assumed
                .Concat(link.FromChain.Assumptions)
                .Concat(link.ToChain.Assumptions)
                .Concat(link.Assumptions)
                .Distinct(),
        ];
    }

    /// <summary>Least height above ground, in metres, of the antenna of one end at which the link's weaker direction keeps the wanted margin.</summary>
    /// <param name="link">The link.</param>
    /// <param name="atStart">Whether the antenna of the first station is raised, else that of the second.</param>
    /// <returns>The height; null when none up to 200 m does, or the link could not be computed.</returns>
    /// <remarks>The gain towards the other end is kept as it is: a higher antenna sees it a little further below.</remarks>
    public double? HeightForMargin(LinkReport link, bool atStart)
    {
        ArgumentNullException.ThrowIfNull(link);
        if (link.Path is not { Profile: { } profile, Out: not null } || link.Weaker.MarginDb is not { } margin)
        {
            return null;
        }

        // Both directions share the path: what the weaker lacks is what the path must lose less.
        double wantedLoss = (link.Weaker.IsReversed ? link.Path.Back! : link.Path.Out).LossDb - (settings.Wanted.MarginDb - margin.Median);
        AdoptedCorrection? correction = CorrectionUse.For(plan, link.From, link.To);
        LinkPathSolver solver = new(settings, link.Path.Air, (start, end) => CorrectionUse.Covered(correction, ground(start, end)));
        P1812Input input = solver.Input(
            link.From, link.To, link.Path.FromHeightMetres!.Value.Median, link.Path.ToHeightMetres!.Value.Median, link.Path, isReversed: !atStart);
        return MastHeight.ForLoss(atStart ? profile : profile.Reversed(), input, wantedLoss);
    }

    /// <summary>What a reach map of a station is worked out from.</summary>
    /// <param name="station">The station.</param>
    /// <param name="receiver">Who is carried from cell to cell.</param>
    /// <param name="area">Radius and cell; <see cref="Network.Reach.ReachGrid.Problem"/> says which are possible.</param>
    /// <param name="areaGround">The ground of the area.</param>
    public ReachSetup Reach(LinkStation station, ReachReceiver receiver, ReachArea area, GroundMosaic areaGround)
    {
        ArgumentNullException.ThrowIfNull(station);
        ArgumentNullException.ThrowIfNull(receiver);
        ArgumentNullException.ThrowIfNull(areaGround);
        PathAir air = PathAir.Of(plan.Air, maps, station.Position.Point);
        AdoptedCorrection? correction = CorrectionOf(station);
        ReachSetup setup = ReachPreparation.Of(
            CorrectionUse.Filled(plan, station), receiver, StationChains.Of(station, plan, catalogue), StationChains.Of(receiver.Station, plan, catalogue), areaGround, air, settings, area, correction, !plan.Covers.IsEmpty);
        return setup with
        {
            Findings = [.. VerticalDatums.Review(plan.Heights, DatumsOfAntennas([station])), .. setup.Findings],
            Assumptions = [.. setup.Assumptions.Concat(assumed).Distinct()],
        };
    }

    /// <summary>The ground of a station's reach, under the cover of the correction that its plan uses.</summary>
    /// <param name="station">The station.</param>
    /// <param name="area">The ground as it is.</param>
    public GroundExtent ReachGround(LinkStation station, GroundExtent area)
    {
        ArgumentNullException.ThrowIfNull(station);
        ArgumentNullException.ThrowIfNull(area);
        return CorrectionUse.Covered(CorrectionOf(station), area);
    }

    /// <summary>The correction that the plan uses for a station's links with anybody; null for none.</summary>
    private AdoptedCorrection? CorrectionOf(LinkStation station) => CorrectionUse.Of(plan) is { } used && used.IsFor(station.Key) ? used : null;

    private IEnumerable<Finding> OfPlan(ImmutableArray<LinkStation> stations)
    {
        foreach (Finding finding in VerticalDatums.Review(plan.Heights, DatumsOfAntennas(stations)))
        {
            yield return finding;
        }

        if (ModemSettingCheck.BandwidthIsOffered(plan.Modem, catalogue, "modem/bandwidth") is { } bandwidth)
        {
            yield return bandwidth;
        }
    }

    /// <summary>The wanted links that are not judged because an end has no fit-out in use.</summary>
    private IEnumerable<Finding> NotCounted(ImmutableArray<LinkStation> stations)
    {
        HashSet<string> counted = [.. stations.Select(station => station.Key)];
        return
            from link in plan.Links
            let absent = new[] { link.From, link.To }.FirstOrDefault(key => !counted.Contains(key))
            where absent is not null
            select new Finding
            {
                Code = "link-not-counted",
                Subject = link.PlanPath,
                Verdict = Verdict.Unknown,
                Source = "plan",
                Details = FindingDetails.Of(("name", absent)),
            };
    }

    private static IEnumerable<string> DatumsOfAntennas(ImmutableArray<LinkStation> stations) => stations
        .Where(station => station.Height is { Above: HeightAbove.SeaLevel })
        .Select(station => station.Height!.Datum);

    private LinkReport Link(LinkStation from, LinkStation to, StationChainResult fromChain, StationChainResult toChain)
    {
        PathAir air = PathAir.Of(plan.Air, maps, from.Position.Point);
        AdoptedCorrection? correction = CorrectionUse.For(plan, from, to);
        LinkPath path = new LinkPathSolver(settings, air, (start, end) => CorrectionUse.Covered(correction, ground(start, end))).Solve(from, to);
        GeodesicSegment segment = Geodesic.Inverse(from.Position.Point, to.Position.Point);
        double bearingBack = (segment.FinalBearingDegrees + 180) % 360;
        LinkEnd fromEnd = End(from, fromChain, path.Clearance?.TransmitterElevationDegrees, segment.InitialBearingDegrees);
        LinkEnd toEnd = End(to, toChain, path.Clearance?.ReceiverElevationDegrees, bearingBack);
        Estimate polarisation = PolarisationMismatch.LossDb(from.Polarisation, to.Polarisation);
        LinkWanted wanted = settings.LocationDb is null ? settings.Wanted with { LocationDb = path.LocationDb } : settings.Wanted;
        LinkDirection outward = LinkBudget.Direction(
            fromEnd, toEnd, CorrectionUse.Corrected(correction, path.OutLoss, to.Key), polarisation, path.Missing, CorrectionUse.Corrected(correction, wanted, to.Key));
        LinkDirection back = LinkBudget.Direction(
            toEnd, fromEnd, CorrectionUse.Corrected(correction, path.BackLoss, from.Key), polarisation, path.Missing, CorrectionUse.Corrected(correction, wanted, from.Key)) with { IsReversed = true };
        return new()
        {
            From = from,
            To = to,
            FromChain = fromChain,
            ToChain = toChain,
            Segment = segment,
            Path = path,
            Out = outward,
            Back = back,
            Finding = LinkVerdict.Judge(from, to, outward, back, path, settings),
            Findings = [.. path.Findings, .. LinkFindings.Of(from, to, fromChain, toChain, path, segment, plan, catalogue)],
            Assumptions =
            [
                .. path.Assumptions,
                .. settings.LocationDb is null && path.Out is not null && correction is null ? [PlanDefaults.LocationSpread] : Array.Empty<Assumption>(),
                .. path.Out is null ? [] : CorrectionUse.Assumptions(correction, !plan.Covers.IsEmpty, from, to),
            ],
        };
    }

    private static LinkEnd End(LinkStation station, StationChainResult chain, double? elevationDegrees, double bearingDegrees)
    {
        double elevation = elevationDegrees ?? 0;
        return new()
        {
            Subject = station.Subject,
            Name = station.Name,
            PowerIntoAntennaDbm = chain.PowerIntoAntennaDbm,
            TransmitLines = chain.TransmitLedger?.Lines ?? [],
            Radiated = chain.RadiatedPower,
            GainDbi = chain.Pattern.GainDbi(elevation, bearingDegrees),
            GainSource = station.IsSite ? station.FitOutPath + "/antenna/gain" : station.PlanPath + "/gain",
            GainNote = FormattableString.Invariant($"towards {elevation:0.0}° elevation, bearing {bearingDegrees:0}°: {chain.Pattern.Form}"),
            RequiredDbm = chain.RequiredDbm,
            RequiredLedger = chain.RequiredLedger,
            MissingToSend = chain.MissingToSend,
            MissingToReceive = chain.MissingToReceive,
        };
    }

    private HorizonLine? HorizonOf(LinkStation station) => FarHorizon.Of(station.Position.Point, ground);
}
