using System.Globalization;
using System.Text;

namespace Mastwright.Storage.Plans;

/// <summary>Writes a value as YAML: in the quoting that stood there, or in quotes where the text needs them.</summary>
internal static class YamlScalar
{
    /// <summary>The ways to write a value in the place of another, the least change first.</summary>
    internal static IEnumerable<string> Ways(string value, PlanNode replaced)
    {
        string lead = replaced.IsEmpty && replaced.Text.Length == 0 ? " " : "";
        switch (replaced.Quoting)
        {
            case PlanQuoting.Single:
                yield return Single(value);
                break;
            case PlanQuoting.Plain when IsPlain(value):
                yield return lead + value;
                break;
        }

        yield return lead + Double(value);
    }

    /// <summary>The ways to write a value for a key that is new.</summary>
    internal static IEnumerable<string> Ways(string value)
    {
        if (IsPlain(value))
        {
            yield return value;
        }

        yield return Double(value);
    }

    /// <summary>A value for a new key: plain when it can be, else in double quotes.</summary>
    internal static string Write(string value) => IsPlain(value) ? value : Double(value);

    /// <summary>
    /// Whether a text reads as itself without quotes, in block and in flow style, under YAML 1.1 and 1.2. Stricter than either:
    /// a comma or a bracket counts as special everywhere but is allowed by the caller's own check of what was read.
    /// </summary>
    private static bool IsPlain(string value)
    {
        if (value.Length == 0 || value is "~" or "null" or "Null" or "NULL" or "<<" || char.IsWhiteSpace(value[0]) || char.IsWhiteSpace(value[^1]))
        {
            return false;
        }

        return "-?:,[]{}#&*!|>'\"%@`".AsSpan().IndexOf(value[0]) < 0 || IsNegativeNumber(value)
            ? !value.Contains(": ", StringComparison.Ordinal) && !value.Contains(" #", StringComparison.Ordinal) && value[^1] != ':' && value.AsSpan().IndexOfAny("[]{}") < 0
            : false;
    }

    private static bool IsNegativeNumber(string value) => value.Length > 1 && value[0] == '-' && char.IsAsciiDigit(value[1]);

    private static string Single(string value) => "'" + value.Replace("'", "''", StringComparison.Ordinal) + "'";

    private static string Double(string value)
    {
        StringBuilder written = new("\"");
        foreach (char c in value)
        {
            written.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                _ => c.ToString(CultureInfo.InvariantCulture),
            });
        }

        return written.Append('"').ToString();
    }
}
