using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Station.Radio;

/// <summary>How long a packet is on the air, and of what that is made.</summary>
public sealed record AirtimeResult
{
    /// <summary>Duration of one symbol in seconds; of one bit for frequency-shift keying.</summary>
    public required double SymbolSeconds { get; init; }

    /// <summary>Symbols of preamble and synchronisation, with their fraction: bits for frequency-shift keying.</summary>
    public required double PreambleSymbols { get; init; }

    /// <summary>Duration of preamble and synchronisation in seconds.</summary>
    public required double PreambleSeconds { get; init; }

    /// <summary>Symbols of header, payload and checksum: bits for frequency-shift keying.</summary>
    public required int PayloadSymbols { get; init; }

    /// <summary>Duration of header, payload and checksum in seconds.</summary>
    public required double PayloadSeconds { get; init; }

    /// <summary>Time on air of the whole packet in seconds.</summary>
    public required double TotalSeconds { get; init; }

    /// <summary>Whether the low-data-rate rule is in force: the symbol lasts longer than 16 ms.</summary>
    public required bool LowDataRateOptimised { get; init; }

    /// <summary>Raw bit rate in bits per second: coding counted, preamble, header and low-data-rate rule not.</summary>
    public required double BitRate { get; init; }

    /// <summary>Payload bits divided by the time on air, in bits per second.</summary>
    public required double EffectiveBitRate { get; init; }

    /// <summary>The time on air in seconds, line by line.</summary>
    public required Ledger Ledger { get; init; }

    /// <summary>What was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];
}
