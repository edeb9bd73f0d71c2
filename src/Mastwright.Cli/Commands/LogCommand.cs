using System.CommandLine;

namespace Mastwright.Cli.Commands;

/// <summary>log: what was changed at the sites, and when.</summary>
internal static class LogCommand
{
    internal static Command Create() => new("log", "Note what was changed at your sites and when, and look it up.") { LogAddCommand.Create(), LogShowCommand.Create() };
}
