namespace Mastwright.Benchmarks.Soak;

/// <summary>What a soak run was asked for.</summary>
internal sealed record SoakSettings
{
    /// <summary>Folder for scratch files and for the input of a failure.</summary>
    internal required string Scratch { get; init; }

    /// <summary>Folder for the result; null to write none.</summary>
    internal string? Results { get; init; }

    /// <summary>Minutes for all campaigns together.</summary>
    internal double Minutes { get; init; }

    /// <summary>The one campaign to run; null for all.</summary>
    internal string? Campaign { get; init; }

    /// <summary>Start number of the one case to run again; null for new ones.</summary>
    internal int? Start { get; init; }

    /// <summary>Commit that is tried.</summary>
    internal string Commit { get; init; } = "unknown";
}
