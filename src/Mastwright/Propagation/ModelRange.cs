using System.Collections.Immutable;
using System.Globalization;

namespace Mastwright.Propagation;

/// <summary>One input that lies outside the range for which ITU-R P.1812 is given.</summary>
/// <param name="Code">Stable name, kebab-case: "frequency", "distance", "time-percent", "location-percent", "transmitter-height", "receiver-height".</param>
/// <param name="Text">What was found and what the range is, with units.</param>
public sealed record RangeProblem(string Code, string Text)
{
    /// <summary>The text.</summary>
    public override string ToString() => Text;
}

/// <summary>The range of ITU-R P.1812.</summary>
/// <remarks>Source: Rec. ITU-R P.1812 title (frequency); the other limits from memory of sections 1 and 3.</remarks>
public static class ModelRange
{
    /// <summary>Lowest frequency, in Hz.</summary>
    public const double LowestFrequencyHz = 30e6;

    /// <summary>Highest frequency, in Hz.</summary>
    public const double HighestFrequencyHz = 6e9;

    /// <summary>Shortest path, in metres.</summary>
    public const double ShortestPathMetres = 250;

    /// <summary>Longest path, in metres.</summary>
    public const double LongestPathMetres = 3_000_000;

    /// <summary>Lowest antenna above ground, in metres.</summary>
    public const double LowestAntennaMetres = 1;

    /// <summary>Highest antenna above ground, in metres.</summary>
    public const double HighestAntennaMetres = 3000;

    /// <summary>Lists what lies outside the range; empty when nothing does.</summary>
    /// <param name="pathMetres">Length of the path in metres.</param>
    /// <param name="input">Radio and climate.</param>
    public static ImmutableArray<RangeProblem> Problems(double pathMetres, P1812Input input)
    {
        ArgumentNullException.ThrowIfNull(input);
        ImmutableArray<RangeProblem>.Builder problems = ImmutableArray.CreateBuilder<RangeProblem>();
        Check(problems, "frequency", "The frequency is", input.FrequencyHz * 1e-6, LowestFrequencyHz * 1e-6, HighestFrequencyHz * 1e-6, "MHz");
        Check(problems, "distance", "The path is", pathMetres * 1e-3, ShortestPathMetres * 1e-3, LongestPathMetres * 1e-3, "km");
        Check(problems, "time-percent", "The share of time is", input.TimePercent, 1, 50, "%", " The nearest of these is used.");
        Check(problems, "location-percent", "The share of places is", input.LocationPercent, 1, 99, "%", " The nearest of these is used.");
        Check(problems, "transmitter-height", "The transmitting antenna stands", input.TransmitterHeightMetres, LowestAntennaMetres, HighestAntennaMetres, "m above ground");
        Check(problems, "receiver-height", "The receiving antenna stands", input.ReceiverHeightMetres, LowestAntennaMetres, HighestAntennaMetres, "m above ground");
        return problems.ToImmutable();
    }

    private static void Check(ImmutableArray<RangeProblem>.Builder problems, string code, string what, double value, double low, double high, string unit, string used = "")
    {
        if (!(value >= low && value <= high))
        {
            problems.Add(new(code, string.Create(
                CultureInfo.InvariantCulture,
                $"{what} {value:0.####} {unit}; ITU-R P.1812 is given for {low:0.##} to {high:0.##} {unit}.{used}")));
        }
    }
}
