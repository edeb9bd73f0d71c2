using System.CommandLine;
using Mastwright.Jobs;
using Mastwright.Reports.Reach;
using Mastwright.Storage.Jobs;

namespace Mastwright.Cli;

/// <summary>The options that say where long work keeps what it has finished.</summary>
internal sealed class CacheOptions
{
    private const long BytesAMebibyte = 1 << 20;

    private readonly Option<string?> folder = new("--cache") { Description = "Folder for finished pieces of long work (default: the user's cache folder).", HelpName = "FOLDER" };
    private readonly Option<bool> none = new("--no-cache") { Description = "Neither use nor keep finished pieces; a stopped run begins anew." };
    private readonly Option<int?> limit = Options.Whole("--cache-limit", "Most MiB kept there once the work is done (default 4096).");

    internal void AddTo(Command command)
    {
        command.Add(folder);
        command.Add(none);
        command.Add(limit);
    }

    /// <summary>The place for long work; null, after telling what is wrong, when the options contradict one another.</summary>
    internal LongWork? Open(ParseResult parsed, Action<string> tell, IProgress<JobProgress> progress)
    {
        int? mebibytes = parsed.GetValue(limit);
        string? problem = parsed.GetValue(none) && (parsed.GetValue(folder) is not null || mebibytes is not null)
            ? "--no-cache: without a cache there is neither a --cache folder nor a --cache-limit"
            : mebibytes < 0 ? $"--cache-limit: {mebibytes} is less than nothing; write 0 to keep nothing of finished work"
            : parsed.GetValue(folder) is { Length: 0 } ? "--cache: a folder is needed"
            : null;
        if (problem is not null)
        {
            Console.Error.WriteLine(problem);
            return null;
        }

        ResultStoreOptions options = mebibytes is { } most ? new() { MostBytes = most * BytesAMebibyte } : new();
        return new(parsed.GetValue(none) ? null : parsed.GetValue(folder) ?? CacheFolder.Usual, options, tell, progress);
    }
}
