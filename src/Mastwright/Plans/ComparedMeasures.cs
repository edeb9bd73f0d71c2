using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Supply;

namespace Mastwright.Plans;

/// <summary>What fit-outs are compared in.</summary>
internal sealed class ComparedMeasures
{
    private readonly string _site;

    private ComparedMeasures(string site) => _site = site;

    internal static ImmutableArray<ComparedMeasure> Of(string site, ImmutableArray<PlanReport> reports) => new ComparedMeasures(site).All(reports);

    private ImmutableArray<ComparedMeasure> All(ImmutableArray<PlanReport> reports)
    {
        return
        [
            Measure("weakest-link", "weakest link's margin", "dB", BetterWhen.More, WeakestLink),
            Measure("links-kept", "links with the wanted margin", "", BetterWhen.More, LinksKept),
            Measure("feed-loss", "lost in the feed", "dB", BetterWhen.Less, report => new(FitOut(report).Chain.Feed.PassiveLossDb)),
            Measure("radiated-power", "radiated power", "dBm", BetterWhen.Neither, RadiatedPower),
            Measure("watts-drawn", "drawn (mains or battery)", "W", BetterWhen.Less, report => Watts(report, supply => supply.DrawnWatts)),
            Measure("watts-lost", "of it lost on the way", "W", BetterWhen.Less, report => Watts(report, supply => supply.LostWatts)),
            Measure("hold-up", "on battery", "h", BetterWhen.More, HoldUp),
            Measure("wind-utilisation", "mast strength used by wind", "%", BetterWhen.Less, report => new(Exactly(100 * FitOut(report).Mast?.Utilisation))),
            Measure("box-peak", "air in the box, hottest", "°C", BetterWhen.Less, BoxPeak),
            Measure("dew-hours", "dew in the box a year", "h", BetterWhen.Less, DewHours),
            Measure("mass-aloft", "mass above the bracket", "kg", BetterWhen.Less, report => new(Exactly(FitOut(report).Mast?.MassKilograms))),
        ];

        ComparedMeasure Measure(string code, string label, string unit, BetterWhen better, Func<PlanReport, ComparedValue> of) =>
            new(code, label, unit, better, [.. reports.Select(of)]);
    }

    private FitOutReport FitOut(PlanReport report) => report.FitOuts.Single(one => one.Station.Key == _site);

    private static Estimate? Exactly(double? value) => value is { } known ? Estimate.Exactly(known) : null;

    /// <summary>Watts of the ledger of mean power, with a word on where that ledger begins when it is not the mains.</summary>
    private ComparedValue Watts(PlanReport report, Func<SupplyResult, double?> of)
    {
        SupplyResult supply = FitOut(report).Supply;
        if (!supply.Starts)
        {
            return new(null, null, "does not start");
        }

        bool isBattery = FitOut(report).Station.FitOut!.Supply is [SupplyBattery, ..];
        return new(Exactly(of(supply)), null, of(supply) is null || supply.IsFromMains ? "" : isBattery ? "from the battery" : "without the source's own loss");
    }

    private ComparedValue WeakestLink(PlanReport report)
    {
        LinkReport? weakest = report.Links.Where(link => link.Weaker.MarginDb is not null).MinBy(link => link.Weaker.MarginDb!.Value.Median);
        if (weakest is null)
        {
            return new(null);
        }

        LinkStation other = weakest.From.Key == _site ? weakest.To : weakest.From;
        return new(weakest.Weaker.MarginDb, 0, other.Name);
    }

    private static ComparedValue LinksKept(PlanReport report) => report.Links.IsEmpty
        ? new(null)
        : new(Estimate.Exactly(report.Links.Count(link => link.Finding.Verdict == Verdict.Ok)), null, FormattableString.Invariant($"of {report.Links.Length}"));

    private ComparedValue RadiatedPower(PlanReport report) =>
        FitOut(report).Examination.Findings.FirstOrDefault(finding => finding.Code == "radiated-power") is { } power
            ? new(power.Value, power.Limit, power.Quantity)
            : new(null);

    /// <summary>The battery that lasts shortest; nothing at all without one.</summary>
    private ComparedValue HoldUp(PlanReport report)
    {
        FitOutReport fitOut = FitOut(report);
        return fitOut.Supply.Batteries.IsEmpty
            ? fitOut.Supply.Mean.IsEmpty ? new(null) : new(Estimate.Exactly(0), null, "no battery")
            : new(fitOut.Supply.Batteries.Select(battery => battery.HoldUp.Hours).MinBy(hours => hours.Median));
    }

    private ComparedValue BoxPeak(PlanReport report)
    {
        FitOutReport fitOut = FitOut(report);
        return fitOut.Box.InsideCelsius is { } inside
            ? new(Estimate.Exactly(inside.High))
            : fitOut.Station.FitOut!.Box.TemperatureCelsius is { } given ? new(Estimate.Exactly(given.High), null, "as the plan gives it") : new(null, null, Undescribed(fitOut));
    }

    private ComparedValue DewHours(PlanReport report)
    {
        FitOutReport fitOut = FitOut(report);
        return fitOut.Box.DewHours is { } hours ? new(hours) : new(null, null, fitOut.Box.DewLacks.Length > 0 ? "for want of " + fitOut.Box.DewLacks : Undescribed(fitOut));
    }

    private static string Undescribed(FitOutReport fitOut) => fitOut.Station.FitOut!.Box.IsDescribed ? "the box is not worked out"
        : fitOut.Station.FitOut!.Box.TemperatureCelsius is not null ? "of the box only the temperature is given" : "no box described";
}
