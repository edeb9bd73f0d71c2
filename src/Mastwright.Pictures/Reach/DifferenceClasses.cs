using System.Collections.Immutable;
using System.Globalization;

namespace Mastwright.Pictures.Reach;

/// <summary>The classes into which a picture sorts differences of margins.</summary>
public static class DifferenceClasses
{
    private static readonly ImmutableArray<double> Edges = [-20, -10, -3, 3, 10, 20];

    /// <summary>Number of classes.</summary>
    public static int Count => Edges.Length + 1;

    /// <summary>The class of a difference in dB: 0 for −20 dB and worse, 3 for less than 3 dB either way, 6 for 20 dB and better.</summary>
    public static int IndexOf(double differenceDb)
    {
        int index = 0;
        while (index < Edges.Length && differenceDb >= Edges[index])
        {
            index++;
        }

        return index;
    }

    /// <summary>The class in words.</summary>
    public static string Text(int index) => index switch
    {
        0 => "worse by 20 dB and more",
        < 3 => string.Create(CultureInfo.InvariantCulture, $"worse by {-Edges[index]:0} to {-Edges[index - 1]:0} dB"),
        3 => "the same within 3 dB",
        < 6 => string.Create(CultureInfo.InvariantCulture, $"better by {Edges[index - 1]:0} to {Edges[index]:0} dB"),
        _ => "better by 20 dB and more",
    };
}
