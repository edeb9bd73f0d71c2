using Mastwright.Findings;
using Spectre.Console;

namespace Mastwright.Cli.Output;

/// <summary>A verdict as a word with a sign and, on a terminal, a colour that colour-blind people tell apart.</summary>
internal static class VerdictText
{
    internal static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Ok => "● ok",
        Verdict.Tight => "◐ tight",
        Verdict.Fails => "✕ fails",
        _ => "? unknown",
    };

    internal static Style Style(Verdict verdict) => verdict switch
    {
        Verdict.Ok => new(Color.DeepSkyBlue3),
        Verdict.Tight => new(Color.Orange3),
        Verdict.Fails => new(Color.MediumVioletRed, decoration: Decoration.Bold),
        _ => new(Color.Grey),
    };
}
