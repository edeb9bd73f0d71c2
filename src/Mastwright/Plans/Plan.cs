using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Earthing;
using Mastwright.Station.Exposure;
using Mastwright.Station.Feed;
using Mastwright.Station.Hazards;
using Mastwright.Station.Mast;
using Mastwright.Station.Radio;
using Mastwright.Station.Rules;
using Mastwright.Station.Sun;
using Mastwright.Station.Supply;
using Mastwright.Station.Wind;

namespace Mastwright.Plans;

/// <summary>A plan: ground, air, modem setting, sites with their fit-outs, neighbours.</summary>
/// <remarks>A null or an empty value is what the plan does not give; the assessment lists each default that it then uses.</remarks>
public sealed record Plan
{
    /// <summary>Name of the plan.</summary>
    public required string Name { get; init; }

    /// <summary>Region whose rules apply, as the plan writes it; empty when it does not.</summary>
    public string Region { get; init; } = "";

    /// <summary>Catalogue files of the keeper's own, relative to the plan: a later file's rows replace an earlier one's.</summary>
    public ImmutableArray<string> CatalogueFiles { get; init; } = [];

    /// <summary>Height sources in the plan's order.</summary>
    public ImmutableArray<HeightSource> Heights { get; init; } = [];

    /// <summary>Cover sources in the plan's order.</summary>
    public ImmutableArray<CoverSource> Covers { get; init; } = [];

    /// <summary>The air.</summary>
    public AirPlan Air { get; init; } = new();

    /// <summary>Corrections of the prediction that were fitted to measurements, in the plan's order.</summary>
    public ImmutableArray<AdoptedCorrection> Corrections { get; init; } = [];

    /// <summary>Key of the correction that predictions use; empty for none.</summary>
    public string CorrectionInUse { get; init; } = "";

    /// <summary>The modem setting that every station uses.</summary>
    public required ModemSetting Modem { get; init; }

    /// <summary>What a station sends where its site does not say.</summary>
    public TrafficRate Traffic { get; init; } = new();

    /// <summary>How stations pass on what they hear.</summary>
    public RelayRules Relaying { get; init; } = new();

    /// <summary>The basic wind, for every site that has none of its own; null when not given.</summary>
    public BasicWind? Wind { get; init; }

    /// <summary>What is wanted of a link.</summary>
    public WantedPlan Wanted { get; init; } = new();

    /// <summary>Spreads of the prediction.</summary>
    public SpreadPlan Spread { get; init; } = new();

    /// <summary>Own sites, in the plan's order.</summary>
    public ImmutableArray<Site> Sites { get; init; } = [];

    /// <summary>Other stations, own or somebody else's, in the plan's order.</summary>
    public ImmutableArray<Neighbour> Neighbours { get; init; } = [];

    /// <summary>Pairs of keys that the keeper wants a verdict on; empty: every pair with at least one own site.</summary>
    public ImmutableArray<WantedLink> Links { get; init; } = [];
}

/// <summary>The air as the plan gives it.</summary>
public sealed record AirPlan
{
    /// <summary>Mean fall of refractivity in the lowest kilometre, ΔN in N-units/km (positive); null when not given.</summary>
    public double? RefractivityGradient { get; init; }

    /// <summary>Sea-level surface refractivity N0 in N-units; null when not given.</summary>
    public double? SurfaceRefractivity { get; init; }

    /// <summary>Effective-earth factor of the worst air to plan for; null when not given.</summary>
    public double? LowKFactor { get; init; }

    /// <summary>External noise as a figure in dB above kT0B; null when not given.</summary>
    public double? ExternalNoiseFigureDb { get; init; }

    /// <summary>Surroundings whose man-made noise ITU-R P.372 gives, where no figure is given; null when not given.</summary>
    public NoiseEnvironment? NoiseEnvironment { get; init; }

    /// <summary>Folder of the digital maps of ITU-R P.1812, relative to the plan; empty when not given.</summary>
    public string MapFolder { get; init; } = "";
}

/// <summary>What is wanted of a link.</summary>
public sealed record WantedPlan
{
    /// <summary>Margin in dB below which a link is tight; null when not given.</summary>
    public double? MarginDb { get; init; }

    /// <summary>Time percentage of the prediction, 1 to 50; null when not given.</summary>
    public double? TimePercent { get; init; }

    /// <summary>Location percentage of the prediction, 1 to 99; null when not given.</summary>
    public double? LocationPercent { get; init; }
}

/// <summary>Spreads: what is not known about a link, and what varies from packet to packet.</summary>
public sealed record SpreadPlan
{
    /// <summary>Standard deviation of the prediction's own error in dB; null when not given.</summary>
    public double? ModelErrorDb { get; init; }

    /// <summary>Standard deviation of location variability in dB; null when not given.</summary>
    public double? LocationDb { get; init; }

    /// <summary>Standard deviation of fading from packet to packet in dB; null when not given.</summary>
    public double? FadingDb { get; init; }
}

/// <summary>A pair of stations by their keys.</summary>
/// <param name="From">Key of a site or neighbour.</param>
/// <param name="To">Key of a site or neighbour.</param>
/// <param name="PlanPath">Where in the plan it stands.</param>
public sealed record WantedLink(string From, string To, string PlanPath);

/// <summary>A place of one's own with one or more complete alternatives of what stands there.</summary>
public sealed record Site
{
    /// <summary>Key in the plan: its identity.</summary>
    public required string Key { get; init; }

    /// <summary>Earlier keys.</summary>
    public ImmutableArray<string> Formerly { get; init; } = [];

    /// <summary>Addresses that records know it by; its key and earlier keys count too.</summary>
    public ImmutableArray<StationAddress> Addresses { get; init; } = [];

    /// <summary>Name to speak of it by.</summary>
    public required string Name { get; init; }

    /// <summary>Where it is.</summary>
    public required LocatedPoint Position { get; init; }

    /// <summary>Height of the bare ground in metres above sea level, where the plan gives it.</summary>
    public Estimate? GroundHeightMetres { get; init; }

    /// <summary>Distance to trees or buildings that stand close, their height and width, where the plan gives them (ITU-R P.2108, P.833).</summary>
    public Surroundings Surroundings { get; init; } = new();

    /// <summary>What the station sends; null where the plan's own traffic stands for it.</summary>
    public TrafficRate? Traffic { get; init; }

    /// <summary>The wind at this site; null where the plan's stands for it.</summary>
    public BasicWind? Wind { get; init; }

    /// <summary>A year of weather at this site; null when the plan names none.</summary>
    public WeatherYear? Weather { get; init; }

    /// <summary>The months' means in place of a year; null when the plan gives none.</summary>
    public MonthlyClimate? Climate { get; init; }

    /// <summary>What can hurt someone at this site; null when nobody said.</summary>
    public SiteHazards? Hazards { get; init; }

    /// <summary>Key of the fit-out in use; empty when the site has none (a trial site).</summary>
    public string InUse { get; init; } = "";

    /// <summary>The fit-outs, in the plan's order.</summary>
    public ImmutableArray<FitOut> FitOuts { get; init; } = [];
}

/// <summary>What stands close around an end of a link.</summary>
public sealed record Surroundings
{
    /// <summary>Height in metres of the clutter around the antenna; asks for terminal clutter loss (ITU-R P.2108 clause 3.1) in place of the profile's cover at that end.</summary>
    public Estimate? ClutterHeightMetres { get; init; }

    /// <summary>Kind of that clutter: "water", "open", "suburban", "urban", "woodland", "dense-urban".</summary>
    public string ClutterKind { get; init; } = "";

    /// <summary>Width in metres of the street or gap the antenna stands in; null for the Recommendation's 27 m.</summary>
    public double? StreetWidthMetres { get; init; }

    /// <summary>Depth in metres of woodland that the path runs through at this end (ITU-R P.833); null when not asked for.</summary>
    public double? WoodlandDepthMetres { get; init; }

    /// <summary>Kind of building around an indoor antenna: "traditional", "thermally-efficient"; empty when not given.</summary>
    public string BuildingKind { get; init; } = "";
}

/// <summary>A complete alternative of what stands at a site.</summary>
public sealed record FitOut
{
    /// <summary>Key in the plan.</summary>
    public required string Key { get; init; }

    /// <summary>Name to speak of it by.</summary>
    public required string Name { get; init; }

    /// <summary>The antenna as mounted.</summary>
    public required AntennaFit Antenna { get; init; }

    /// <summary>The feed from radio to antenna, in that order.</summary>
    public ImmutableArray<FeedPart> Feed { get; init; } = [];

    /// <summary>A return loss that was measured or stated.</summary>
    public MismatchReading? Mismatch { get; init; }

    /// <summary>The radio.</summary>
    public RadioUnit Radio { get; init; } = new();

    /// <summary>How near people come to the antenna.</summary>
    public PeopleNear People { get; init; } = new();

    /// <summary>Transmitters of others near the receiver.</summary>
    public ImmutableArray<NearbyTransmitter> NearbyTransmitters { get; init; } = [];

    /// <summary>The supply from the source of the power to the loads, in that order; empty when not given.</summary>
    public ImmutableArray<SupplyPart> Supply { get; init; } = [];

    /// <summary>The box.</summary>
    public BoxFit Box { get; init; } = new();

    /// <summary>The panel that charges the supply's battery; null when nobody said.</summary>
    public SolarFit? Solar { get; init; }

    /// <summary>What the antenna stands on; null when nobody said.</summary>
    public MastFit? Mast { get; init; }

    /// <summary>What can hurt someone, with the site's values where the fit-out has none of its own; null where the site's stand for it.</summary>
    public SiteHazards? Hazards { get; init; }

    /// <summary>Earth, lightning, surge protection; null when nobody said.</summary>
    public EarthingFit? Earthing { get; init; }
}

/// <summary>Somebody's transmitter close to the station.</summary>
/// <param name="Key">Key in the plan.</param>
/// <param name="FrequencyHz">Its frequency in hertz.</param>
/// <param name="EirpDbm">Its radiated power, EIRP in dBm.</param>
/// <param name="DistanceMetres">Its distance from the antenna in metres, greater than zero.</param>
public sealed record NearbyTransmitter(string Key, double FrequencyHz, double EirpDbm, double DistanceMetres);

/// <summary>Another station, of which less is known.</summary>
public sealed record Neighbour
{
    /// <summary>Key in the plan.</summary>
    public required string Key { get; init; }

    /// <summary>Earlier keys.</summary>
    public ImmutableArray<string> Formerly { get; init; } = [];

    /// <summary>Addresses that records know it by; its key and earlier keys count too.</summary>
    public ImmutableArray<StationAddress> Addresses { get; init; } = [];

    /// <summary>Name to speak of it by.</summary>
    public required string Name { get; init; }

    /// <summary>Whether it belongs to the keeper of the plan.</summary>
    public bool Own { get; init; }

    /// <summary>Where it is.</summary>
    public required LocatedPoint Position { get; init; }

    /// <summary>Height of the bare ground in metres above sea level, where the plan gives it.</summary>
    public Estimate? GroundHeightMetres { get; init; }

    /// <summary>What stands close around it.</summary>
    public Surroundings Surroundings { get; init; } = new();

    /// <summary>Height of its antenna; null when unknown.</summary>
    public MountHeight? Height { get; init; }

    /// <summary>Gain of its antenna after its feed, in dBi; null when unknown.</summary>
    public Estimate? GainDbi { get; init; }

    /// <summary>Power into its antenna, in dBm; null when unknown.</summary>
    public Estimate? PowerDbm { get; init; }

    /// <summary>Noise figure of its receiver, in dB; null when unknown.</summary>
    public Estimate? NoiseFigureDb { get; init; }

    /// <summary>Polarisation of its antenna.</summary>
    public Polarisation Polarisation { get; init; }

    /// <summary>Time in seconds from one packet of its own to the next, where it sends at a fixed interval and at no other time; null when unknown.</summary>
    public double? SendsEverySeconds { get; init; }
}
