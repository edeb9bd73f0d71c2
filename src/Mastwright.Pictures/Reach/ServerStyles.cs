using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>How several stations are told apart on a map: eight colours, each plain or with one of three patterns.</summary>
/// <remarks>
/// Any two of the colours differ by 20 and more in CIELAB, to eyes of every kind of colour blindness too (checked in ServerStylesTests with the simulation of Machado, Oliveira and
/// Fernandes, 2009). Beyond 32 stations styles come again, each as far as may be from the stations that have it already; numbers on the map tell the rest.
/// </remarks>
public static class ServerStyles
{
    private static readonly ImmutableArray<Ink> Inks =
    [
        Ink.Of(0x3F46C8), Ink.Of(0xD7BF4A), Ink.Of(0xCF6697), Ink.Of(0x4A6244), Ink.Of(0x5590D2), Ink.Of(0x997A40), Ink.Of(0x6E3D88), Ink.Of(0x90D08C),
    ];

    private static readonly ImmutableArray<HatchKind?> Hatches = [null, HatchKind.Rising, HatchKind.Dots, HatchKind.Falling];

    /// <summary>The colours.</summary>
    public static ImmutableArray<Ink> Colours => Inks;

    /// <summary>Number of styles.</summary>
    public static int Count => Inks.Length * Hatches.Length;

    /// <summary>The style of each station, 0 to <see cref="Count"/> − 1, in the order of the stations.</summary>
    public static ImmutableArray<int> For(ImmutableArray<MapStation> stations)
    {
        int[] styles = new int[stations.Length];
        for (int i = 0; i < stations.Length; i++)
        {
            double farthest = -1;
            for (int style = 0; style < Count; style++)
            {
                double nearest = double.PositiveInfinity;
                for (int other = 0; other < i; other++)
                {
                    if (styles[other] == style)
                    {
                        nearest = Math.Min(nearest, double.Hypot(stations[other].EastingMetres - stations[i].EastingMetres, stations[other].NorthingMetres - stations[i].NorthingMetres));
                    }
                }

                if (nearest > farthest)
                {
                    (farthest, styles[i]) = (nearest, style);
                }
            }
        }

        return [.. styles];
    }

    /// <summary>The colour of a style.</summary>
    internal static Ink InkOf(int style) => Inks[style % Inks.Length];

    /// <summary>The pattern of a style; null for none.</summary>
    internal static HatchKind? HatchOf(int style) => Hatches[style / Inks.Length];
}
