using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Plans;

/// <summary>Which budgets an element of a fit-out has a part in.</summary>
internal static class ElementLedgers
{
    internal static ImmutableArray<Ledger> Of(StationElement element, FitOutReport report) => element.Kind switch
    {
        ElementKind.Antenna => Known(report.Chain.RadiatedPower?.EirpLedger, report.Chain.RadiatedPower?.ErpLedger),
        ElementKind.Connectors or ElementKind.Line or ElementKind.Filter or ElementKind.Amplifier => Feed(report),
        ElementKind.Arrester => element.Place == ElementPlace.Mast ? Feed(report) : Supply(report),
        ElementKind.Radio => [.. Known(report.Chain.RequiredLedger, report.Chain.SensitivityLedger), .. report.Law.Ledgers, .. Voltage(report, StationElements.RadioLoad(report.Station.FitOut!.Supply))],
        ElementKind.Board => [.. Voltage(report, element.PlanPath)],
        ElementKind.Battery => [.. report.Supply.Batteries.Where(battery => battery.PlanPath == element.PlanPath).Select(battery => battery.HoldUp.Ledger)],
        ElementKind.Fork or ElementKind.Fuse or ElementKind.Converter or ElementKind.DataCable or ElementKind.PowerCable or ElementKind.Source => Supply(report),
        ElementKind.Panel => report.Solar?.Examination.Ledgers ?? [],
        ElementKind.Box => report.Box.Examination.Ledgers,
        ElementKind.Mast => report.Mast?.Examination.Ledgers ?? [],
        ElementKind.Earth => report.Earthing.Ledgers,
        ElementKind.People => report.Exposure.Ledgers,
        ElementKind.Hazards => report.Hazards.Ledgers,
        _ => [],
    };

    private static ImmutableArray<Ledger> Feed(FitOutReport report) => Known(report.Chain.TransmitLedger, report.Chain.Feed.ReceiveLedger);

    /// <summary>Where the watts go and what becomes of the volts.</summary>
    private static ImmutableArray<Ledger> Supply(FitOutReport report) => [.. report.Supply.Ledgers.Where(ledger => ledger.Unit is "W" or "V")];

    /// <summary>What becomes of the volts on the way to a load.</summary>
    private static IEnumerable<Ledger> Voltage(FitOutReport report, string? path) => report.Supply.Mean.FirstOrDefault(point => point.PlanPath == path) is { } load
        ? report.Supply.Ledgers.Where(ledger => ledger.Unit == "V" && ledger.Title.StartsWith($"voltage at {load.Label},", StringComparison.Ordinal))
        : [];

    private static ImmutableArray<Ledger> Known(params ReadOnlySpan<Ledger?> ledgers)
    {
        ImmutableArray<Ledger>.Builder known = ImmutableArray.CreateBuilder<Ledger>();
        foreach (Ledger? ledger in ledgers)
        {
            if (ledger is not null)
            {
                known.Add(ledger);
            }
        }

        return known.DrainToImmutable();
    }
}
