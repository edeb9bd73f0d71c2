using YamlDotNet.Core;
using YamlDotNet.Core.Events;
using YamlDotNet.RepresentationModel;

namespace Mastwright.Storage.Catalogue;

/// <summary>Turns catalogue text into YAML nodes after checking that it is small and plain: no anchors, aliases, tags or deep nesting.</summary>
internal static class CatalogueText
{
    /// <summary>A catalogue nests five deep; the representation model recurses, so a deep file must be stopped before it.</summary>
    private const int DeepestNesting = 12;

    internal static YamlMappingNode? Parse(string text, Action<long, string> fault)
    {
        try
        {
            if (!IsPlain(text, fault))
            {
                return null;
            }

            YamlStream stream = [];
            using StringReader reader = new(text);
            stream.Load(reader);
            if (stream.Documents.Count == 1 && stream.Documents[0].RootNode is YamlMappingNode root)
            {
                return root;
            }

            fault(1, "a catalogue is one mapping with the keys format, line-types, feed-parts, modems, and those of law and supply");
            return null;
        }
        catch (YamlException problem)
        {
            fault(problem.Start.Line, "not readable as YAML: " + problem.Message);
            return null;
        }
        catch (Exception problem) when (problem is InvalidOperationException or ArgumentException or FormatException or OverflowException)
        {
            // The scanner throws these, without a place, for some malformed scalars (found by the mutation test).
            fault(0, "not readable as YAML");
            return null;
        }
    }

    private static bool IsPlain(string text, Action<long, string> fault)
    {
        using StringReader reader = new(text);
        Parser parser = new(reader);
        int depth = 0;
        while (parser.MoveNext())
        {
            ParsingEvent now = parser.Current!;
            depth += now.NestingIncrease;
            if (depth > DeepestNesting)
            {
                fault(now.Start.Line, "nested deeper than a catalogue is");
                return false;
            }

            if (now is AnchorAlias || (now is NodeEvent node && (!node.Anchor.IsEmpty || !node.Tag.IsEmpty)))
            {
                fault(now.Start.Line, "anchors, aliases and tags are not used in a catalogue; write the value out");
                return false;
            }
        }

        return true;
    }
}
