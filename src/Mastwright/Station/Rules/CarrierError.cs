using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Radio;

namespace Mastwright.Station.Rules;

/// <summary>What the carrier of a radio may be off over the temperatures of its box, part by part.</summary>
/// <remarks>
/// The stated error at 25 °C and the stated drift are added: the worst case. What nobody stated is taken as 50 ppm, an uncompensated
/// crystal over outdoor temperatures (common practice), on top of what was stated: the whole is never less than the plan says. A drift
/// holds for the temperatures for which it was stated; where the box leaves them, another 50 ppm are assumed.
/// </remarks>
public sealed record CarrierError
{
    /// <summary>Frequency error in parts per million that is assumed for what is not known.</summary>
    public const double AssumedShare = 50;

    private static readonly string AssumedWords = string.Create(CultureInfo.InvariantCulture, $"{AssumedShare:0} ppm");

    /// <summary>The parts, in the order to read them.</summary>
    public required ImmutableArray<CarrierErrorPart> Parts { get; init; }

    /// <summary>What was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>All of it in parts per million, either way: zero or more.</summary>
    public double PartsPerMillion => Parts.Sum(part => part.PartsPerMillion);

    /// <summary>What of it is only assumed, in parts per million.</summary>
    public double AssumedPartsPerMillion => Parts.Where(part => part.IsAssumed).Sum(part => part.PartsPerMillion);

    /// <summary>The error of a radio in its box.</summary>
    /// <param name="radio">The radio.</param>
    /// <param name="radioPath">Where in the plan it stands.</param>
    /// <param name="boxCelsius">Temperature around it in °C, from coldest to hottest; null when unknown.</param>
    public static CarrierError Of(RadioUnit radio, string radioPath, Estimate? boxCelsius)
    {
        ArgumentNullException.ThrowIfNull(radio);
        ArgumentNullException.ThrowIfNull(radioPath);
        return (radio.FrequencyErrorPartsPerMillion, radio.FrequencyDriftPartsPerMillion) switch
        {
            (null, null) => new()
            {
                Parts = [new("carrier-error", "what the carrier may be off", AssumedShare, IsAssumed: true, InTheBox(boxCelsius))],
                Assumptions = [Assumed($"carrier off by up to {AssumedWords} over the box's temperatures", radioPath, "frequency-error")],
            },
            (null, { } drift) => WithDrift(
                [new("carrier-error", "what the carrier may be off at 25 °C", AssumedShare, IsAssumed: true)],
                [Assumed($"carrier off by up to {AssumedWords} at 25 °C, besides its drift", radioPath, "frequency-error")],
                drift, radio, radioPath, boxCelsius),
            ({ } error, null) => new()
            {
                Parts =
                [
                    new("carrier-error", "what the carrier may be off at 25 °C", error, IsAssumed: false),
                    new("carrier-drift", "its drift over the box's temperatures", AssumedShare, IsAssumed: true, InTheBox(boxCelsius)),
                ],
                Assumptions = [Assumed($"carrier drifting by up to {AssumedWords} over the box's temperatures, besides its error at 25 °C", radioPath, "frequency-drift")],
            },
            ({ } error, { } drift) => WithDrift([new("carrier-error", "what the carrier may be off at 25 °C", error, IsAssumed: false)], [], drift, radio, radioPath, boxCelsius),
        };
    }

    private static CarrierError WithDrift(
        ImmutableArray<CarrierErrorPart> parts, ImmutableArray<Assumption> assumptions, double drift, RadioUnit radio, string radioPath, Estimate? boxCelsius)
    {
        string holds = radio.DriftCelsius is { } range ? $"holds for {Span(range)}" : "";
        string note = string.Join("; ", new[] { InTheBox(boxCelsius), holds }.Where(said => said.Length > 0));
        parts = parts.Add(new("carrier-drift", "its drift over the box's temperatures", drift, IsAssumed: false, note));
        return (radio.DriftCelsius, boxCelsius) switch
        {
            (null, { } box) => new()
            {
                Parts = parts,
                Assumptions = assumptions.Add(Assumed($"the stated drift of the carrier holds for {Span(box)}, the box's temperatures", radioPath, "drift-temperatures")),
            },
            (null, null) => new()
            {
                Parts = parts,
                Assumptions = assumptions.Add(Assumed("the stated drift of the carrier holds for the box's temperatures, which are not known", radioPath, "drift-temperatures")),
            },
            ({ } stated, null) => new()
            {
                Parts = parts,
                Assumptions = assumptions.Add(Assumed($"the box stays within {Span(stated)}, for which the carrier's drift is stated", radioPath, "drift-temperatures")),
            },
            ({ } stated, { } box) when box.Low < stated.Low || box.High > stated.High => new()
            {
                Parts = parts.Add(new("carrier-drift-outside", "its drift where the box leaves these", AssumedShare, IsAssumed: true, $"the box has {Span(box)}")),
                Assumptions = assumptions.Add(Assumed($"carrier drifting by a further {AssumedWords} where the box leaves {Span(stated)}, for which its drift is stated", radioPath, "drift-temperatures")),
            },
            _ => new() { Parts = parts, Assumptions = assumptions },
        };
    }

    private static Assumption Assumed(string text, string radioPath, string key) => new("carrier-error", text, "common practice", StationDefaults.Join(radioPath, key));

    private static string InTheBox(Estimate? boxCelsius) => boxCelsius is { } box ? $"{Span(box)} in the box" : "";

    private static string Span(Estimate celsius) => string.Create(CultureInfo.InvariantCulture, $"{celsius.Low:0} to {celsius.High:0} °C");
}

/// <summary>One part of what a carrier may be off.</summary>
/// <param name="Code">Stable name, kebab-case.</param>
/// <param name="Label">Name in a ledger.</param>
/// <param name="PartsPerMillion">How much, either way, in parts per million: zero or more.</param>
/// <param name="IsAssumed">Whether nobody stated it.</param>
/// <param name="Note">For which temperatures; may be empty.</param>
public sealed record CarrierErrorPart(string Code, string Label, double PartsPerMillion, bool IsAssumed, string Note = "");
