using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>The colours of margins: from sand over mauve to deep blue, the darker the more.</summary>
/// <remarks>
/// Lightness falls in even steps (L* about 84, 66, 46, 27), so the order is read in grey and by colour-blind eyes as well. What is below the limit
/// has no colour of its own but a hatch.
/// </remarks>
public static class ReachScale
{
    private static readonly ImmutableArray<Ink> Inks = [Ink.Of(0xF0CF95), Ink.Of(0xCF91A6), Ink.Of(0x8560AE), Ink.Of(0x2B3A86)];

    /// <summary>Ground without reach.</summary>
    public static Ink Land { get; } = Ink.Of(0xEEEAE0);

    /// <summary>Sea without reach.</summary>
    public static Ink Sea { get; } = Ink.Of(0xDCE9F1);

    /// <summary>Ground that nobody knows.</summary>
    public static Ink Unknown { get; } = Ink.Of(0xFFFFFF);

    /// <summary>The hatch below the limit.</summary>
    public static Ink Hatch { get; } = Ink.Of(0x59616A);

    /// <summary>The colour of a class.</summary>
    /// <param name="index">Number of the class, 0 for the one just above the limit; one past the last has the last colour.</param>
    public static Ink Of(int index) => Inks[Math.Clamp(index, 0, Inks.Length - 1)];
}
