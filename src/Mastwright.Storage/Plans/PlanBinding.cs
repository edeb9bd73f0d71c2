namespace Mastwright.Storage.Plans;

/// <summary>What the binding of one plan shares: its problems, its parts and its files.</summary>
internal sealed class PlanBinding(PlanProblemList problems, PlanFolder folder)
{
    /// <summary>The problems found so far.</summary>
    internal PlanProblemList Problems { get; } = problems;

    /// <summary>The folder that files of the plan stay inside.</summary>
    internal PlanFolder Folder { get; } = folder;

    /// <summary>Antennas under parts, by name.</summary>
    internal Dictionary<string, PlanNode> AntennaParts { get; } = new(StringComparer.Ordinal);

    /// <summary>Radios under parts, by name.</summary>
    internal Dictionary<string, PlanNode> RadioParts { get; } = new(StringComparer.Ordinal);

    /// <summary>Feed items under parts, by name.</summary>
    internal Dictionary<string, PlanNode> FeedParts { get; } = new(StringComparer.Ordinal);

    /// <summary>Supply items under parts, by name.</summary>
    internal Dictionary<string, PlanNode> SupplyParts { get; } = new(StringComparer.Ordinal);

    /// <summary>The plan's own wind, whose keys a site need not repeat; null when it has none.</summary>
    internal PlanNode? Wind { get; set; }

    /// <summary>Whether an included file could not be taken: parts are then missing that the plan may well describe.</summary>
    internal bool LacksIncludes { get; set; }

    /// <summary>Notes that are no errors.</summary>
    internal List<PlanProblem> Notes { get; } = [];

    /// <summary>Elevation patterns read so far, by file.</summary>
    internal Dictionary<string, Station.Antenna.PatternPoint[]> Patterns { get; } = new(StringComparer.Ordinal);

    /// <summary>Years of weather read so far, by file and place; null for one that could not be read.</summary>
    internal Dictionary<string, Station.Sun.WeatherYear?> Weathers { get; } = new(StringComparer.Ordinal);

    /// <summary>Adds a problem at a value, unless that value was refused before.</summary>
    internal void Add(PlanNode node, string path, string code, string message, string wanted = "")
    {
        if (!node.IsRefused)
        {
            Problems.Add(At(node, path, code, message, wanted));
        }
    }

    /// <summary>Adds a problem at a key.</summary>
    internal void AddAtKey(PlanNode mapping, PlanEntry entry, string path, string code, string message, string wanted = "") => Problems.Add(new()
    {
        Code = code,
        File = mapping.Source.Name,
        Line = entry.Line,
        Column = entry.Column,
        Path = path,
        Found = PlanProblemList.Clip(entry.Key),
        Message = message,
        Wanted = wanted,
    });

    /// <summary>A problem at a value.</summary>
    internal static PlanProblem At(PlanNode node, string path, string code, string message, string wanted = "") => new()
    {
        Code = code,
        File = node.Source.Name,
        Line = node.Line,
        Column = node.Column,
        Path = path,
        Found = node.Kind == PlanNodeKind.Scalar ? PlanProblemList.Clip(node.Text) : "",
        Message = message,
        Wanted = wanted,
    };
}
