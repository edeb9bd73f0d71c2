using System.Diagnostics.CodeAnalysis;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Mastwright.Storage.Plans;

/// <summary>Reads the parser's events of one file into our own tree, and refuses what such a file does not use.</summary>
/// <remarks>After a refusal it goes on wherever the text still has one meaning, so that every fault is told in one go.</remarks>
internal sealed class PlanTreeReader
{
    private readonly PlanSource source;
    private readonly PlanProblemList problems;
    private readonly TreeWords words;
    private readonly Parser parser;
    private int nodes;
    private bool inMerge;

    private PlanTreeReader(PlanSource source, PlanProblemList problems, TreeWords words)
    {
        this.source = source;
        this.problems = problems;
        this.words = words;
        parser = new Parser(new Scanner(new StringReader(source.Text), skipComments: true));
    }

    /// <summary>The top mapping of the file; null when it cannot be read, and then at least one problem was added.</summary>
    /// <remarks>A tree with problems is whole but for what was refused; such values are marked.</remarks>
    internal static PlanNode? Read(PlanSource source, PlanProblemList problems, TreeWords? words = null)
    {
        PlanTreeReader reader = new(source, problems, words ?? TreeWords.Plan);
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
            throw Refuse(Mark.Empty, "plan-syntax", "The file is empty.", words.Beginning);
        }

        DocumentStart start = (DocumentStart)parser.Current;
        if (start.Tags is { Count: > 0 } && !start.IsImplicit && start.Tags.Any(tag => tag.Handle is not ("!" or "!!")))
        {
            Tell(start.Start, $"Tag directives (%TAG) are not used in a {words.Noun}.", "");
        }

        Next();
        PlanNode root = ReadNode(1);
        Next();
        if (Next() && parser.Current is DocumentStart second)
        {
            Tell(second.Start, "A second document begins here.", "one document in a file");
        }

        if (root.Kind != PlanNodeKind.Mapping)
        {
            throw Refuse(Mark.Empty, "plan-syntax", "The file does not hold keys and values.", words.Beginning);
        }

        return root;
    }

    private PlanNode ReadNode(int depth)
    {
        ParsingEvent current = parser.Current ?? throw Refuse(Mark.Empty, "plan-syntax", "The file ends too early.", "");
        if (depth > PlanLimits.Depth)
        {
            throw Refuse(current.Start, "plan-too-deep", $"The nesting is deeper than any {words.Noun}'s.", "at most 16 levels");
        }

        Count(current);
        switch (current)
        {
            case AnchorAlias alias:
                return ReadAlias(alias);
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
                Next();
                ReadNode(depth + 1);
                continue;
            }

            if (parser.Current is not Scalar key)
            {
                throw Refuse(parser.Current!.Start, "plan-syntax", "A key is one word, not a list or a mapping.", "a key such as 'name:'");
            }

            Plain(key);
            Count(key);
            if (key.Value == "<<" && key.Style == ScalarStyle.Plain)
            {
                PassMerge(key, depth);
                node.LacksKeys = true;
                continue;
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

    /// <summary>What stands behind an alias is not known here: the value stays open and nothing more is said of it.</summary>
    private PlanNode ReadAlias(AnchorAlias alias)
    {
        if (!inMerge)
        {
            Tell(alias.Start, $"The alias '*{Clip(alias.Value.Value)}' is refused: a {words.Noun} says things where they are.", "the value itself" + words.Instead);
        }

        return new()
        {
            Source = source,
            Kind = PlanNodeKind.Scalar,
            Start = Index(alias.Start),
            End = Index(alias.End),
            Line = (int)alias.Start.Line,
            Column = (int)alias.Start.Column,
            IsRefused = true,
        };
    }

    /// <summary>Passes over a merge key; that its value is an alias is no second fault.</summary>
    private void PassMerge(Scalar key, int depth)
    {
        Tell(key.Start, $"The merge key '<<' is refused: a {words.Noun} says things where they are.", "the keys themselves" + words.Instead);
        bool before = inMerge;
        inMerge = true;
        Next();
        ReadNode(depth + 1);
        inMerge = before;
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
        bool isBlock = scalar.Style is ScalarStyle.Literal or ScalarStyle.Folded;
        bool isLong = scalar.Value.Length > PlanLimits.ValueLength;
        if (isBlock)
        {
            Tell(scalar.Start, "Block text ('|' or '>') is refused.", "the value on the line of its key");
        }
        else if (isLong)
        {
            problems.Add(Problem(scalar.Start, "plan-value", $"This value has {scalar.Value.Length} characters.") with { Wanted = $"at most {PlanLimits.ValueLength}" });
        }

        return new PlanNode
        {
            Source = source,
            Kind = PlanNodeKind.Scalar,
            Start = Index(scalar.Start),
            End = Index(scalar.End),
            Line = (int)scalar.Start.Line,
            Column = (int)scalar.Start.Column,
            Text = isLong ? "" : scalar.Value,
            IsRefused = isBlock || isLong,
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
            Tell(node.Start, $"The anchor '&{Clip(node.Anchor.Value)}' is refused: a {words.Noun} says things where they are.", "the value alone");
        }

        // A quoted scalar carries the non-specific tag "!" only when it was written.
        if (!node.Tag.IsEmpty)
        {
            Tell(node.Start, $"The tag '{Clip(node.Tag.ToString())}' is refused.", "the value alone");
        }
    }

    /// <summary>Tells of a feature of YAML that is not used, and lets the reading go on.</summary>
    private void Tell(Mark mark, string message, string wanted) => problems.Add(Problem(mark, "plan-yaml-feature", message) with { Wanted = wanted });

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

/// <summary>What a kind of file is called, and what it would say instead of what is refused.</summary>
/// <param name="Noun">What the file is: "plan".</param>
/// <param name="Beginning">How a sound one begins.</param>
/// <param name="Instead">What may stand in place of an alias beside the value itself; empty for nothing.</param>
internal sealed record TreeWords(string Noun, string Beginning, string Instead)
{
    internal static TreeWords Plan { get; } = new("plan", "a plan that begins with 'mastwright: 1'", ", or a part in 'parts'");

    internal static TreeWords Catalogue { get; } = new("catalogue", "a catalogue with the keys format, line-types, feed-parts, modems, and those of law and supply", "");
}

/// <summary>Ends the reading of a file at a fault after which its text has no one meaning; never leaves the reader.</summary>
[SuppressMessage("Design", "CA1032:Implement standard exception constructors", Justification = "Thrown and caught inside this folder only, always with its fault.")]
[SuppressMessage("Design", "CA1064:Exceptions should be public", Justification = "It never leaves this folder.")]
internal sealed class PlanTreeException(PlanProblem problem) : Exception(problem.Message)
{
    /// <summary>The fault.</summary>
    internal PlanProblem Problem { get; } = problem;
}
