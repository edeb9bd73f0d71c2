using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Air;
using Mastwright.Network.Links;
using Mastwright.Plans;

namespace Mastwright.Cli.Output;

/// <summary>A day on the channel on the terminal, 80 columns wide.</summary>
internal static class AirText
{
    private const int MostStations = 20;
    private const int NameWidth = 26;

    internal static void Write(AirReport report)
    {
        AirResult result = report.Result;
        StringBuilder text = new();
        text.Wrapped(
            string.Create(CultureInfo.InvariantCulture, $"{report.Links.Plan.Name}: {result.DurationSeconds / 3600:0.##} h on the channel, {report.Links.Matrix.Stations.Length} stations, packets of {1000 * report.Settings.AirtimeSeconds:0} ms, seed {report.Settings.Seed}"), 0);
        text.Wrapped(string.Create(CultureInfo.InvariantCulture, $"{result.Made} packets made, {result.Sent} sent with those passed on, {LinkOdds.ShortPercent(Math.Min(1, result.DeliveredShare))} of what is wanted arrives"), 0);
        text.AppendLine();
        for (int hop = 0; hop < result.Hops.Length; hop++)
        {
            text.Line($"  over {hop + 1} {(hop == 0 ? "hop " : "hops")}: {result.Hops[hop].Count,9} arrive after {result.Hops[hop].MeanSeconds,6:0.00} s on average, {result.Hops[hop].MostSeconds,7:0.0} s at most");
        }

        Stations(text, report);
        Growth(text, report);
        foreach (Ledger ledger in report.Ledgers)
        {
            text.AppendLine();
            text.AppendLine(ledger.Title);
            foreach (LedgerLine line in ledger.Lines)
            {
                text.Line($"  {line.Label,-50} {line.Value,14:0.#}");
            }

            text.Line($"  {"total",-50} {ledger.Total,14:0.#} {ledger.Unit}");
        }

        text.Findings(report.Findings);
        text.Assumed(report.Assumptions);
        text.Wrapped("Every link is at its best guess here; 'hops' tells how sure they are.", 0);
        text.Wrapped(CheckText.Promise, 0);
        Console.Out.Write(text.ToString());
    }

    private static void Stations(StringBuilder text, AirReport report)
    {
        LinkMatrix matrix = report.Links.Matrix;
        AirResult result = report.Result;
        int count = matrix.Stations.Length;
        text.AppendLine();
        text.Line($"  {"station",-NameWidth} {"own",6} {"sent",7} {"on air",8} {"busy",6} {"heard by",9} {"hears",6}");
        int[] order = [.. Enumerable.Range(0, count).OrderByDescending(station => result.Stations[station].BusySeconds)];
        foreach (int station in order.Take(MostStations))
        {
            AirStation one = result.Stations[station];
            long heardBy = Enumerable.Range(0, count).Sum(other => (long)result.Delivered[(station * count) + other]);
            long hears = Enumerable.Range(0, count).Sum(other => (long)result.Delivered[(other * count) + station]);
            long others = result.Made - one.Made;
            string air = (100 * one.AirSeconds / result.DurationSeconds).ToString("0.000", CultureInfo.InvariantCulture);
            text.Line($"  {LinksText.Fit(matrix.Stations[station].Name, NameWidth),-NameWidth} {one.Made,6} {one.Sent,7} {air + " %",8} {LinkOdds.ShortPercent(one.BusySeconds / result.DurationSeconds),6} {(one.Made == 0 ? "" : Number((double)heardBy / one.Made)),9} {(others == 0 ? "" : LinkOdds.ShortPercent((double)hears / others)),6}");
        }

        if (count > MostStations)
        {
            text.Line($"  and {count - MostStations} less busy ones");
        }

        text.AppendLine();
        text.Wrapped("busy: share of the time in which it sends or hears something. heard by: stations that get one of its packets, on average. hears: share of all others' packets that it gets.", 0);
    }

    private static void Growth(StringBuilder text, AirReport report)
    {
        if (report.Growth.IsEmpty)
        {
            return;
        }

        text.AppendLine();
        text.AppendLine("With more traffic (of more stations as well, in the same places)");
        foreach (AirGrowth growth in report.Growth)
        {
            text.Line($"  {growth.Factor,5:0} times: {LinkOdds.ShortPercent(Math.Min(1, growth.DeliveredShare)),6} arrives; busy {LinkOdds.ShortPercent(growth.MostBusyShare),6} where it is busiest");
        }

        foreach (AirRemedy remedy in report.Remedies)
        {
            text.Wrapped($"  then with {remedy.Text}: {LinkOdds.ShortPercent(remedy.DeliveredShare)}", 2);
        }
    }

    private static string Number(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);
}
