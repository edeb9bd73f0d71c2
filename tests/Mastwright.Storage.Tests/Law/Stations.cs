using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.Feed;
using Mastwright.Station.Radio;
using Mastwright.Station.Rules;
using Mastwright.Storage.Catalogue;

namespace Mastwright.Storage.Tests.Law;

/// <summary>Invented stations held against the rows of law that ship.</summary>
internal static class Stations
{
    internal static readonly StationCatalogue Catalogue = StationCatalogueFile.LoadBuiltIn();

    internal static readonly RadioUnit Radio = new()
    {
        ConductedPowerDbm = Estimate.Exactly(14),
        FrequencyErrorPartsPerMillion = 2,
        FrequencyDriftPartsPerMillion = 2,
        ApprovedGainDbi = 5,
        ApprovedAntenna = true,
    };

    internal static readonly TrafficRate Quiet = new() { OwnMean = 1, OwnWorst = 2, RelayedMean = 1, RelayedWorst = 2 };

    internal static ModemSetting Chirp(double megahertz, double kilohertz, int factor = 10) => new()
    {
        FrequencyHz = megahertz * 1e6,
        BandwidthHz = kilohertz * 1e3,
        SpreadingFactor = factor,
        PayloadBytes = 40,
    };

    internal static RadioRulesResult Examine(string region, ModemSetting modem, RadioUnit? radio = null, double gainDbi = 2.15, TrafficRate? traffic = null, FeedPart[]? feed = null)
    {
        StationChainResult chain = StationChain.Compute(new()
        {
            PlanPath = "sites/west/fit-outs/roof",
            Antenna = new() { GainDbi = Estimate.Exactly(gainDbi), Height = new(Estimate.Exactly(5), HeightAbove.Ground) },
            Feed = [.. feed ?? []],
            Radio = radio ?? Radio,
            Modem = modem,
            Catalogue = Catalogue,
        });
        return RadioRules.Examine(new()
        {
            PlanPath = "sites/west/fit-outs/roof",
            TrafficPath = "sites/west/traffic",
            Region = Catalogue.Law.Region(region)!,
            Book = Catalogue.Law,
            Modem = modem,
            Radio = radio ?? Radio,
            Chain = chain,
            Traffic = traffic ?? Quiet,
        });
    }
}
