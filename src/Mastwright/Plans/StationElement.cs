using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Plans;

/// <summary>What an element of a fit-out is.</summary>
public enum ElementKind
{
    /// <summary>The fit-out as a whole: what is said of no single part.</summary>
    Whole,

    /// <summary>The antenna.</summary>
    Antenna,

    /// <summary>Mated pairs of connectors, or an adapter.</summary>
    Connectors,

    /// <summary>A coaxial line.</summary>
    Line,

    /// <summary>A surge arrester, in the feed or in a cable of the supply.</summary>
    Arrester,

    /// <summary>A filter or a splitter.</summary>
    Filter,

    /// <summary>An amplifier.</summary>
    Amplifier,

    /// <summary>The radio.</summary>
    Radio,

    /// <summary>A board.</summary>
    Board,

    /// <summary>Where the supply forks.</summary>
    Fork,

    /// <summary>A fuse.</summary>
    Fuse,

    /// <summary>A battery with its charger.</summary>
    Battery,

    /// <summary>A converter.</summary>
    Converter,

    /// <summary>A data cable that carries the power.</summary>
    DataCable,

    /// <summary>A cable with two cores.</summary>
    PowerCable,

    /// <summary>A source of power.</summary>
    Source,

    /// <summary>A solar panel.</summary>
    Panel,

    /// <summary>The earth.</summary>
    Earth,

    /// <summary>The mast.</summary>
    Mast,

    /// <summary>The box.</summary>
    Box,

    /// <summary>People near the antenna.</summary>
    People,

    /// <summary>What can hurt someone at the place.</summary>
    Hazards,
}

/// <summary>Where an element of a fit-out is.</summary>
public enum ElementPlace
{
    /// <summary>With no place of its own on a diagram.</summary>
    Beside,

    /// <summary>On the mast, between the antenna and the radio.</summary>
    Mast,

    /// <summary>Where the radio stands: in the box, or in a room.</summary>
    Radio,

    /// <summary>The way between there and the source of the power.</summary>
    Run,

    /// <summary>Where the power comes from.</summary>
    Source,
}

/// <summary>One element of a fit-out, with what was worked out of it.</summary>
public sealed record StationElement
{
    /// <summary>Its path below the fit-out, such as "feed/2" or "supply/6/branches/radio/1"; "whole" for the fit-out itself.</summary>
    public required string Key { get; init; }

    /// <summary>Where in the plan it stands.</summary>
    public required string PlanPath { get; init; }

    /// <summary>What it is.</summary>
    public required ElementKind Kind { get; init; }

    /// <summary>Where it is.</summary>
    public ElementPlace Place { get; init; }

    /// <summary>The line of the diagram that it stands on: 0 for the way from the antenna to the source, 1 and more for branches beside it.</summary>
    public int Lane { get; init; }

    /// <summary>What a person reads.</summary>
    public required string Label { get; init; }

    /// <summary>Its measures in a few words; may be empty.</summary>
    public string Note { get; init; } = "";

    /// <summary>What it does at work: volts, amperes, watts, or decibels; may be empty.</summary>
    public string AtWork { get; init; } = "";

    /// <summary>The budgets that it has a part in.</summary>
    public ImmutableArray<Ledger> Ledgers { get; init; } = [];

    /// <summary>The judgements on it.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>The worst of them: fails, unknown, tight, ok; null where nothing is judged.</summary>
    public Verdict? Verdict => Findings.IsEmpty ? null : Findings.Select(finding => finding.Verdict).MinBy(Rank);

    private static int Rank(Verdict verdict) => verdict switch { Mastwright.Findings.Verdict.Fails => 0, Mastwright.Findings.Verdict.Unknown => 1, Mastwright.Findings.Verdict.Tight => 2, _ => 3 };
}
