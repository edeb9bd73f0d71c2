namespace Mastwright.Cli;

/// <summary>How this program is called where it was started, for the commands that it shows.</summary>
internal static class OwnName
{
    /// <summary>"mastwright", or what the script that started it says.</summary>
    internal static string Command { get; } = Environment.GetEnvironmentVariable("MASTWRIGHT_COMMAND") is { Length: > 0 } given ? given : "mastwright";
}
