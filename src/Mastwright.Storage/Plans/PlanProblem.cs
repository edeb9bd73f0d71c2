using System.Globalization;

namespace Mastwright.Storage.Plans;

/// <summary>One thing that is wrong in a plan (or worth a look): where it is, what was found, what would be right.</summary>
public sealed record PlanProblem
{
    /// <summary>Stable code, kebab-case, such as "plan-unknown-key".</summary>
    public required string Code { get; init; }

    /// <summary>The file, as the reader was given it, or relative to the plan for an included one.</summary>
    public required string File { get; init; }

    /// <summary>Line from 1; 0 when the whole file is meant.</summary>
    public int Line { get; init; }

    /// <summary>Column from 1, in characters; 0 when the whole file is meant.</summary>
    public int Column { get; init; }

    /// <summary>Path of the value in the plan, such as "sites/ferry-house/position"; empty for the whole file.</summary>
    public string Path { get; init; } = "";

    /// <summary>What was found there, shortened; empty when nothing was.</summary>
    public string Found { get; init; } = "";

    /// <summary>What would be right; empty when there is nothing to add to the message.</summary>
    public string Wanted { get; init; } = "";

    /// <summary>What is wrong, in a sentence.</summary>
    public required string Message { get; init; }

    /// <summary>"plan.yaml:12:9: sites/ferry-house/position: message Found 'x'; wanted y."</summary>
    public override string ToString()
    {
        string place = Line > 0 ? string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}") : File;
        string path = Path.Length > 0 ? $" {Path}:" : "";
        bool tellFound = Found.Length > 0 && !Message.Contains($"'{Found}'", StringComparison.Ordinal);
        string tail = (tellFound, Wanted.Length > 0) switch
        {
            (true, true) => $" Found '{Found}'; wanted {Wanted}.",
            (true, false) => $" Found '{Found}'.",
            (false, true) => $" Wanted {Wanted}.",
            _ => "",
        };
        return $"{place}:{path} {Message}{tail}";
    }
}
