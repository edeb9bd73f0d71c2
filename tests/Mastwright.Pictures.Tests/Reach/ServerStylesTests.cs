using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Reach;

namespace Mastwright.Pictures.Tests.Reach;

public sealed class ServerStylesTests
{
    /// <summary>What eyes of a kind see of linear red, green and blue: Machado, Oliveira and Fernandes, IEEE Trans. Vis. Comput. Graph. 15 (2009), severity 1.0; from memory.</summary>
    public static TheoryData<string, double[]> Eyes => new()
    {
        { "all colours", [1, 0, 0, 0, 1, 0, 0, 0, 1] },
        { "no red", [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998] },
        { "no green", [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881] },
        { "no blue", [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900] },
    };

    [Theory, MemberData(nameof(Eyes))]
    public void Any_two_colours_are_told_apart(string eye, double[] seen)
    {
        ImmutableArray<Ink> colours = ServerStyles.Colours;
        for (int i = 0; i < colours.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                Assert.True(Distance(colours[i], colours[j], seen) > 20, $"{eye}: {colours[i]} and {colours[j]}");
            }

            foreach (ReachScale scale in (ReachScale[])[ReachScale.Light, ReachScale.Dark])
            {
                Assert.True(Distance(colours[i], scale.Land, seen) > 10 && Distance(colours[i], scale.Sea, seen) > 10, $"{eye}: {colours[i]} and bare ground");
            }
        }
    }

    /// <summary>Neighbouring classes of differences, and the two ends of the scale most of all.</summary>
    [Theory, MemberData(nameof(Eyes))]
    public void Classes_of_differences_are_told_apart(string eye, double[] seen)
    {
        foreach (ReachScale scale in (ReachScale[])[ReachScale.Light, ReachScale.Dark])
        {
            for (int i = 1; i < DifferenceClasses.Count; i++)
            {
                Assert.True(Distance(scale.OfDifference(i), scale.OfDifference(i - 1), seen) > 7, $"{eye}: class {i}");
            }

            for (int i = 0; i < DifferenceClasses.Count / 2; i++)
            {
                Assert.True(Distance(scale.OfDifference(i), scale.OfDifference(DifferenceClasses.Count - 1 - i), seen) > 15, $"{eye}: class {i} and its opposite");
            }
        }
    }

    [Fact]
    public void Styles_are_all_used_before_one_comes_again_and_then_far_away()
    {
        MapStation[] row = [.. Enumerable.Range(0, 40).Select(i => new MapStation($"{i}", i + 1, 1_000 * i, 0))];
        ImmutableArray<int> styles = ServerStyles.For([.. row]);
        Assert.Equal(Enumerable.Range(0, ServerStyles.Count), styles[..ServerStyles.Count]);
        Assert.Equal([0, 1, 2, 3, 4, 5, 6, 7], styles[ServerStyles.Count..]);
    }

    [Theory]
    [InlineData(-25, 0, "worse by 20 dB and more")]
    [InlineData(-20, 1, "worse by 10 to 20 dB")]
    [InlineData(-5, 2, "worse by 3 to 10 dB")]
    [InlineData(0, 3, "the same within 3 dB")]
    [InlineData(3, 4, "better by 3 to 10 dB")]
    [InlineData(19.9, 5, "better by 10 to 20 dB")]
    [InlineData(20, 6, "better by 20 dB and more")]
    public void A_difference_is_in_its_class(double differenceDb, int index, string text)
    {
        Assert.Equal(index, DifferenceClasses.IndexOf(differenceDb));
        Assert.Equal(text, DifferenceClasses.Text(index));
    }

    private static double Distance(Ink one, Ink other, double[] seen)
    {
        (double l1, double a1, double b1) = Lab(one, seen);
        (double l2, double a2, double b2) = Lab(other, seen);
        return Math.Sqrt(((l1 - l2) * (l1 - l2)) + ((a1 - a2) * (a1 - a2)) + ((b1 - b2) * (b1 - b2)));
    }

    /// <summary>CIELAB (CIE 15) of an sRGB colour (IEC 61966-2-1) under D65.</summary>
    private static (double L, double A, double B) Lab(Ink ink, double[] seen)
    {
        double[] rgb = [Linear(ink.Red), Linear(ink.Green), Linear(ink.Blue)];
        double[] eye = [.. Enumerable.Range(0, 3).Select(i => Math.Clamp((seen[3 * i] * rgb[0]) + (seen[(3 * i) + 1] * rgb[1]) + (seen[(3 * i) + 2] * rgb[2]), 0, 1))];
        double x = ((0.4124564 * eye[0]) + (0.3575761 * eye[1]) + (0.1804375 * eye[2])) / 0.95047;
        double y = (0.2126729 * eye[0]) + (0.7151522 * eye[1]) + (0.0721750 * eye[2]);
        double z = ((0.0193339 * eye[0]) + (0.1191920 * eye[1]) + (0.9503041 * eye[2])) / 1.08883;
        return ((116 * Root(y)) - 16, 500 * (Root(x) - Root(y)), 200 * (Root(y) - Root(z)));

        static double Linear(byte value) => value / 255.0 <= 0.04045 ? value / 255.0 / 12.92 : Math.Pow(((value / 255.0) + 0.055) / 1.055, 2.4);
        static double Root(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : ((24389.0 / 27 * t) + 16) / 116;
    }
}
