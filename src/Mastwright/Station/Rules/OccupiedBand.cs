using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Radio;

namespace Mastwright.Station.Rules;

/// <summary>The frequencies that a station takes: its occupied bandwidth, widened by what its carrier may be off.</summary>
/// <remarks>
/// Occupied bandwidth as the plan measured it, else the modem's bandwidth for chirp spread spectrum and twice the bit rate for
/// frequency-shift keying (Carson's rule at a modulation index of 1), listed as assumed. What the carrier may be off: <see cref="CarrierError"/>.
/// </remarks>
public sealed record OccupiedBand
{
    /// <summary>How far an assumed bandwidth may be off at each edge, as a share of itself. Common practice.</summary>
    private const double AssumedWidthShare = 0.05;

    /// <summary>Occupied bandwidth of one carrier in hertz.</summary>
    public required double WidthHz { get; init; }

    /// <summary>Whether that is assumed.</summary>
    public bool WidthAssumed { get; init; }

    /// <summary>Lowest carrier in hertz.</summary>
    public required double LowestCarrierHz { get; init; }

    /// <summary>Highest carrier in hertz: the same when the radio does not hop.</summary>
    public required double HighestCarrierHz { get; init; }

    /// <summary>What the carrier may be off, part by part.</summary>
    public required CarrierError Error { get; init; }

    /// <summary>How far the highest carrier may be off either way, in hertz.</summary>
    public double ErrorHz => Error.PartsPerMillion * 1e-6 * HighestCarrierHz;

    /// <summary>How far in hertz an edge may be moved by what is only assumed.</summary>
    public double VagueHz => (Error.AssumedPartsPerMillion * 1e-6 * HighestCarrierHz) + (WidthAssumed ? AssumedWidthShare * WidthHz : 0);

    /// <summary>What was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>Lower edge in hertz, frequency error counted.</summary>
    public double LowHz => LowestCarrierHz - (WidthHz / 2) - ErrorHz;

    /// <summary>Upper edge in hertz, frequency error counted.</summary>
    public double HighHz => HighestCarrierHz + (WidthHz / 2) + ErrorHz;

    /// <summary>How the upper edge comes about, in kHz.</summary>
    public Ledger UpperEdge => Edge("upper edge of the signal", HighestCarrierHz, 1);

    /// <summary>How the lower edge comes about, in kHz.</summary>
    public Ledger LowerEdge => Edge("lower edge of the signal", LowestCarrierHz, -1);

    /// <summary>The band that a modem setting takes with a radio.</summary>
    /// <param name="modem">The modem setting.</param>
    /// <param name="radio">The radio: its frequency error and drift.</param>
    /// <param name="radioPath">Where in the plan the radio stands.</param>
    /// <param name="boxCelsius">Temperature around the radio in °C, from coldest to hottest; null when unknown.</param>
    public static OccupiedBand Of(ModemSetting modem, RadioUnit radio, string radioPath, Estimate? boxCelsius = null)
    {
        ArgumentNullException.ThrowIfNull(modem);
        ArgumentNullException.ThrowIfNull(radio);
        ArgumentNullException.ThrowIfNull(radioPath);
        CarrierError error = CarrierError.Of(radio, radioPath, boxCelsius);
        ImmutableArray<Assumption> width = modem.Emission.OccupiedHz is not null ? [] :
        [
            modem.Modulation == Modulation.ChirpSpreadSpectrum
                ? new("occupied-bandwidth", "occupied bandwidth as wide as the modem's bandwidth", "common practice", "modem/occupied-bandwidth")
                : new("occupied-bandwidth", "occupied bandwidth of twice the bit rate", "Carson's rule at a modulation index of 1", "modem/occupied-bandwidth"),
        ];
        return new()
        {
            WidthHz = Width(modem),
            WidthAssumed = modem.Emission.OccupiedHz is null,
            LowestCarrierHz = modem.Emission.Hopping?.LowestHz ?? modem.FrequencyHz,
            HighestCarrierHz = modem.Emission.Hopping?.HighestHz ?? modem.FrequencyHz,
            Error = error,
            Assumptions = [.. width, .. error.Assumptions],
        };
    }

    private static double Width(ModemSetting modem) => modem.Emission.OccupiedHz
        ?? (modem.Modulation == Modulation.ChirpSpreadSpectrum ? modem.BandwidthHz : 2 * modem.BitRate);

    private Ledger Edge(string title, double carrierHz, int sign) => new(title, "kHz",
    [
        new("carrier", "carrier", carrierHz / 1e3, "plan"),
        new("half-bandwidth", "half of the occupied bandwidth", sign * WidthHz / 2e3, WidthAssumed ? "assumed" : "plan"),
        .. Error.Parts.Select(part => new LedgerLine(part.Code, part.Label, sign * part.PartsPerMillion * 1e-9 * HighestCarrierHz, part.IsAssumed ? "assumed" : "plan", part.Note)),
    ]);
}
