using System.Globalization;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Text.Json.Nodes;

namespace Mastwright.Benchmarks;

/// <summary>What the figures were measured on.</summary>
internal static class Machine
{
    /// <summary>Width in bits of the vectors that the runtime uses.</summary>
    internal static int VectorBits { get; } =
        Vector512.IsHardwareAccelerated ? 512 : Vector256.IsHardwareAccelerated ? 256 : Vector128.IsHardwareAccelerated ? 128 : 0;

    /// <summary>The processor as the system names it.</summary>
    internal static string Processor { get; } = FindProcessor();

    internal static JsonObject ToJson(string commit) => new()
    {
        ["processor"] = Processor,
        ["architecture"] = RuntimeInformation.ProcessArchitecture.ToString(),
        ["threads"] = Environment.ProcessorCount,
        ["vector_bits"] = VectorBits,
        ["runtime"] = Environment.Version.ToString(),
        ["system"] = RuntimeInformation.OSDescription,
        ["load"] = Load(),
        ["commit"] = commit,
    };

    /// <summary>Programs that wanted a processor in the last minute, as the system counts them; null where it does not.</summary>
    internal static double? Load()
    {
        const string file = "/proc/loadavg";
        return File.Exists(file) && double.TryParse(File.ReadAllText(file).Split(' ')[0], NumberStyles.Float, CultureInfo.InvariantCulture, out double load) ? load : null;
    }

    /// <summary>Today, which names the result files.</summary>
    internal static string Date() => TimeProvider.System.GetUtcNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string FindProcessor()
    {
        const string file = "/proc/cpuinfo";
        if (File.Exists(file))
        {
            foreach (string line in File.ReadLines(file))
            {
                if (line.StartsWith("model name", StringComparison.Ordinal))
                {
                    return line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim();
                }
            }
        }

        return "unknown";
    }
}
