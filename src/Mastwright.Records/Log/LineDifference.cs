using System.Collections.Immutable;
using System.Text;
using DiffPlex.DiffBuilder;
using DiffPlex.DiffBuilder.Model;

namespace Mastwright.Records.Log;

/// <summary>What changed from one text to another, line by line.</summary>
public static class LineDifference
{
    private const int MostBytes = 1 << 20;
    private const int MostLines = 20_000;

    /// <summary>The lines that went, each after "- ", and those that came, after "+ ", in the order of the texts; or null where there is none.</summary>
    /// <param name="before">The content before, of UTF-8.</param>
    /// <param name="after">The content after, of UTF-8.</param>
    /// <returns>Nothing where they are the same. Where one of them is no text or too long to compare, null.</returns>
    public static ImmutableArray<string>? Between(ReadOnlySpan<byte> before, ReadOnlySpan<byte> after)
    {
        if (before.SequenceEqual(after))
        {
            return [];
        }

        if (Text(before) is not { } old || Text(after) is not { } fresh)
        {
            return null;
        }

        DiffPaneModel difference = InlineDiffBuilder.Diff(old, fresh, ignoreWhiteSpace: false);
        return
        [
            .. difference.Lines.Where(line => line.Type is ChangeType.Deleted or ChangeType.Inserted)
                .Select(line => (line.Type == ChangeType.Deleted ? "- " : "+ ") + line.Text),
        ];
    }

    private static string? Text(ReadOnlySpan<byte> content)
    {
        if (content.Length > MostBytes || content.Contains((byte)0) || content.Count((byte)'\n') > MostLines)
        {
            return null;
        }

        try
        {
            return new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true).GetString(content).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }
}
