using System.Collections.Immutable;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station.HoldUp;
using Mastwright.Station.Supply;

namespace Mastwright.Storage.Plans;

/// <summary>What a plan's supply says that its catalogue rows, or the plan's own radio, make impossible: refused before anything is worked out.</summary>
public static class SupplyAgainstRows
{
    /// <summary>Everything that cannot be, with its place; empty when there is nothing.</summary>
    /// <param name="document">The plan.</param>
    /// <param name="rows">The rows that its parts are looked up in.</param>
    public static ImmutableArray<PlanProblem> Check(PlanDocument document, SupplyCatalogue rows)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(rows);
        return
        [
            .. from site in document.Plan.Sites
               from fitOut in site.FitOuts
               from part in Parts(fitOut.Supply)
               from problem in Of(part, fitOut.Radio.ConductedPowerDbm, rows, document.Sources)
               select problem,
        ];
    }

    private static IEnumerable<SupplyPart> Parts(ImmutableArray<SupplyPart> parts) => parts.IsDefaultOrEmpty
        ? []
        : parts.SelectMany(part => part is SupplyBranches fork ? fork.Branches.SelectMany(branch => Parts(branch.Parts)) : [part]);

    private static IEnumerable<PlanProblem> Of(SupplyPart part, Estimate? conductedDbm, SupplyCatalogue rows, PlanSources sources) => part switch
    {
        SupplyBattery battery when rows.Cell(battery.CellType) is { } cell => CutOff(battery, cell, sources),
        SupplyCable { IsData: true, Pairs: { } pairs } cable => Pairs(cable, pairs, rows, sources),
        SupplyLoad { IsRadio: true } radio => Transmit(radio, conductedDbm, sources),
        SupplyLoad board when rows.Load(board.LoadType) is { IsRadio: false } row => Busy(board, row, sources),
        _ => [],
    };

    private static IEnumerable<PlanProblem> CutOff(SupplyBattery battery, CellRow cell, PlanSources sources)
    {
        double full = cell.FullVolts * (battery.Series ?? 1);
        if (battery.CutOffVolts >= full)
        {
            yield return At(
                sources, battery.PlanPath, SupplyKeys.CutOff,
                FormattableString.Invariant($"The cut-off of {battery.CutOffVolts:0.##} V is no less than the {full:0.##} V of {battery.Series ?? 1} full {cell.Name} in series: it would never run."),
                FormattableString.Invariant($"the voltage of the whole battery at which it is switched off, from {cell.CutOffVolts * (battery.Series ?? 1):0.##} to below {full:0.##} V"));
        }
    }

    private static IEnumerable<PlanProblem> Pairs(SupplyCable cable, int pairs, SupplyCatalogue rows, PlanSources sources)
    {
        // Conductors of the plan's own have four pairs where it does not say.
        int? there = cable.Conductor is { } own ? own.CablePairs ?? 4 : rows.Cable(cable.CableType) is { IsData: true } row ? row.Pairs : null;
        if (pairs > there)
        {
            yield return At(
                sources, cable.PlanPath, SupplyKeys.Pairs,
                FormattableString.Invariant($"The power is to run on {pairs} pairs of a cable that has {there}."),
                FormattableString.Invariant($"'{SupplyKeys.Pairs.Name}' of {there} at the most, or a cable with more pairs"));
        }
    }

    private static IEnumerable<PlanProblem> Transmit(SupplyLoad radio, Estimate? conductedDbm, PlanSources sources)
    {
        if (conductedDbm is { } dbm && radio.PeakWatts is { } drawn && Math.Pow(10, (dbm.Low - 30) / 10) is var sent && drawn.High < sent)
        {
            yield return At(
                sources, radio.PlanPath, SupplyKeys.Transmit,
                FormattableString.Invariant($"It draws {drawn.High:0.###} W and sends {sent:0.###} W ({dbm.Low:0.#} dBm): no transmitter gives more than it takes."),
                FormattableString.Invariant($"more than {sent:0.###} W, measured at its input, or a smaller power of the radio"));
        }
    }

    private static IEnumerable<PlanProblem> Busy(SupplyLoad board, LoadRow row, PlanSources sources)
    {
        Estimate idle = board.AwakeWatts ?? row.AwakeWatts;
        if ((board.PeakWatts ?? row.BusyWatts) is { } busy && busy.Median < idle.Median && board.PeakWatts is null != board.AwakeWatts is null)
        {
            yield return At(
                sources, board.PlanPath, board.PeakWatts is null ? SupplyKeys.Idle : SupplyKeys.Busy,
                FormattableString.Invariant($"It draws less 'busy' ({busy.Median:0.####} W) than 'idle' ({idle.Median:0.####} W); one of the two is of the catalogue's {row.Key}."),
                "both, measured at its input");
        }
    }

    private static PlanProblem At(PlanSources sources, string part, KeyShape key, string message, string wanted)
    {
        string path = part + "/" + key.Name;
        PlanPlace place = sources.FindNearest(path);
        return new() { Code = "plan-contradiction", File = place.File, Line = place.Line, Column = place.Column, Path = path, Message = message, Wanted = wanted };
    }
}
