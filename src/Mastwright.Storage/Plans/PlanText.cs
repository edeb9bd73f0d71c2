using System.Text;

namespace Mastwright.Storage.Plans;

/// <summary>The text of one plan file, of which single values can be changed and nothing else.</summary>
/// <remarks>Immutable. Comments, order, quoting, line ends and a byte order mark stay as they are.</remarks>
public sealed class PlanText
{
    private readonly PlanNode root;
    private readonly string hashOnDisk;

    private PlanText(PlanSource source, PlanNode root, string hashOnDisk)
    {
        Source = source;
        this.root = root;
        this.hashOnDisk = hashOnDisk;
    }

    /// <summary>The text, without a byte order mark.</summary>
    public string Text => Source.Text;

    internal PlanSource Source { get; }

    internal PlanNode Root => root;

    /// <summary>Reads a file for changing. Its structure must be well formed; its values need not be right.</summary>
    public static PlanTextResult Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        PlanSource? source = PlanSource.Read(path, Path.GetFullPath(path), out PlanProblem? problem);
        return source is null ? new(null, problem) : Parse(source, source.Hash);
    }

    /// <summary>Takes a text that is not in a file yet.</summary>
    /// <param name="name">Name that problems speak of it by.</param>
    /// <param name="text">The text.</param>
    public static PlanTextResult FromText(string name, string text)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(text);
        byte[] bytes;
        try
        {
            bytes = new UTF8Encoding(false, throwOnInvalidBytes: true).GetBytes(text);
        }
        catch (EncoderFallbackException)
        {
            return new(null, new() { Code = "plan-encoding", File = name, Message = "The text holds half of a character.", Wanted = "well-formed text" });
        }

        PlanSource? source = PlanSource.FromBytes(name, "", bytes, out PlanProblem? problem);
        return source is null ? new(null, problem) : Parse(source, source.Hash);
    }

    /// <summary>The text of the value at a path, quotes resolved; null when nothing is there or it is no single value.</summary>
    public string? Value(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return PlanPath.Find(root, path) is { Kind: PlanNodeKind.Scalar } node ? node.Text : null;
    }

    /// <summary>Whether something stands at a path: a value, keys or a list.</summary>
    public bool Has(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return PlanPath.Find(root, path) is not null;
    }

    /// <summary>The text with one value changed: only the characters of that value differ.</summary>
    /// <remarks>A key that is missing from a mapping which is there is added, and nothing that stood before is touched.</remarks>
    /// <param name="path">Path of the value, such as "sites/ferry-house/in-use"; items of a list count from 1.</param>
    /// <param name="value">The new value as a person would write it, without quotes.</param>
    /// <returns>The changed text; or why not: no mapping that could hold the key, no single value, a value that takes more than one line.</returns>
    public PlanTextResult With(string path, string value)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(value);
        PlanNode? found = PlanPath.Find(root, path);
        if (value.Length > PlanLimits.ValueLength || !ScalarBinder.IsText(value))
        {
            return Refuse(path, ScalarBinder.ValueCode, "The new value is not text on one line.", "one line of text");
        }

        if (found is not { } node)
        {
            return Add(path, value);
        }

        if (node.Kind != PlanNodeKind.Scalar)
        {
            return Refuse(path, ScalarBinder.ValueCode, "This is not a single value.", "the path of a single value");
        }

        foreach (string written in YamlScalar.Ways(value, node))
        {
            string text = string.Concat(Source.Text.AsSpan(0, node.Start), written, Source.Text.AsSpan(node.End));
            PlanTextResult changed = Changed(text);
            if (changed.Text is { } read && PlanTreeComparison.SameBut(root, read.root, path, value))
            {
                return changed;
            }
        }

        return Refuse(path, ScalarBinder.ValueCode, "The new value cannot be written here.", "text without control characters");
    }

    /// <summary>Writes the text to its file: beside it, then in its place.</summary>
    /// <returns>Null when it was written; else why not, and then the file is as it was.</returns>
    public PlanProblem? Save() => Source.FullPath.Length == 0
        ? new() { Code = "plan-file", File = Source.Name, Message = "This text has no file yet.", Wanted = "a file name" }
        : PlanSaver.Replace(Source, hashOnDisk);

    /// <summary>The same file with another text, which must be well formed; saving still refuses when the file has changed since.</summary>
    internal PlanTextResult Changed(string text)
    {
        byte[] bytes = Source.Encode(text);
        PlanSource? source = PlanSource.FromBytes(Source.Name, Source.FullPath, bytes, out PlanProblem? problem);
        return source is null ? new(null, problem) : Parse(source, hashOnDisk);
    }

    /// <summary>The text of a source that was read already.</summary>
    internal static PlanTextResult FromSource(PlanSource source) => Parse(source, source.Hash);

    private static PlanTextResult Parse(PlanSource source, string hashOnDisk)
    {
        PlanProblemList problems = new();
        PlanNode? top = PlanTreeReader.Read(source, problems);
        return top is null || !problems.IsEmpty
            ? new(null, problems.Sorted(source.Name)[0])
            : new(new(source, top, hashOnDisk), null);
    }

    private PlanTextResult Add(string path, string value)
    {
        int slash = path.LastIndexOf('/');
        string key = path[(slash + 1)..];
        if (!KeyNameShape.IsKey(key) || PlanPath.Find(root, slash < 0 ? "" : path[..slash]) is not { Kind: PlanNodeKind.Mapping, Entries.Count: > 0 } mapping)
        {
            return Refuse(path, "plan-missing-key", "There is no value at this path to change, and no mapping that its key could be added to.", "");
        }

        (int index, string lead, string tail) = KeyInsertion.Of(Source.Text, mapping, key);
        foreach (string written in YamlScalar.Ways(value))
        {
            PlanTextResult changed = Changed(Source.Text.Insert(index, lead + written + tail));
            if (changed.Text is { } read && PlanTreeComparison.SameButAdded(root, read.root, mapping, path, value))
            {
                return changed;
            }
        }

        return Refuse(path, ScalarBinder.ValueCode, "The key cannot be added here.", "a key that is there already");
    }

    private PlanTextResult Refuse(string path, string code, string message, string wanted)
    {
        PlanNode? node = PlanPath.Find(root, path);
        return new(null, new() { Code = code, File = Source.Name, Line = node?.Line ?? 0, Column = node?.Column ?? 0, Path = path, Message = message, Wanted = wanted });
    }
}

/// <summary>A plan text, or why there is none.</summary>
/// <param name="Text">The text; null when there is a problem.</param>
/// <param name="Problem">The problem; null when there is a text.</param>
public sealed record PlanTextResult(PlanText? Text, PlanProblem? Problem);
