using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Feed;

namespace Mastwright.Station.Radio;

/// <summary>The level at the antenna's terminals at which a packet is just received, and how it comes about.</summary>
/// <param name="LevelDbm">The level in dBm, with the range of what it is made of.</param>
/// <param name="Ledger">Its lines for the median.</param>
internal sealed record RequiredLevel(Estimate LevelDbm, Ledger Ledger)
{
    private const string Title = "level wanted at the antenna's terminals";

    /// <summary>From the noise figures of feed and receiver and the noise from outside; null when the feed's noise is unknown.</summary>
    internal static RequiredLevel? FromNoiseFigures(
        double bandwidthHz, Estimate noiseFigureDb, string noiseFigureSource, FeedResult feed,
        double externalFigureDb, string externalSource, DemodulationLimit limit)
    {
        if (feed.SystemNoiseFigureDb(noiseFigureDb) is not { } system)
        {
            return null;
        }

        Estimate combined = system.Map(figure => ExternalNoise.CombinedFigureDb(figure, externalFigureDb));
        Estimate level = combined.Map(figure => Sensitivity.Dbm(bandwidthHz, figure, limit.SnrDb));
        ImmutableArray<LedgerLine> lines =
        [
            Sensitivity.ThermalLine,
            Sensitivity.BandwidthLine(bandwidthHz),
            new("noise-figure", "receiver noise figure", noiseFigureDb.Median, noiseFigureSource),
            new("feed-noise", "feed before the receiver", system.Median - noiseFigureDb.Median, "Friis cascade",
                Text($"feed and receiver together {system.Median:0.00} dB at the antenna's terminals")),
            new("external-noise", "noise from outside", combined.Median - system.Median, externalSource,
                Text($"{externalFigureDb:0.#} dB above kT0B, added in power")),
            Sensitivity.LimitLine(limit),
        ];
        return new(level, Ledger.SummingTo(level.Median, Title, "dBm", lines));
    }

    /// <summary>From a noise floor measured at the radio's connector; null when the feed's gain is unknown.</summary>
    internal static RequiredLevel? FromMeasuredFloor(Estimate floorDbm, string source, FeedResult feed, DemodulationLimit limit)
    {
        if (feed.ReceiveGainDb is not { } gain)
        {
            return null;
        }

        Estimate level = floorDbm - gain + Estimate.Exactly(limit.SnrDb);
        ImmutableArray<LedgerLine> lines =
        [
            new("noise-floor", "noise floor measured at the radio", floorDbm.Median, source, "in the modem's bandwidth; takes the place of every computed noise"),
            new("feed", "feed, back to the antenna", -gain.Median, "feed ledger"),
            Sensitivity.LimitLine(limit),
        ];
        return new(level, Ledger.SummingTo(level.Median, Title, "dBm", lines));
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
