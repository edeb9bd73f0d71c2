using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Station.Radio;

namespace Mastwright.Station.Rules;

/// <summary>The frequencies that a station takes: its occupied bandwidth, widened by what its carrier may be off.</summary>
/// <remarks>
/// Occupied bandwidth as the plan measured it, else the modem's bandwidth for chirp spread spectrum and twice the bit rate for
/// frequency-shift keying (Carson's rule at a modulation index of 1), listed as assumed. A frequency error that nobody gave is taken
/// as 50 ppm, an uncompensated crystal over outdoor temperatures (common practice).
/// </remarks>
public sealed record OccupiedBand
{
    /// <summary>Frequency error in parts per million that is assumed where none is known.</summary>
    public const double AssumedPartsPerMillion = 50;

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

    /// <summary>How far the highest carrier may be off either way, in hertz.</summary>
    public required double ErrorHz { get; init; }

    /// <summary>Whether the error is assumed.</summary>
    public bool ErrorAssumed { get; init; }

    /// <summary>How far in hertz an edge may be moved by what is only assumed.</summary>
    public double VagueHz => (ErrorAssumed ? ErrorHz : 0) + (WidthAssumed ? AssumedWidthShare * WidthHz : 0);

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
    public static OccupiedBand Of(ModemSetting modem, RadioUnit radio, string radioPath)
    {
        ArgumentNullException.ThrowIfNull(modem);
        ArgumentNullException.ThrowIfNull(radio);
        ArgumentNullException.ThrowIfNull(radioPath);
        ImmutableArray<Assumption>.Builder assumptions = ImmutableArray.CreateBuilder<Assumption>();
        if (modem.Emission.OccupiedHz is null)
        {
            assumptions.Add(modem.Modulation == Modulation.ChirpSpreadSpectrum
                ? new("occupied-bandwidth", "occupied bandwidth as wide as the modem's bandwidth", "common practice", "modem/occupied-bandwidth")
                : new("occupied-bandwidth", "occupied bandwidth of twice the bit rate", "Carson's rule at a modulation index of 1", "modem/occupied-bandwidth"));
        }

        double? known = radio.FrequencyErrorPartsPerMillion + radio.FrequencyDriftPartsPerMillion;
        if (known is null)
        {
            assumptions.Add(new(
                "carrier-error",
                string.Create(CultureInfo.InvariantCulture, $"carrier off by up to {AssumedPartsPerMillion:0} ppm over the box's temperatures"),
                "common practice",
                StationDefaults.Join(radioPath, radio.FrequencyErrorPartsPerMillion is null ? "frequency-error" : "frequency-drift")));
        }

        double highest = modem.Emission.Hopping?.HighestHz ?? modem.FrequencyHz;
        return new()
        {
            WidthHz = Width(modem),
            WidthAssumed = modem.Emission.OccupiedHz is null,
            LowestCarrierHz = modem.Emission.Hopping?.LowestHz ?? modem.FrequencyHz,
            HighestCarrierHz = highest,
            ErrorHz = (known ?? AssumedPartsPerMillion) * 1e-6 * highest,
            ErrorAssumed = known is null,
            Assumptions = assumptions.DrainToImmutable(),
        };
    }

    private static double Width(ModemSetting modem) => modem.Emission.OccupiedHz
        ?? (modem.Modulation == Modulation.ChirpSpreadSpectrum ? modem.BandwidthHz : 2 * modem.BitRate);

    private Ledger Edge(string title, double carrierHz, int sign) => new(title, "kHz",
    [
        new("carrier", "carrier", carrierHz / 1e3, "plan"),
        new("half-bandwidth", "half of the occupied bandwidth", sign * WidthHz / 2e3, WidthAssumed ? "assumed" : "plan"),
        new("frequency-error", "what the carrier may be off", sign * ErrorHz / 1e3, ErrorAssumed ? "assumed" : "plan"),
    ]);
}
