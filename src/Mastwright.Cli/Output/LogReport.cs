using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Evidence;
using Mastwright.Records;
using Mastwright.Records.Log;

namespace Mastwright.Cli.Output;

/// <summary>What log show answers.</summary>
internal sealed record LogReport(string Network, LogEntries Log, IReadOnlyDictionary<long, ImmutableArray<SettingsChange>> Changes)
{
    private const int MostLines = 40;

    /// <summary>As a document.</summary>
    internal string Json() => LogJson.Write(Network, Log, Changes);

    /// <summary>The name that an attachment has among all of a log: of letters, digits and a few signs, whatever its own name was.</summary>
    internal static string FileName(SiteLogEntry entry, int place)
    {
        string name = string.Concat(entry.Attachments[place].Name.Select(sign => char.IsLetterOrDigit(sign) || sign is '.' or '-' or '_' ? sign : '_'));
        return string.Create(CultureInfo.InvariantCulture, $"{entry.Number}-{place + 1}-{name}");
    }

    internal string Text()
    {
        StringBuilder text = new();
        text.Line($"Site log of network '{Network}', {Log.All.Length} {(Log.All.Length == 1 ? "entry" : "entries")}");
        foreach (SiteLogEntry entry in Log.All)
        {
            string where = entry.FitOut is null ? entry.Site : $"{entry.Site}/{entry.FitOut}";
            text.Line($"{entry.Number,5}  {UtcTime.Text(entry.TimeMicroseconds)}  {entry.Kind.Word(),-8}  {where}");
            text.Line($"       {Shown(entry.Text)}");
            foreach (LogAttachment attachment in entry.Attachments)
            {
                text.Line($"       attached: {Shown(attachment.Name)} (SHA-256 {attachment.Sha256[..12]}…)");
            }

            foreach (SettingsChange change in Changes.GetValueOrDefault(entry.Number, []))
            {
                Add(text, change);
            }
        }

        return text.ToString().TrimEnd();
    }

    private static void Add(StringBuilder text, SettingsChange change)
    {
        if (change.Lines is not { } lines)
        {
            text.Line($"       {Shown(change.Attachment.Name)} and the one of entry {change.BeforeNumber} differ; they are no texts to compare line by line");
            return;
        }

        string against = lines.IsEmpty ? "the same as in" : "changed against";
        text.Line($"       {Shown(change.Attachment.Name)}: {against} entry {change.BeforeNumber}");
        foreach (string line in lines.Take(MostLines))
        {
            text.Line($"         {Shown(line)}");
        }

        if (lines.Length > MostLines)
        {
            text.Line($"         and {lines.Length - MostLines} more lines; --json has them all");
        }
    }

    /// <summary>Without signs that would steer a terminal.</summary>
    private static string Shown(string text) => string.Concat(text.Select(sign => char.IsControl(sign) && sign != '\t' ? ' ' : sign));
}
