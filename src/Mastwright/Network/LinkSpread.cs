using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Network;

/// <summary>The two spreads of a link, each as a ledger of what adds to it.</summary>
/// <remarks>
/// Spreads add in power. Each line shows the change it makes to the standard deviation so far, with its own standard deviation in
/// the note, so that the lines sum to the total.
/// </remarks>
/// <param name="Unknown">What is not known about the link: one draw, shared by all its packets. Total: standard deviation in dB.</param>
/// <param name="Fading">What varies from packet to packet. Total: standard deviation in dB.</param>
public sealed record LinkSpread(Ledger Unknown, Ledger Fading)
{
    /// <summary>Both standard deviations in dB.</summary>
    public override string ToString() =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"unknown {Unknown.Total:0.#} dB, fading {Fading.Total:0.#} dB");

    /// <summary>A ledger of standard deviations that add in power.</summary>
    public static Ledger InPower(string title, IEnumerable<SpreadPart> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        ImmutableArray<LedgerLine>.Builder lines = ImmutableArray.CreateBuilder<LedgerLine>();
        double variance = 0;
        foreach (SpreadPart part in parts)
        {
            double before = Math.Sqrt(variance);
            variance += part.DeviationDb * part.DeviationDb;
            lines.Add(new(
                part.Code,
                part.Label,
                Math.Sqrt(variance) - before,
                part.Source,
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"standard deviation {part.DeviationDb:0.##} dB, added in power")));
        }

        return Ledger.SummingTo(Math.Sqrt(variance), title, "dB", lines.ToImmutable());
    }
}

/// <summary>One contribution to a spread.</summary>
/// <param name="Code">Stable name, kebab-case.</param>
/// <param name="Label">What a person reads.</param>
/// <param name="DeviationDb">Standard deviation in dB, zero or more.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record SpreadPart(string Code, string Label, double DeviationDb, string Source);
