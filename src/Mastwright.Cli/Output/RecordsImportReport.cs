using System.Text;
using Mastwright.Records.Import;

namespace Mastwright.Cli.Output;

/// <summary>What records import answers.</summary>
internal sealed record RecordsImportReport(string Network, string Store, ImportCount Count, RejectedRows Rejected, long InStore, TimeSpan Time)
{
    internal string Text()
    {
        StringBuilder text = new();
        text.Line($"{Count.Rows} rows read in {Time.TotalSeconds:0.0} s");
        text.Line($"  {Count.Added,10} records added");
        text.Line($"  {Count.AlreadyThere,10} were there already");
        if (Count.NotHeard > 0)
        {
            text.Line($"  {Count.NotHeard,10} places in the rows are empty: nothing was heard or told there");
        }

        if (Rejected.Count > 0)
        {
            text.Line($"  {Rejected.Count,10} rejected, kept in {Rejected.Path}");
            foreach ((string reason, long rows) in Rejected.Reasons)
            {
                text.Line($"    {rows,10} {reason}");
            }
        }

        text.Line($"Network '{Network}' now has {InStore} receptions in {Store}");
        return text.ToString().TrimEnd();
    }
}
