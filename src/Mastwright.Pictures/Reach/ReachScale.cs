using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>The colours of a reach map in one theme.</summary>
/// <remarks>
/// <para>
/// Margins go from sand over mauve to deep blue, on dark paper the other way: on either the last class stands out most from the ground. Lightness goes in even steps (L* about
/// 84, 66, 46, 27), so the order is read in grey and by colour-blind eyes as well. What is below the limit has no colour of its own but a hatch.
/// </para>
/// <para>Differences go from ochre (worse) over grey to blue (better): hues that stay apart for red-green and for blue-yellow blindness.</para>
/// </remarks>
public sealed record ReachScale
{
    /// <summary>The colours on light paper.</summary>
    public static ReachScale Light { get; } = new()
    {
        Classes = Inks(0xF0CF95, 0xCF91A6, 0x8560AE, 0x2B3A86),
        Differences = Inks(0x7D4A0C, 0xBF8436, 0xE3C795, 0xDBDAD6, 0xB4C6E4, 0x6289C9, 0x22458F),
        Land = Ink.Of(0xEEEAE0), Sea = Ink.Of(0xDCE9F1), Unknown = Ink.Of(0xFFFFFF), Hatch = Ink.Of(0x59616A), Coast = Ink.Of(0x4A545D),
        Outside = Ink.Of(0xFBFAF6), Shadow = Ink.Of(0x1B2430), HighLight = 0.5,
    };

    /// <summary>The colours on dark paper.</summary>
    public static ReachScale Dark { get; } = new()
    {
        Classes = Inks(0x4B4FA6, 0x8C68B4, 0xD29CB2, 0xF8E2AE),
        Differences = Inks(0xFFC27A, 0xC48A45, 0x735536, 0x464B50, 0x35537E, 0x5C93DA, 0xB4D8FF),
        Land = Ink.Of(0x2A2E31), Sea = Ink.Of(0x15242F), Unknown = Ink.Of(0x14191E), Hatch = Ink.Of(0x98A1A9), Coast = Ink.Of(0x9AA5AE),
        Outside = Ink.Of(0x14191E), Shadow = Ink.Of(0x04070A), HighLight = 0.28,
    };

    /// <summary>Ground without reach.</summary>
    public required Ink Land { get; init; }

    /// <summary>Sea without reach.</summary>
    public required Ink Sea { get; init; }

    /// <summary>Ground that nobody knows.</summary>
    public required Ink Unknown { get; init; }

    /// <summary>The hatch below the limit.</summary>
    public required Ink Hatch { get; init; }

    /// <summary>The line between land and sea.</summary>
    internal Ink Coast { get; private init; }

    /// <summary>What lies outside the radius fades into this.</summary>
    internal Ink Outside { get; private init; }

    /// <summary>What a slope away from the light darkens into.</summary>
    internal Ink Shadow { get; private init; }

    /// <summary>How far a slope into the light turns white at most, 0 to 1.</summary>
    internal double HighLight { get; private init; }

    private ImmutableArray<Ink> Classes { get; init; }

    private ImmutableArray<Ink> Differences { get; init; }

    /// <summary>The colours of a theme.</summary>
    public static ReachScale For(Theme theme) => theme == Theme.Dark ? Dark : Light;

    /// <summary>The colour of a class.</summary>
    /// <param name="index">Number of the class, 0 for the one just above the limit; one past the last has the last colour.</param>
    public Ink Of(int index) => Classes[Math.Clamp(index, 0, Classes.Length - 1)];

    /// <summary>The colour of a class of differences: see <see cref="DifferenceClasses"/>.</summary>
    /// <param name="index">0 for the worst, 6 for the best.</param>
    public Ink OfDifference(int index) => Differences[index];

    /// <summary>The ink of a pattern over a colour: light on a dark one, dark on a light one.</summary>
    internal static Ink MarksOn(Ink colour) =>
        (0.2126 * colour.Red) + (0.7152 * colour.Green) + (0.0722 * colour.Blue) < 105 ? Ink.Of(0xFBFAF6) : Ink.Of(0x101418);

    private static ImmutableArray<Ink> Inks(params ReadOnlySpan<int> inks)
    {
        ImmutableArray<Ink>.Builder all = ImmutableArray.CreateBuilder<Ink>(inks.Length);
        foreach (int ink in inks)
        {
            all.Add(Ink.Of(ink));
        }

        return all.MoveToImmutable();
    }
}
