using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Network.Reach;

/// <summary>Everything of the budget between a station and its field but the loss of the path and the station's gain towards a cell.</summary>
public sealed record ReachBudget
{
    /// <summary>The station; its gain comes from <see cref="StationPattern"/>, cell by cell.</summary>
    public required LinkEnd Station { get; init; }

    /// <summary>Gain of the station's antenna by direction; its main beam's gain is known.</summary>
    public required AntennaPattern StationPattern { get; init; }

    /// <summary>The receiver that is carried from cell to cell.</summary>
    public required LinkEnd Receiver { get; init; }

    /// <summary>What both ends add to the loss, as positive lines in dB: body, walls, clutter, polarisation.</summary>
    public ImmutableArray<LedgerLine> EndLosses { get; init; } = [];

    /// <summary>What is not known about them.</summary>
    public ImmutableArray<SpreadPart> EndSpreads { get; init; } = [];

    /// <summary>What is wanted, and the spreads to count with.</summary>
    public required LinkWanted Wanted { get; init; }

    /// <summary>The part of every loss that a location percentage other than 50 % added, in dB: the odds leave it out.</summary>
    public double LocationShiftDb { get; init; }

    /// <summary>Level in dBm at a receiver that is heard with a loss and a gain of 0 dB: what comes off it are loss and gain.</summary>
    public double HeardAtNoLossDbm => Needed(Station.PowerIntoAntennaDbm) + Needed(Receiver.GainDbi) - EndLossDb;

    /// <summary>The same for the station hearing the receiver.</summary>
    public double HearsAtNoLossDbm => Needed(Receiver.PowerIntoAntennaDbm) + Needed(Receiver.GainDbi) - EndLossDb;

    /// <summary>How much more margin the way from the station has than the way to it, in dB: the same at every cell.</summary>
    public double HeardOverHearsDb => HeardAtNoLossDbm - Needed(Receiver.RequiredDbm) - (HearsAtNoLossDbm - Needed(Station.RequiredDbm));

    /// <summary>What both ends add to the loss, in dB.</summary>
    public double EndLossDb => EndLosses.Sum(line => line.Value);

    /// <summary>The two spreads of one direction.</summary>
    /// <param name="heard">Whether the station is heard, else hears.</param>
    public LinkSpread Spread(bool heard)
    {
        (LinkEnd from, LinkEnd to) = heard ? (Station, Receiver) : (Receiver, Station);
        List<SpreadPart> unknown =
        [
            new("model-error", "Error of the prediction itself", Wanted.ModelErrorDb, Wanted.ModelErrorSource),
            new("location", "Location variability", Wanted.LocationDb, Wanted.LocationSource),
            .. EndSpreads,
        ];
        AddRange(unknown, "power-range", "Range of the power", from.PowerIntoAntennaDbm);
        AddRange(unknown, "gain-range", "Range of the station's antenna gain", StationPattern.MainBeamDbi);
        AddRange(unknown, "gain-range-to", "Range of the receiver's antenna gain", Receiver.GainDbi);
        AddRange(unknown, "required-range", "Range of the receiver's needs", to.RequiredDbm);
        return new(
            LinkSpread.InPower("What is not known about a cell", unknown),
            LinkSpread.InPower("What varies from packet to packet", [new("fading", "Fading below and above the median", Wanted.FadingDb, Wanted.FadingSource)]));
    }

    private static double Needed(Estimate? value) => value?.Median ?? double.NaN;

    /// <summary>As in a single link's budget: a range without a stated shape counts as uniform.</summary>
    private static void AddRange(List<SpreadPart> parts, string code, string label, Estimate? range)
    {
        if (range is { IsExact: false } given)
        {
            parts.Add(new(code, label, (given.High - given.Low) / Math.Sqrt(12), "plan; counted as uniform over its range"));
        }
    }
}
