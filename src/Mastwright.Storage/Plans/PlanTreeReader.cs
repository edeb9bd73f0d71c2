using System.Diagnostics.CodeAnalysis;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Mastwright.Storage.Plans;

/// <summary>Reads the parser's events of one file into our own tree, and refuses what a plan does not use.</summary>
internal sealed class PlanTreeReader
{
    private readonly PlanSource source;
    private readonly PlanProblemList problems;
    private readonly Parser parser;
    private int nodes;

    private PlanTreeReader(PlanSource source, PlanProblemList problems)
    {
        this.source = source;
        this.problems = problems;
        parser = new Parser(new Scanner(new StringReader(source.Text), skipComments: true));
    }

    /// <summary>The top mapping of the file; null when it cannot be read, and then at least one problem was added.</summary>
    internal static PlanNode? Read(PlanSource source, PlanProblemList problems)
    {
        PlanTreeReader reader = new(source, problems);
        try
        {
            return reader.ReadDocument();
        }
        catch (PlanTreeException exception)
        {
            problems.Add(exception.Problem);
        }
        catch (YamlException exception)
        {
            problems.Add(reader.Problem(exception.Start, "plan-syntax", "This is not well-formed YAML: " + Reword(exception.Message) + "."));
        }
        catch (Exception exception) when (exception is InvalidOperationException or ArgumentException or FormatException or OverflowException or IndexOutOfRangeException)
        {
            // The parser's own slips on broken text: to the reader of the plan it is the text that is broken.
            problems.Add(reader.Problem(reader.parser.Current?.Start ?? Mark.Empty, "plan-syntax", "This is not well-formed YAML."));
        }

        return null;
    }

    private PlanNode ReadDocument()
    {
        Next();
        if (!Next() || parser.Current is not DocumentStart)
        {
            throw Refuse(Mark.Empty, "plan-syntax", "The file is empty.", "a plan that begins with 'mastwright: 1'");
        }

        DocumentStart start = (DocumentStart)parser.Current;
        if (start.Tags is { Count: > 0 } && !start.IsImplicit && start.Tags.Any(tag => tag.Handle is not ("!" or "!!")))
        {
            throw Refuse(start.Start, "plan-yaml-feature", "Tag directives (%TAG) are not used in a plan.", "");
        }

        Next();
        PlanNode root = ReadNode(1);
        Next();
        if (Next() && parser.Current is DocumentStart second)
        {
            throw Refuse(second.Start, "plan-yaml-feature", "A second document begins here.", "one document in a file");
        }

        if (root.Kind != PlanNodeKind.Mapping)
        {
            throw Refuse(Mark.Empty, "plan-syntax", "The file does not hold keys and values.", "a plan that begins with 'mastwright: 1'");
        }

        return root;
    }

    private PlanNode ReadNode(int depth)
    {
        ParsingEvent current = parser.Current ?? throw Refuse(Mark.Empty, "plan-syntax", "The file ends too early.", "");
        if (depth > PlanLimits.Depth)
        {
            throw Refuse(current.Start, "plan-too-deep", "The nesting is deeper than any plan's.", "at most 16 levels");
        }

        Count(current);
        switch (current)
        {
            case AnchorAlias alias:
                throw Refuse(alias.Start, "plan-yaml-feature", $"The alias '*{Clip(alias.Value.Value)}' is refused: a plan says things where they are.", "the value itself, or a part in 'parts'");
            case Scalar scalar:
                Plain(scalar);
                return ReadScalar(scalar);
            case MappingStart mapping:
                Plain(mapping);
                return ReadMapping(mapping, depth);
            case SequenceStart sequence:
                Plain(sequence);
                return ReadSequence(sequence, depth);
            default:
                throw Refuse(current.Start, "plan-syntax", "Something other than a value stands here.", "");
        }
    }

    private PlanNode ReadMapping(MappingStart start, int depth)
    {
        PlanNode node = New(start, PlanNodeKind.Mapping, start.Style == MappingStyle.Flow);
        HashSet<string> seen = new(StringComparer.Ordinal);
        while (Next() && parser.Current is not MappingEnd)
        {
            if (parser.Current is AnchorAlias)
            {
                ReadNode(depth + 1);
            }

            if (parser.Current is not Scalar key)
            {
                throw Refuse(parser.Current!.Start, "plan-syntax", "A key is one word, not a list or a mapping.", "a key such as 'name:'");
            }

            Plain(key);
            Count(key);
            if (key.Value == "<<")
            {
                throw Refuse(key.Start, "plan-yaml-feature", "The merge key '<<' is refused: a plan says things where they are.", "the keys themselves, or a part in 'parts'");
            }

            ReadScalar(key);
            if (!seen.Add(key.Value))
            {
                problems.Add(Problem(key.Start, "plan-duplicate-key", $"The key '{Clip(key.Value)}' stands twice in one place; remove one.") with { Found = Clip(key.Value) });
            }

            Next();
            PlanNode value = ReadNode(depth + 1);
            node.Entries.Add(new(key.Value, Index(key.Start), Index(key.End), (int)key.Start.Line, (int)key.Start.Column, value));
        }

        node.End = node.Flow ? Index(parser.Current!.End) : node.Entries.Count > 0 ? Math.Max(node.Entries[^1].Value.End, node.Entries[^1].End) : node.Start;
        return node;
    }

    private PlanNode ReadSequence(SequenceStart start, int depth)
    {
        PlanNode node = New(start, PlanNodeKind.Sequence, start.Style == SequenceStyle.Flow);
        while (Next() && parser.Current is not SequenceEnd)
        {
            node.Items.Add(ReadNode(depth + 1));
        }

        node.End = node.Flow ? Index(parser.Current!.End) : node.Items.Count > 0 ? node.Items[^1].End : node.Start;
        return node;
    }

    private PlanNode ReadScalar(Scalar scalar)
    {
        if (scalar.Style is ScalarStyle.Literal or ScalarStyle.Folded)
        {
            throw Refuse(scalar.Start, "plan-yaml-feature", "Block text ('|' or '>') is refused.", "the value on the line of its key");
        }

        if (scalar.Value.Length > PlanLimits.ValueLength)
        {
            throw Refuse(scalar.Start, "plan-value", $"This value has {scalar.Value.Length} characters.", $"at most {PlanLimits.ValueLength}");
        }

        return new PlanNode
        {
            Source = source,
            Kind = PlanNodeKind.Scalar,
            Start = Index(scalar.Start),
            End = Index(scalar.End),
            Line = (int)scalar.Start.Line,
            Column = (int)scalar.Start.Column,
            Text = scalar.Value,
            Quoting = scalar.Style switch
            {
                ScalarStyle.SingleQuoted => PlanQuoting.Single,
                ScalarStyle.DoubleQuoted => PlanQuoting.Double,
                _ => PlanQuoting.Plain,
            },
        };
    }

    private PlanNode New(ParsingEvent start, PlanNodeKind kind, bool flow) => new()
    {
        Source = source,
        Kind = kind,
        Start = Index(start.Start),
        Line = (int)start.Start.Line,
        Column = (int)start.Start.Column,
        Flow = flow,
    };

    private bool Next() => parser.MoveNext();

    private void Count(ParsingEvent current)
    {
        if (++nodes > PlanLimits.Nodes)
        {
            throw Refuse(current.Start, "plan-too-large", "The file holds more values than any plan.", $"at most {PlanLimits.Nodes} keys and values");
        }
    }

    private void Plain(NodeEvent node)
    {
        if (!node.Anchor.IsEmpty)
        {
            throw Refuse(node.Start, "plan-yaml-feature", $"The anchor '&{Clip(node.Anchor.Value)}' is refused: a plan says things where they are.", "the value alone");
        }

        // A quoted scalar carries the non-specific tag "!" only when it was written.
        if (!node.Tag.IsEmpty)
        {
            throw Refuse(node.Start, "plan-yaml-feature", $"The tag '{Clip(node.Tag.ToString())}' is refused.", "the value alone");
        }
    }

    private int Index(Mark mark) => (int)Math.Clamp(mark.Index, 0, source.Text.Length);

    private PlanProblem Problem(Mark mark, string code, string message) => new()
    {
        Code = code,
        File = source.Name,
        Line = (int)Math.Max(1, mark.Line),
        Column = (int)Math.Max(1, mark.Column),
        Message = message,
    };

    private PlanTreeException Refuse(Mark mark, string code, string message, string wanted) =>
        new(Problem(mark, code, message) with { Wanted = wanted });

    private static string Clip(string? text) => PlanProblemList.Clip(text ?? "");

    private static string Reword(string message)
    {
        string sentence = message.Trim().TrimEnd('.');
        return sentence.Length == 0 ? "unreadable here" : char.ToLowerInvariant(sentence[0]) + sentence[1..];
    }
}

/// <summary>Ends the reading of a file at its first fault of structure; never leaves the reader.</summary>
[SuppressMessage("Design", "CA1032:Implement standard exception constructors", Justification = "Thrown and caught inside this folder only, always with its fault.")]
[SuppressMessage("Design", "CA1064:Exceptions should be public", Justification = "It never leaves this folder.")]
internal sealed class PlanTreeException(PlanProblem problem) : Exception(problem.Message)
{
    /// <summary>The fault.</summary>
    internal PlanProblem Problem { get; } = problem;
}
