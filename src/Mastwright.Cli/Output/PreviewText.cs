using System.Globalization;
using System.Text;
using Mastwright.Evidence;
using Mastwright.Records;
using Mastwright.Records.Import.Proposals;

namespace Mastwright.Cli.Output;

/// <summary>The rows that a proposed mapping decodes, as text.</summary>
internal static class PreviewText
{
    private static readonly string[] Heads = ["time (UTC)", "receiver", "originator", "last sender", "level dBm", "SNR dB", "packet", "MHz", "hops"];

    internal static string Of(MappingPreview preview)
    {
        StringBuilder text = new();
        if (preview.Problem.Length > 0)
        {
            text.Line($"Not to be used as it is: {preview.Problem}");
            return text.ToString().TrimEnd();
        }

        text.Line($"{preview.Rows} rows looked at; the first records by this mapping:");
        string[][] rows = [Heads, .. preview.Records.Select(Cells)];
        int[] widths = [.. Heads.Select((_, column) => rows.Max(row => row[column].Length))];
        foreach (string[] row in rows)
        {
            text.Line($"  {string.Join("  ", row.Select((cell, column) => cell.PadRight(widths[column]))).TrimEnd()}");
        }

        foreach ((string reason, long count) in preview.Rejected)
        {
            text.Line($"{count} rows are no records: {reason}");
        }

        return text.ToString().TrimEnd();
    }

    private static string[] Cells(ReceptionRecord record) =>
    [
        UtcTime.Text(record.TimeMicroseconds), Plain(record.Receiver), Plain(record.Originator), Plain(record.LastSender), Number(record.LevelDbm), Number(record.SnrDb),
        Plain(record.PacketId), Number(record.FrequencyHz / 1e6), Number(record.HopsTaken),
    ];

    private static string Number(double? value) => value?.ToString("0.###", CultureInfo.InvariantCulture) ?? "-";

    private static string Plain(string? text) => text is null ? "-" : string.Concat(text.Take(24).Select(sign => char.IsControl(sign) ? ' ' : sign));
}
