using System.CommandLine;

namespace Mastwright.Cli.Commands;

/// <summary>ground: what ground files a plan has, and fetching those it lacks.</summary>
internal static class GroundCommand
{
    internal static Command Create() => new("ground", "Look at the ground files of a plan, or fetch those that it lacks.");
}
