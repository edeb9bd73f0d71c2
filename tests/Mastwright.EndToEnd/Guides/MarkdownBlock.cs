namespace Mastwright.Tests.EndToEnd.Guides;

/// <summary>A fenced block of a page: its language, its text, and the remark right above it ("file my-plan.yaml"), which readers do not see.</summary>
internal sealed record MarkdownBlock(string Language, string Text, string Remark, int Line)
{
    /// <summary>The blocks of a page, in order.</summary>
    public static IReadOnlyList<MarkdownBlock> Of(string page)
    {
        List<MarkdownBlock> blocks = [];
        string[] lines = File.ReadAllLines(page);
        for (int i = 0; i < lines.Length; i++)
        {
            if (!lines[i].StartsWith("```", StringComparison.Ordinal))
            {
                continue;
            }

            int end = Array.FindIndex(lines, i + 1, line => line.StartsWith("```", StringComparison.Ordinal));
            Assert.True(end > 0, $"{page}:{i + 1}: the block does not end");
            string above = i > 0 ? lines[i - 1].Trim() : "";
            string remark = above.StartsWith("<!--", StringComparison.Ordinal) ? above[4..^3].Trim() : "";
            blocks.Add(new(lines[i][3..].Trim(), string.Join('\n', lines[(i + 1)..end]) + "\n", remark, i + 1));
            i = end;
        }

        return blocks;
    }

    /// <summary>The program's commands in the block, with the exit code that the line states ("# exit code 1", else 0).</summary>
    public IEnumerable<(string Command, int ExitCode)> Commands() => Text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        .Where(line => !line.StartsWith('#'))
        .Select(line => line.Split("# exit code ") is [string command, string code]
            ? (command.Trim(), int.Parse(code, System.Globalization.CultureInfo.InvariantCulture))
            : (line, 0));
}
