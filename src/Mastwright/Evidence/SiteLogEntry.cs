using System.Collections.Immutable;

namespace Mastwright.Evidence;

/// <summary>What an entry of the site log is about.</summary>
public enum SiteLogKind
{
    /// <summary>Another fit-out is in use from then on.</summary>
    FitOut,

    /// <summary>The radio got other firmware.</summary>
    Firmware,

    /// <summary>The radio got other settings.</summary>
    Settings,

    /// <summary>Something failed, or was mended.</summary>
    Fault,

    /// <summary>Weather that a record may show: storm, ice, a ducting night.</summary>
    Weather,
}

/// <summary>One dated entry of a network's site log: what was changed or happened at a site, and when.</summary>
public sealed record SiteLogEntry
{
    /// <summary>Its number in the network's log, from 1 in the order of writing; 0 before it is written.</summary>
    public long Number { get; init; }

    /// <summary>When it happened, in whole microseconds since 1970-01-01T00:00:00 UTC.</summary>
    public required long TimeMicroseconds { get; init; }

    /// <summary>The site's key in the plan.</summary>
    /// <exception cref="ArgumentException">The key is empty.</exception>
    public required string Site { get; init => field = EvidenceDoor.NotEmpty(value); }

    /// <summary>What it is about.</summary>
    public required SiteLogKind Kind { get; init; }

    /// <summary>The key of the fit-out that is in use from then on; null where the entry says none.</summary>
    public string? FitOut { get; init; }

    /// <summary>What was done or seen, in the keeper's words.</summary>
    public required string Text { get; init; }

    /// <summary>What is attached: settings as the radio gave them, a picture, a note.</summary>
    public ImmutableArray<LogAttachment> Attachments { get; init; } = [];
}

/// <summary>A file attached to an entry.</summary>
/// <param name="Name">Its name when it was attached, without a folder.</param>
/// <param name="Sha256">SHA-256 of its content (FIPS 180-4), 64 lower-case hexadecimal digits.</param>
public sealed record LogAttachment(string Name, string Sha256);

/// <summary>A period from one time up to but without another, in microseconds since 1970 UTC.</summary>
/// <param name="FromMicroseconds">Its first microsecond; the least there is where it has no beginning.</param>
/// <param name="ToMicroseconds">The first after it; the greatest there is where it has no end.</param>
public readonly record struct LogPeriod(long FromMicroseconds, long ToMicroseconds);
