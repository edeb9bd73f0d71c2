using System.CommandLine;

namespace Mastwright.Cli.Commands;

/// <summary>ground fetch.</summary>
internal static class GroundFetchCommand
{
    internal static Command Create() => new("fetch", "Download the ground files that a plan lacks.");
}
