using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Network.Reach;
using Mastwright.Reports.Reach;

namespace Mastwright.Cli.Output;

/// <summary>Several stations on the terminal: what each serves, how many reach a place, what is missing, what was assumed.</summary>
internal static class SeveralText
{
    private const int NameWidth = 30;

    internal static void Write(SeveralReport report, ReachOptions options)
    {
        StringBuilder text = new();
        BestServers servers = report.Servers;
        BestServerLayer layer = servers.Layer(options.Direction);
        string verb = options.Direction switch { ReachDirection.Hears => "hears", ReachDirection.Both => "links", _ => "is heard" };
        text.Wrapped($"Which of {report.Setups.Length} stations {verb} best, by {report.Receiver.Name}", 0);
        text.Wrapped(string.Create(CultureInfo.InvariantCulture, $"{report.RadioText}; within {report.Area.RadiusMetres / 1000:0.##} km of each, {servers.CellCount} cells of {report.Area.CellMetres:0.##} m"), 0);
        text.Wrapped(report.MethodText(), 0);
        text.AppendLine();
        Stations(text, report, layer);
        text.AppendLine();
        Counts(text, report, layer);
        if (report.Weights is { } weights)
        {
            Weights(text, report, weights, options);
        }

        Console.Out.Write(text.ToString());
        ReachText.Notes(report.Findings, report.Assumptions);
        foreach (string file in options.Files)
        {
            Console.Out.WriteLine($"Written: {file}");
        }
    }

    private static void Stations(StringBuilder text, SeveralReport report, BestServerLayer layer)
    {
        double cell = report.Servers.CellAreaSquareMetres / 1e6;
        ImmutableArray<ServedCells> served = layer.ByStation();
        text.Line($"  {"",3} {"station",-NameWidth} {"reaches",11} {"best of all",12} {"the only one",13}");
        for (int i = 0; i < served.Length; i++)
        {
            string name = report.Stations[i].Name;
            string shown = name.Length > NameWidth ? name[..(NameWidth - 1)] + "…" : name;
            text.Line($"  {i + 1,3} {shown,-NameWidth} {served[i].Reached * cell,7:0.00} km² {served[i].Best * cell,8:0.00} km² {served[i].Only * cell,9:0.00} km²");
        }

        text.Wrapped("reaches: 0 dB and more to spare. Best of all: no other has more to spare; where two have the very same, the first of the list.", 2);
    }

    private static void Weights(StringBuilder text, SeveralReport report, ReachWeights weights, ReachOptions options)
    {
        ServedWeights shares = weights.Shares(report.Servers, options.Direction);
        text.AppendLine();
        text.Line($"  {"reached by",-18} {"weight",13} {"share",7}");
        for (int count = shares.ByCount.Length - 1; count >= 0; count--)
        {
            ReachText.Weight(text, Words(count), shares.ByCount[count], weights.Total);
        }

        ReachText.WeightsBeside(text, weights, shares.Outside, shares.WithoutGround, options);
    }

    private static string Words(int count) => count == 0 ? "no station" : count == 1 ? "1 station" : $"{count} stations";

    private static void Counts(StringBuilder text, SeveralReport report, BestServerLayer layer)
    {
        double cell = report.Servers.CellAreaSquareMetres / 1e6;
        ImmutableArray<int> counts = layer.CellsByCount(report.Servers.Flags);
        double all = counts.Sum();
        text.Line($"  {"reached by",-18} {"area",11} {"share",7}");
        for (int count = counts.Length - 1; count >= 0; count--)
        {
            text.Line($"  {Words(count),-18} {counts[count] * cell,7:0.00} km² {100 * counts[count] / all,5:0.0} %");
        }

        text.Line($"  {"one and more",-18} {counts.Skip(1).Sum() * cell,7:0.00} km² {100 * counts.Skip(1).Sum() / all,5:0.0} %   of {all * cell:0.00} km², sea included");
        int missing = report.Servers.CellCount - counts.Sum();
        int least = report.Servers.Flags.ToArray().Count(flag => (flag & ReachFlags.GroundMissing) != ReachFlags.None) - missing;
        if (missing + least > 0)
        {
            text.Wrapped(string.Create(CultureInfo.InvariantCulture, $"Of {missing * cell:0.00} km² nothing is known, for want of ground on the way from every station; over {least * cell:0.00} km² the way from some lacks ground, so more may reach them than are counted."), 2);
        }
    }
}
