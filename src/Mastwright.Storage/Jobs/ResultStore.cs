using System.Text;
using Mastwright.Jobs;
using Mastwright.Storage.Files;

namespace Mastwright.Storage.Jobs;

/// <summary>Results on disk, each under the key of its chunk, and notes of the jobs that are not done.</summary>
/// <remarks>
/// Layout of the folder: results/ab/abcd….result, and jobs/KEY.job with the name of a job on its first line and the keys of its chunks on
/// the others. A result that a note lists is never thrown out; the others go, those not used for longest first, until all fit the bound.
/// Safe from many threads and many programs at once: files come and go whole, and a result that is gone or damaged is made again.
/// </remarks>
public sealed class ResultStore
{
    private const string ResultEnding = ".result";
    private const string NoteEnding = ".job";

    private readonly Lock gate = new();
    private readonly Dictionary<string, int> running = new(StringComparer.Ordinal);
    private readonly ResultStoreOptions options;
    private readonly TimeProvider time;
    private readonly string results;
    private readonly string notes;

    /// <summary>Opens a store; its folder is made when the first result is kept.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="options">How to keep house; null for the defaults.</param>
    /// <param name="time">The clock that uses are counted by; null for the machine's.</param>
    public ResultStore(string folder, ResultStoreOptions? options = null, TimeProvider? time = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        Folder = Path.GetFullPath(folder);
        this.options = options ?? new();
        this.time = time ?? TimeProvider.System;
        results = Path.Combine(Folder, "results");
        notes = Path.Combine(Folder, "jobs");
    }

    /// <summary>The folder.</summary>
    public string Folder { get; }

    /// <summary>Names of the jobs that were begun and are not done, in order.</summary>
    /// <exception cref="IOException">The folder cannot be read.</exception>
    public IReadOnlyList<string> Unfinished() => [.. Notes().Select(note => ReadNote(note).FirstOrDefault("")).Order(StringComparer.Ordinal)];

    /// <summary>Whether any chunk of a job was left behind by an earlier run.</summary>
    public bool IsBegun(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return File.Exists(NoteOf(job.Key));
    }

    /// <summary>Whether there is a file under a key, whole or damaged.</summary>
    public bool Holds(string key) => File.Exists(PathOf(key));

    /// <summary>Bytes of all results now.</summary>
    public long Bytes() => Files(results, ResultEnding).Sum(file => file.Length);

    /// <summary>The bytes kept under a key, checked against their sum; null when there are none. A damaged file is removed.</summary>
    /// <exception cref="IOException">The folder cannot be read.</exception>
    public byte[]? Read(string key)
    {
        byte[]? content = null;
        return Use(key, path => (content = StoredResult.Read(path, key)) is not null) == Finding.Whole ? content : null;
    }

    /// <summary>Keeps bytes under a key, over whatever was there.</summary>
    /// <exception cref="IOException">The folder cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    public void Keep(string key, ReadOnlySpan<byte> content)
    {
        string path = PathOf(key);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        StoredResult.Write(path, key, content);
        Touch(path);
    }

    /// <summary>Throws out results until the bound holds, and notes that nobody came back to.</summary>
    public void Tidy()
    {
        DateTime now = time.GetUtcNow().UtcDateTime;
        HashSet<string> held = new(StringComparer.Ordinal);
        foreach (string note in Notes())
        {
            if (now - File.GetLastWriteTimeUtc(note) > options.Patience && !IsRunning(Path.GetFileNameWithoutExtension(note)))
            {
                TryDelete(note);
                continue;
            }

            held.UnionWith(ReadNote(note).Skip(1));
        }

        foreach (FileInfo left in Files(Folder, ".part").Where(file => now - file.LastWriteTimeUtc > TimeSpan.FromDays(1)))
        {
            TryDelete(left.FullName);
        }

        FileInfo[] all = [.. Files(results, ResultEnding).OrderBy(file => file.LastWriteTimeUtc).ThenBy(file => file.Name, StringComparer.Ordinal)];
        long bytes = all.Sum(file => file.Length);
        foreach (FileInfo file in all)
        {
            if (bytes <= options.MostBytes || now - file.LastWriteTimeUtc < options.Grace)
            {
                break;
            }

            if (!held.Contains(Path.GetFileNameWithoutExtension(file.Name)))
            {
                TryDelete(file.FullName);
                bytes -= file.Length;
            }
        }
    }

    /// <summary>Notes that a job is begun: what it finishes is held until <see cref="End"/>.</summary>
    internal void Begin(Job job)
    {
        lock (gate)
        {
            running[job.Key] = running.GetValueOrDefault(job.Key) + 1;
        }

        Directory.CreateDirectory(notes);
        WholeFile.Write(NoteOf(job.Key), string.Join('\n', job.Chunks.Select(chunk => chunk.Key).Prepend(job.Name.ReplaceLineEndings(" "))) + "\n");
        File.SetLastWriteTimeUtc(NoteOf(job.Key), time.GetUtcNow().UtcDateTime);
    }

    /// <summary>A run of a job has ended: with <paramref name="isDone"/> nobody needs its note any more.</summary>
    internal void End(Job job, bool isDone)
    {
        bool isLast;
        lock (gate)
        {
            isLast = --running[job.Key] == 0;
            if (isLast)
            {
                running.Remove(job.Key);
            }
        }

        if (isLast && isDone)
        {
            TryDelete(NoteOf(job.Key));
        }
    }

    /// <summary>What there is under a key, without reading it into memory; a damaged file is removed.</summary>
    internal Finding Find(string key) => Use(key, path => StoredResult.IsWhole(path, key));

    /// <summary>Reads a part of a result that was checked before; false when it is not there.</summary>
    internal bool TryReadPart(string key, long offset, Span<byte> into)
    {
        try
        {
            return StoredResult.TryReadPart(PathOf(key), offset, into);
        }
        catch (IOException)
        {
            return false;
        }
    }

    private Finding Use(string key, Func<string, bool> isWhole)
    {
        string path = PathOf(key);
        try
        {
            if (isWhole(path))
            {
                Touch(path);
                return Finding.Whole;
            }
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException)
        {
            return Finding.Nothing;
        }

        TryDelete(path);
        return Finding.Damaged;
    }

    private bool IsRunning(string jobKey)
    {
        lock (gate)
        {
            return running.ContainsKey(jobKey);
        }
    }

    private string PathOf(string key)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(key?.Length ?? 0, 64, nameof(key));
        return Path.Combine(results, key![..2], key + ResultEnding);
    }

    private string NoteOf(string jobKey) => Path.Combine(notes, jobKey + NoteEnding);

    /// <summary>The time of the last use is kept as the file's time of writing: times of reading are switched off on many disks.</summary>
    private void Touch(string path)
    {
        try
        {
            File.SetLastWriteTimeUtc(path, time.GetUtcNow().UtcDateTime);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Thrown out by another program just now, or a store that may only be read: either way the bytes were good.
        }
    }

    private IEnumerable<string> Notes() => Files(notes, NoteEnding).Select(file => file.FullName);

    private static string[] ReadNote(string path)
    {
        try
        {
            return File.ReadAllText(path, Encoding.UTF8).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        }
        catch (IOException)
        {
            // Another program has ended its job meanwhile.
            return [];
        }
    }

    private static IEnumerable<FileInfo> Files(string folder, string ending) => Directory.Exists(folder)
        ? new DirectoryInfo(folder).EnumerateFiles("*" + ending, new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true })
        : [];

    private static void TryDelete(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Gone already, or held open by another program: the next time will do.
        }
    }

    /// <summary>What was found under a key.</summary>
    internal enum Finding
    {
        Nothing,
        Whole,
        Damaged,
    }
}
