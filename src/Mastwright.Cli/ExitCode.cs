namespace Mastwright.Cli;

/// <summary>What the program's exit code says.</summary>
internal static class ExitCode
{
    /// <summary>Nothing fails.</summary>
    internal const int Fine = 0;

    /// <summary>A finding fails (or is tight or unknown, where the caller asked for that to count).</summary>
    internal const int FindingFails = 1;

    /// <summary>The input is wrong: command line, plan, file.</summary>
    internal const int BadInput = 2;

    /// <summary>A fault of the program itself.</summary>
    internal const int InternalError = 3;
}
