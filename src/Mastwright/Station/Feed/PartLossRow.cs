using Mastwright.Quantities;

namespace Mastwright.Station.Feed;

/// <summary>The usual insertion loss of a kind of feed part: a catalogue row.</summary>
/// <param name="Key">Catalogue key: "connector", "adapter", "surge-arrester", "filter", "splitter", "amplifier-bypass".</param>
/// <param name="LossDb">Insertion loss of one, in dB, with its usual range: zero or more.</param>
/// <param name="Source">Document and clause, "from memory" or "common practice".</param>
public sealed record PartLossRow(string Key, Estimate LossDb, string Source)
{
    /// <summary>Key of the row for an amplifier in the direction that it does not amplify.</summary>
    public const string AmplifierBypass = "amplifier-bypass";

    /// <summary>Key of the row for a kind of part.</summary>
    public static string KeyOf(LossyPartKind kind) => kind switch
    {
        LossyPartKind.Connector => "connector",
        LossyPartKind.Adapter => "adapter",
        LossyPartKind.SurgeArrester => "surge-arrester",
        LossyPartKind.Filter => "filter",
        LossyPartKind.Splitter => "splitter",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of part."),
    };
}
