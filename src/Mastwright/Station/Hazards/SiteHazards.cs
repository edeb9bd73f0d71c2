using Mastwright.Quantities;

namespace Mastwright.Station.Hazards;

/// <summary>How far one has got with a consent.</summary>
public enum Consent
{
    /// <summary>Nobody said.</summary>
    NotSaid,

    /// <summary>It was granted.</summary>
    Granted,

    /// <summary>Somebody who knows said that none is needed.</summary>
    NotNeeded,

    /// <summary>It was asked for.</summary>
    Asked,

    /// <summary>It was refused.</summary>
    Refused,
}

/// <summary>How one gets to the work.</summary>
public enum Access
{
    /// <summary>Nobody said.</summary>
    NotSaid,

    /// <summary>From the ground.</summary>
    Ground,

    /// <summary>The mast is let down for the work.</summary>
    TiltOver,

    /// <summary>A ladder.</summary>
    Ladder,

    /// <summary>Across a roof.</summary>
    Roof,

    /// <summary>A scaffold or a platform with rails.</summary>
    Scaffold,

    /// <summary>Climbing the mast.</summary>
    Climbing,
}

/// <summary>Who or what is under the mast when it falls.</summary>
public enum FallZone
{
    /// <summary>Nobody said.</summary>
    NotSaid,

    /// <summary>Ground of one's own that can be closed off.</summary>
    OwnGround,

    /// <summary>A neighbour's ground.</summary>
    Neighbour,

    /// <summary>A way or road that people use.</summary>
    PublicWay,

    /// <summary>A place where people stay.</summary>
    People,
}

/// <summary>What can hurt someone where a mast stands. What nobody said is unknown, and never taken as harmless.</summary>
public sealed record SiteHazards
{
    /// <summary>Level distance in metres from the mast's foot to the nearest overhead line, or how far was looked without seeing one; null when nobody looked.</summary>
    public Estimate? OverheadLineMetres { get; init; }

    /// <summary>Clearance in metres to overhead lines that the local rules or the network operator ask for; null when nobody asked.</summary>
    public double? LocalClearanceMetres { get; init; }

    /// <summary>Length in metres by which those who raise the mast and what they hold reach further; null for the named default.</summary>
    public double? HandlingMetres { get; init; }

    /// <summary>How one gets to the work.</summary>
    public Access Access { get; init; }

    /// <summary>Height in metres above the ground at which one works; null when nobody said.</summary>
    public double? WorkingHeightMetres { get; init; }

    /// <summary>Who or what is under the mast.</summary>
    public FallZone FallZone { get; init; }

    /// <summary>The owner of the building or ground.</summary>
    public Consent Owner { get; init; }

    /// <summary>The planning authority.</summary>
    public Consent Planning { get; init; }

    /// <summary>The airfield or aviation authority.</summary>
    public Consent Airfield { get; init; }
}
