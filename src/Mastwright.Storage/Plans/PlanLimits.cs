namespace Mastwright.Storage.Plans;

/// <summary>Bounds that keep a hostile or broken file from taking the machine: each is far above what a plan needs.</summary>
internal static class PlanLimits
{
    /// <summary>Largest plan or included file, in bytes.</summary>
    internal const int FileBytes = 16 * 1024 * 1024;

    /// <summary>Most keys, values and items in one file. A plan of 100,000 lines has some 200,000.</summary>
    internal const int Nodes = 1_000_000;

    /// <summary>Deepest nesting: the format itself needs eight.</summary>
    internal const int Depth = 16;

    /// <summary>Most files that a plan may include, one through another.</summary>
    internal const int Includes = 32;

    /// <summary>Problems that are told; the rest are counted.</summary>
    internal const int Problems = 100;

    /// <summary>Longest key that a plan chooses.</summary>
    internal const int KeyLength = 64;

    /// <summary>Longest single value, in characters.</summary>
    internal const int ValueLength = 4096;

    /// <summary>Characters of a found value that a problem repeats.</summary>
    internal const int FoundLength = 60;
}
