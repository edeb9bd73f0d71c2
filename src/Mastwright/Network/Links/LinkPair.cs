using Mastwright.Findings;

namespace Mastwright.Network.Links;

/// <summary>Two stations of a matrix and what is between them.</summary>
/// <param name="From">Index of the first station.</param>
/// <param name="To">Index of the second station, larger than the first.</param>
/// <param name="DistanceMetres">Length of the path in metres.</param>
/// <param name="BearingDegrees">Bearing of the second from the first, from true north.</param>
/// <param name="Out">From the first to the second.</param>
/// <param name="Back">From the second to the first.</param>
public sealed record LinkPair(int From, int To, double DistanceMetres, double BearingDegrees, LinkOneWay Out, LinkOneWay Back)
{
    /// <summary>The verdict of the weaker direction: fails, unknown, tight, ok.</summary>
    public Verdict Verdict => Order(Out.Verdict) <= Order(Back.Verdict) ? Out.Verdict : Back.Verdict;

    /// <summary>The smaller of both median margins in dB; null when one is missing.</summary>
    public double? LeastMarginDb => Out.MarginDb is { } there && Back.MarginDb is { } back ? Math.Min(there.Median, back.Median) : null;

    /// <summary>The smaller of both confidences; null when one is missing.</summary>
    /// <remarks>Both directions share the path and so what is not known of it: the weaker one decides, the confidences do not multiply.</remarks>
    public double? WorksBothWays => Out.Odds is { } there && Back.Odds is { } back ? Math.Min(there.Works, back.Works) : null;

    /// <summary>Whether exactly one direction reaches the least margin of 0 dB at its best guess.</summary>
    public bool IsOneWay => Out.MarginDb is { } there && Back.MarginDb is { } back && (there.Median >= 0) != (back.Median >= 0);

    /// <summary>Indices and verdict.</summary>
    public override string ToString() => $"{From} ~ {To}: {Verdict}";

    /// <summary>Which verdict of two directions decides: the smaller number.</summary>
    internal static int Order(Verdict verdict) => verdict switch
    {
        Verdict.Fails => 0,
        Verdict.Unknown => 1,
        Verdict.Tight => 2,
        _ => 3,
    };
}
