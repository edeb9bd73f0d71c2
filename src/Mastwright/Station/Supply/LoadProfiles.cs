using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Supply;

/// <summary>Puts a load's profile together from the plan and the catalogue.</summary>
internal sealed class LoadProfiles(SupplyContext context, List<Assumption> assumptions, List<Finding> findings)
{
    /// <summary>The profile; null with a finding when something needed is not known.</summary>
    internal LoadProfile? Of(SupplyLoad load)
    {
        LoadRow? row = null;
        if (load.LoadType.Length > 0)
        {
            row = context.Catalogue.Load(load.LoadType);
            if (row is null || row.IsRadio != load.IsRadio)
            {
                string what = load.IsRadio ? "radio" : "board";
                findings.Add(SupplyFindings.RowUnknown(load.PlanPath, what, load.LoadType, [.. context.Catalogue.Loads.Where(one => one.IsRadio == load.IsRadio).Select(one => one.Key)]));
                return null;
            }
        }

        if (OutsideSettings(load, row) is { } outside)
        {
            findings.Add(outside);
            return null;
        }

        Estimate? awake = load.AwakeWatts ?? row?.AwakeWatts;
        Estimate? peak = load.PeakWatts ?? Peak(load, row);
        string name = load.Name.Length > 0 ? load.Name : row?.Name ?? (load.IsRadio ? "radio" : "board");
        if (awake is not { } awakeWatts || peak is not { } peakWatts)
        {
            string missing = awake is null ? (load.IsRadio ? "receive" : "idle") : load.IsRadio ? "transmit" : "busy";
            findings.Add(SupplyFindings.LoadUnknown(load.PlanPath, name, missing, ""));
            return null;
        }

        if (row is not null && (load.AwakeWatts is null || load.PeakWatts is null))
        {
            assumptions.Add(new("load-" + row.Key, Text($"{row.Name}: {Words(awakeWatts)} {(load.IsRadio ? "receiving" : "idle")}, {Words(peakWatts)} {(load.IsRadio ? "transmitting" : "busy")}"), row.Source, load.PlanPath));
        }

        if (load.SleepShare is null)
        {
            assumptions.Add(SupplyDefaults.Awake(load.PlanPath));
        }

        if (load.BootWatts is null && row is null)
        {
            assumptions.Add(SupplyDefaults.Boot(load.PlanPath));
        }

        double sleepShare = load.SleepShare ?? 0;
        double peakShare = Math.Min(PeakShare(load), 1 - sleepShare);
        return new()
        {
            Name = name,
            IsRadio = load.IsRadio,
            SleepWatts = load.SleepWatts ?? row?.SleepWatts ?? (sleepShare > 0 ? awakeWatts : default),
            AwakeWatts = awakeWatts,
            PeakWatts = peakWatts,
            BootWatts = load.BootWatts ?? row?.BootWatts ?? 0,
            SleepShare = sleepShare,
            PeakShare = peakShare,
            LeastVolts = load.InputVolts?.Low ?? row?.LeastVolts,
            MostVolts = load.InputVolts?.High ?? row?.MostVolts,
        };
    }

    /// <summary>Where the figures of a load come from.</summary>
    internal string SourceOf(SupplyLoad load) =>
        load is { AwakeWatts: not null, PeakWatts: not null } || context.Catalogue.Load(load.LoadType) is not { } row
            ? load.PlanPath
            : "catalogue " + row.Key + ": " + row.Source;

    /// <summary>A power setting that the row has no figure for: beyond its ends nothing says what is drawn. Null when all is well.</summary>
    private Finding? OutsideSettings(SupplyLoad load, LoadRow? row)
    {
        if (load.PeakWatts is not null || row?.TransmitWatts is not { } curve || context.ConductedPowerDbm is not { } dbm)
        {
            return null;
        }

        (double least, double most) = (curve.Points[0].X, curve.Points[^1].X);
        return dbm >= least && dbm <= most ? null : SupplyFindings.LoadUnknown(
            load.PlanPath, load.Name.Length > 0 ? load.Name : row.Name, "transmit", Text($": it is set to {dbm:0.#} dBm, and {row.Key} of the catalogue tells what it draws from {least:0.#} to {most:0.#} dBm"));
    }

    private Estimate? Peak(SupplyLoad load, LoadRow? row)
    {
        if (!load.IsRadio)
        {
            return row?.BusyWatts;
        }

        if (row?.TransmitWatts is not { } curve)
        {
            return null;
        }

        if (context.ConductedPowerDbm is { } dbm)
        {
            return Estimate.Exactly(curve.At(dbm));
        }

        double most = curve.Points[^1].X;
        assumptions.Add(SupplyDefaults.RadioPower(context.PlanPath + "/radio/power", most));
        return Estimate.Exactly(curve.At(most));
    }

    private double PeakShare(SupplyLoad load)
    {
        if (load.PeakShare is { } share)
        {
            return share;
        }

        if (load.IsRadio && context.Traffic is { } traffic)
        {
            // The mean is drawn from the battery; the busiest hour is the rules' affair.
            assumptions.AddRange(traffic.Assumptions.Where(one => !one.Code.EndsWith("-worst-hour", StringComparison.Ordinal)));
            return Math.Min(1, traffic.MeanPercent / 100);
        }

        assumptions.Add(load.IsRadio ? SupplyDefaults.Transmit(load.PlanPath) : SupplyDefaults.Busy(load.PlanPath));
        return load.IsRadio ? SupplyDefaults.TransmitShare : SupplyDefaults.BusyShare;
    }

    private static string Words(Estimate watts) => watts.IsExact ? Text($"{watts.Median:0.###} W") : Text($"{watts.Low:0.###} to {watts.High:0.###} W");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
