using System.Globalization;

namespace Mastwright.Records.Export;

/// <summary>Cells of delimited text of RFC 4180.</summary>
internal static class DelimitedText
{
    /// <summary>A line of cells; what is null is an empty one.</summary>
    internal static string Line(params ReadOnlySpan<object?> cells)
    {
        List<string> texts = [];
        foreach (object? cell in cells)
        {
            string text = Convert.ToString(cell, CultureInfo.InvariantCulture) ?? "";
            texts.Add(text.AsSpan().IndexOfAny("\",\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"");
        }

        return string.Join(',', texts) + "\n";
    }
}
