using System.Globalization;
using Mastwright.Benchmarks.Figures;
using Mastwright.Benchmarks.Reach;
using Mastwright.Benchmarks.Relays;
using Mastwright.Benchmarks.Soak;
using Mastwright.Benchmarks.Workbench;

namespace Mastwright.Benchmarks;

/// <summary>Reads the command line of the benchmark program, which only the scripts below bench and eng/take-pictures call.</summary>
internal static class CommandLine
{
    private const int Missed = 1;
    private const int BadInput = 2;

    internal static int Run(string[] args)
    {
        Dictionary<string, string> options = new(StringComparer.Ordinal);
        for (int i = 1; i + 1 < args.Length; i += 2)
        {
            options[args[i]] = args[i + 1];
        }

        switch (args.Length == 0 ? "" : args[0])
        {
            case "figures" when options.TryGetValue("--demo", out string? demo):
                return FigureRun.Run(demo, options.GetValueOrDefault("--program"), options.GetValueOrDefault("--results"), Origin(options)) ? 0 : Missed;
            case "reach" when options.TryGetValue("--scratch", out string? folder):
                return ReachBench.Run(folder, options.GetValueOrDefault("--program"), options.GetValueOrDefault("--viewshed")) ? 0 : Missed;
            case "relay" when options.TryGetValue("--scratch", out string? folder) && options.TryGetValue("--program", out string? program):
                return RelayBench.Run(folder, program) ? 0 : Missed;
            case "workbench" when options.TryGetValue("--scratch", out string? folder) && options.TryGetValue("--program", out string? program):
                return WorkbenchBench.Run(folder, program).GetAwaiter().GetResult() ? 0 : Missed;
            case "pictures" when options.TryGetValue("--out", out string? folder) && options.TryGetValue("--scratch", out string? scratch) && options.TryGetValue("--program", out string? program):
                ReadmePictures.Take(folder, scratch, program).GetAwaiter().GetResult();
                return 0;
            case "proof" when options.TryGetValue("--scratch", out string? folder) && options.TryGetValue("--program", out string? program):
                return ProofFigures.Run(folder, program, options.GetValueOrDefault("--results"), Origin(options)) ? 0 : Missed;
            case "first-frame":
                NearMap.Print();
                return 0;
            case "soak" when options.TryGetValue("--scratch", out string? scratch):
                SoakSettings settings = new()
                {
                    Scratch = scratch,
                    Results = options.GetValueOrDefault("--results"),
                    Minutes = double.Parse(options.GetValueOrDefault("--minutes", "10"), CultureInfo.InvariantCulture),
                    Campaign = options.GetValueOrDefault("--campaign"),
                    Start = options.TryGetValue("--start", out string? start) ? int.Parse(start, CultureInfo.InvariantCulture) : null,
                    Commit = Origin(options),
                };
                return SoakRun.Run(settings) ? 0 : Missed;
            case "killed-job" when options.TryGetValue("--folder", out string? folder):
                return JobCampaigns.RunJob(folder, Number(options, "--first"), Number(options, "--chunks"), Number(options, "--threads")) ? 0 : Missed;
            case "killed-import" when options.TryGetValue("--folder", out string? folder):
                return RecordCampaigns.RunImport(folder, Number(options, "--rows")) ? 0 : Missed;
            default:
                Console.Error.WriteLine("workbench --scratch FOLDER --program FILE | relay --scratch FOLDER --program FILE | pictures --out FOLDER --scratch FOLDER --program FILE | reach --scratch FOLDER [--program FILE] [--viewshed FILE] | proof --scratch FOLDER --program FILE [--results FOLDER] [--commit HASH] | first-frame | figures --demo FOLDER [--program FILE] [--results FOLDER] [--commit HASH] | soak --scratch FOLDER [--minutes N] [--campaign NAME] [--start N] [--results FOLDER] [--commit HASH]");
                return BadInput;
        }
    }

    private static int Number(Dictionary<string, string> options, string name) => int.Parse(options[name], CultureInfo.InvariantCulture);

    private static string Origin(Dictionary<string, string> options) => options.GetValueOrDefault("--commit", "unknown");
}
