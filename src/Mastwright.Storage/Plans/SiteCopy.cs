using System.Text;
using Mastwright.Storage.Plans.Exchange;

namespace Mastwright.Storage.Plans;

/// <summary>Adds a site to a plan with a fit-out that another site has, as it stands there: its comments come along.</summary>
public static class SiteCopy
{
    /// <summary>The text with the site added after the last; nothing that stood there is changed.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="like">Key of the site whose fit-out is copied.</param>
    /// <param name="fitOut">Key of the fit-out.</param>
    /// <param name="key">Key of the new site.</param>
    /// <param name="name">What it is called.</param>
    /// <param name="position">Its place as a plan writes it: "46.3981, -18.6700".</param>
    public static PlanTextResult Insert(PlanText plan, string like, string fitOut, string key, string name, string position)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(key);
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(position);
        BlockPlace at = BlockPlace.Of(plan, "sites");
        string path = $"sites/{like}/fit-outs/{fitOut}";
        if (at.Refusal is { } refusal)
        {
            return new(null, refusal);
        }

        PlanNode? fitOuts = plan.Root.Find("sites")?.Find(like)?.Find("fit-outs");
        PlanEntry? entry = fitOuts?.Entries.Find(one => one.Key == fitOut);
        if (entry is null)
        {
            return Refuse(plan, path, "There is no such fit-out to copy.", "a site of the plan with one of its fit-outs");
        }

        if (fitOuts!.Flow)
        {
            return Refuse(plan, path, "The fit-outs are not written with one below the other, so none can be copied as it stands.", "'fit-outs:' with its entries indented on the lines below");
        }

        if (!KeyNameShape.IsKey(key) || plan.Root.Find("sites")?.Find(key) is not null || plan.Root.Find("neighbours")?.Find(key) is not null)
        {
            return Refuse(plan, $"sites/{key}", "A new site cannot have this key.", "a key of small letters, digits and dashes that no station has yet");
        }

        string newLine = plan.Text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        string outer = new(' ', at.Indent);
        string inner = new(' ', at.Indent + 2);
        StringBuilder block = new();
        block.Append(outer).Append(key).Append(':').Append(newLine)
            .Append(inner).Append("name: ").Append(YamlScalar.Write(name)).Append(newLine)
            .Append(inner).Append("position: ").Append(position).Append(newLine)
            .Append(inner).Append("in-use: ").Append(fitOut).Append(newLine)
            .Append(inner).Append("fit-outs:").Append(newLine);
        Copy(block, plan.Text, entry, at.Indent + 4, newLine);
        string lead = at.Index > 0 && plan.Text[at.Index - 1] != '\n' ? newLine : "";
        return plan.Changed(plan.Text.Insert(at.Index, lead + at.Heading(newLine) + block));
    }

    /// <summary>The lines of an entry, moved to another indent.</summary>
    private static void Copy(StringBuilder block, string text, PlanEntry entry, int indent, string newLine)
    {
        // A block's entry has its lines to itself: what stands behind its last value, such as a brace or a remark, belongs to it.
        int end = text.IndexOf('\n', Math.Max(entry.Value.End, entry.End));
        string copied = text[entry.Start..(end < 0 ? text.Length : end)];
        int before = entry.Column - 1;
        foreach (string line in copied.Split('\n').Select((line, number) => number == 0 ? new string(' ', before) + line : line))
        {
            string clean = line.TrimEnd('\r');
            int blanks = clean.Length - clean.TrimStart(' ').Length;
            block.Append(clean.Length == blanks ? "" : new string(' ', indent) + clean[Math.Min(blanks, before)..]).Append(newLine);
        }
    }

    private static PlanTextResult Refuse(PlanText plan, string path, string message, string wanted) =>
        new(null, new() { Code = "plan-missing-key", File = plan.Source.Name, Path = path, Message = message, Wanted = wanted });
}
