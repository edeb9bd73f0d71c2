using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Supply;

/// <summary>Judgements on the parts of a supply.</summary>
internal static class SupplyFindings
{
    internal static Finding RowUnknown(string subject, string what, string key, ImmutableArray<string> known) => new()
    {
        Code = "supply-row-unknown",
        Subject = subject,
        Verdict = Verdict.Unknown,
        Details = FindingDetails.Of(
            ("what", what),
            ("type", key),
            ("near", NearestWord.Of(key, known) is { } near ? $" Did you mean '{near}'?" : ""),
            ("known", string.Join(", ", known))),
    };

    internal static Finding LoadUnknown(string subject, string name, string missing, string why) => new()
    {
        Code = "supply-load-unknown",
        Subject = subject,
        Verdict = Verdict.Unknown,
        Quantity = "power drawn",
        Unit = "W",
        Details = FindingDetails.Of(("name", name), ("missing", missing), ("why", why)),
    };

    internal static Finding WillNotStart(SupplyCollapse collapse, string moment) => new()
    {
        Code = "supply-will-not-start",
        Subject = collapse.Node.PlanPath,
        Verdict = Verdict.Fails,
        Quantity = "power wanted behind the cable",
        Unit = "W",
        Value = Estimate.Exactly(collapse.WantedWatts),
        Limit = collapse.MostWatts,
        Margin = collapse.MostWatts - collapse.WantedWatts,
        Source = "E²/(4·R), the most that a resistance lets through",
        Details = FindingDetails.Of(
            ("wanted", Text($"{collapse.WantedWatts:0.0} W")),
            ("most", Text($"{collapse.MostWatts:0.0} W")),
            ("volts", Text($"{collapse.Volts:0.#} V")),
            ("ohms", Text($"{collapse.Ohms:0.0} ohm")),
            ("moment", moment)),
    };

    internal static Finding Headroom(SupplyFeed feed, double peakWatts, double meanWatts, double lostWatts) => new()
    {
        Code = "supply-headroom",
        Subject = feed.Part.PlanPath,
        Verdict = feed.RatedWatts is not { } rated ? Verdict.Unknown : ByRating(peakWatts, rated),
        Quantity = "greatest power of the source",
        Unit = "W",
        Value = Estimate.Exactly(peakWatts),
        Limit = feed.RatedWatts,
        Margin = feed.RatedWatts - peakWatts,
        Source = feed.Class?.Source ?? feed.Part.PlanPath + "/power",
        Details = FindingDetails.Of(
            ("source", Capital(feed.Label)),
            ("peak", Watts(peakWatts)),
            ("mean", Watts(meanWatts)),
            ("lost", Watts(lostWatts)),
            ("rating", feed.RatedWatts is { } limit ? "it is rated " + Watts(limit) : "what it is rated is not given")),
    };

    internal static Finding ConverterHeadroom(ConverterNode converter, double outputWatts, double rated) => new()
    {
        Code = "converter-headroom",
        Subject = converter.PlanPath,
        Verdict = ByRating(outputWatts, rated),
        Quantity = "greatest power of the converter",
        Unit = "W",
        Value = Estimate.Exactly(outputWatts),
        Limit = rated,
        Margin = rated - outputWatts,
        Source = converter.PlanPath + "/rating",
        Details = FindingDetails.Of(("converter", Capital(converter.Label)), ("peak", Watts(outputWatts)), ("rating", Watts(rated))),
    };

    internal static Finding Voltage(SupplyNode node, double volts, double least, string source) => new()
    {
        Code = "supply-voltage",
        Subject = node.PlanPath,
        Verdict = volts < least ? Verdict.Fails : volts < least * (1 + SupplyDefaults.WantedVoltageMargin) ? Verdict.Tight : Verdict.Ok,
        Quantity = "voltage at the far end, at its peak",
        Unit = "V",
        Value = Estimate.Exactly(volts),
        Limit = least,
        Margin = volts - least,
        Source = source,
        Details = FindingDetails.Of(("name", Capital(node.Label)), ("volts", Volts(volts)), ("least", Volts(least))),
    };

    internal static Finding Overvoltage(SupplyNode node, double volts, double most, string source) => new()
    {
        Code = "supply-overvoltage",
        Subject = node.PlanPath,
        Verdict = volts > most ? Verdict.Fails : Verdict.Ok,
        Quantity = "voltage without load",
        Unit = "V",
        Value = Estimate.Exactly(volts),
        Limit = most,
        Margin = most - volts,
        Source = source,
        Details = FindingDetails.Of(("name", Capital(node.Label)), ("volts", Volts(volts)), ("most", Volts(most))),
    };

    /// <summary>A part whose input nobody described: neither too little nor too much voltage can be told.</summary>
    internal static Finding InputUnknown(SupplyNode node, double volts) => new()
    {
        Code = "supply-input-unknown",
        Subject = node.PlanPath,
        Verdict = Verdict.Unknown,
        Quantity = "voltage without load",
        Unit = "V",
        Value = Estimate.Exactly(volts),
        Details = FindingDetails.Of(("name", Capital(node.Label)), ("volts", Volts(volts))),
    };

    /// <summary>A step-down converter needs more at its input than it gives, a step-up one less.</summary>
    internal static Finding Step(ConverterNode converter, ConverterRow row, double inputVolts)
    {
        bool isDown = row.Step == ConverterStep.Down;
        double margin = isDown ? inputVolts - converter.OutputVolts : converter.OutputVolts - inputVolts;
        return new()
        {
            Code = "converter-step",
            Subject = converter.PlanPath,
            Verdict = margin <= 0 ? Verdict.Fails : margin < SupplyDefaults.WantedVoltageMargin * converter.OutputVolts ? Verdict.Tight : Verdict.Ok,
            Quantity = isDown ? "least voltage into a step-down converter" : "most voltage into a step-up converter",
            Unit = "V",
            Value = Estimate.Exactly(inputVolts),
            Limit = converter.OutputVolts,
            Margin = margin,
            Source = "catalogue " + row.Key + ": " + row.Source,
            Details = FindingDetails.Of(
                ("converter", Capital(converter.Label)),
                ("kind", row.Name),
                ("change", isDown ? "less voltage out of more" : "more voltage out of less"),
                ("output", Volts(converter.OutputVolts)),
                ("input", Volts(inputVolts) + (isDown ? " at the least" : " at the most"))),
        };
    }

    /// <summary>Whether a device stays within its class, and the cable has the pairs for it.</summary>
    /// <remarks>Four pairs for classes 5 to 8, and two for those below: IEEE 802.3-2022 clause 145 and clause 33 (from memory).</remarks>
    internal static Finding Class(SupplyFeed feed, PowerClassRow row, double deviceWatts, PowerClassRow? needed, int pairs) => new()
    {
        Code = "supply-class",
        Subject = feed.Part.PlanPath,
        Verdict = deviceWatts > row.DeviceWatts || pairs < row.Pairs ? Verdict.Fails : Verdict.Ok,
        Quantity = "greatest power of the powered device",
        Unit = "W",
        Value = Estimate.Exactly(deviceWatts),
        Limit = row.DeviceWatts,
        Margin = row.DeviceWatts - deviceWatts,
        Source = row.Source,
        Details = FindingDetails.Of(("watts", Watts(deviceWatts)), ("class", row.Key), ("limit", Watts(row.DeviceWatts)), ("needed", (needed?.Key == row.Key ? "no smaller class would do" : Needed(needed))
                + (pairs < row.Pairs ? Text($"; but {row.Key} needs {row.Pairs} pairs, and the cable carries power on {pairs}") : ""))),
    };

    internal static Finding Passive(SupplyFeed feed, double deviceWatts, PowerClassRow? needed, bool isInputUnknown) => new()
    {
        Code = "supply-passive",
        Subject = feed.Part.PlanPath,
        Verdict = isInputUnknown ? Verdict.Unknown : Verdict.Ok,
        Quantity = "greatest power at the far end of the data cable",
        Unit = "W",
        Value = Estimate.Exactly(deviceWatts),
        Source = "common practice",
        Details = FindingDetails.Of(("watts", Watts(deviceWatts)), ("volts", Volts(feed.Volts)), ("needed", Needed(needed)), ("device", isInputUnknown ? "; what the device bears is not known" : "")),
    };

    internal static Finding CableCurrent(SeriesNode node, CableRun run, double amperes, double most, string source)
    {
        double each = amperes / run.ConductorsEachWay;
        return new()
        {
            Code = "supply-cable-current",
            Subject = node.PlanPath,
            Verdict = each > most ? Verdict.Fails : each > SupplyDefaults.WantedShareOfRating * most ? Verdict.Tight : Verdict.Ok,
            Quantity = "greatest current in one conductor",
            Unit = "A",
            Value = Estimate.Exactly(each),
            Limit = most,
            Margin = most - each,
            Source = source,
            Details = FindingDetails.Of(("cable", node.Label), ("amperes", Text($"{each:0.00} A")), ("most", Text($"{most:0.00} A"))),
        };
    }

    internal static Finding CableTemperature(SeriesNode node, CableRun run, double riseKelvin, double lossWatts) => new()
    {
        Code = "supply-cable-heat",
        Subject = node.PlanPath,
        Verdict = run.Celsius + riseKelvin > run.Row.MostCelsius ? Verdict.Fails : Verdict.Ok,
        Quantity = "temperature of the cable, at its peak",
        Unit = "°C",
        Value = Estimate.Exactly(run.Celsius + riseKelvin),
        Limit = run.Row.MostCelsius,
        Margin = run.Row.MostCelsius - run.Celsius - riseKelvin,
        Source = run.Row.Source,
        Details = FindingDetails.Of(
            ("cable", Capital(node.Label)),
            ("loss", Watts(lossWatts)),
            ("rise", Text($"{riseKelvin:0.0} K")),
            ("celsius", Text($"{run.Celsius + riseKelvin:0} °C")),
            ("most", Text($"{run.Row.MostCelsius:0} °C"))),
    };

    internal static Finding Clad(SeriesNode node, CableRun run) => new()
    {
        Code = "supply-cable-clad",
        Subject = node.PlanPath,
        Verdict = Verdict.Tight,
        Source = run.Row.Source,
        Details = FindingDetails.Of(("cable", Capital(node.Label))),
    };

    /// <summary>A fuse that is there, or one to put there.</summary>
    /// <param name="node">Where it protects: a battery or a source.</param>
    /// <param name="path">Where in the plan that stands.</param>
    /// <param name="given">The fuse in the plan, in amperes; null for none.</param>
    /// <param name="peakAmperes">The greatest current.</param>
    /// <param name="cableAmperes">What the thinnest cable behind it carries; null when there is none.</param>
    internal static Finding Fuse(string node, string path, double? given, double peakAmperes, double? cableAmperes)
    {
        double least = SupplyDefaults.FuseFactor * peakAmperes;
        double? suggested = FuseSizes.For(peakAmperes);
        bool fits = suggested is { } size && size <= (cableAmperes ?? double.PositiveInfinity);
        Verdict verdict = given is { } fuse
            ? fuse > cableAmperes || fuse < peakAmperes ? Verdict.Fails : fuse < least ? Verdict.Tight : Verdict.Ok
            : fits ? Verdict.Tight : Verdict.Fails;
        return new()
        {
            Code = given is null ? "supply-fuse-missing" : "supply-fuse",
            Subject = path,
            Verdict = verdict,
            Quantity = "rating of the fuse",
            Unit = "A",
            Value = given is { } rating ? Estimate.Exactly(rating) : null,
            Limit = least,
            Margin = given - least,
            Source = "common practice",
            Details = FindingDetails.Of(
                ("where", node),
                ("given", given is { } there ? Text($"{there:0.###} A") : ""),
                ("peak", Text($"{peakAmperes:0.00} A")),
                ("least", Least(least)),
                ("cable", cableAmperes is { } carries ? Text($", and the thinnest cable behind it carries {carries:0.##} A") : ""),
                ("suggested", fits ? Text($"{suggested:0.###} A") : "none: the cable is too thin for any that carries the peak")),
        };
    }

    /// <summary>Amperes rounded up, to the thousandth where fuses come so fine: never more than the fuse that is suggested for them.</summary>
    private static string Least(double amperes) => amperes < 1
        ? Text($"{Math.Ceiling((1000 * amperes) - 1e-6) / 1000:0.00#} A")
        : Text($"{Math.Ceiling((100 * amperes) - 1e-6) / 100:0.00} A");

    private static string Needed(PowerClassRow? needed) => needed is null ? "no class gives that much" : needed.Key + " would do";

    private static Verdict ByRating(double watts, double rated) =>
        watts > rated ? Verdict.Fails : watts > SupplyDefaults.WantedShareOfRating * rated ? Verdict.Tight : Verdict.Ok;

    private static string Capital(string label) => char.ToUpperInvariant(label[0]) + label[1..];

    private static string Watts(double watts) => Text($"{watts:0.0#} W");

    private static string Volts(double volts) => Text($"{volts:0.0#} V");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
