using System.Reflection;

namespace Mastwright.Records.Store;

/// <summary>The steps that bring the tables of an engine to the newest form: the embedded files migrations/ENGINE/NNNN-name.sql, in order.</summary>
internal static class StoreSteps
{
    internal static IReadOnlyList<string> Of(string engine)
    {
        Assembly here = typeof(StoreSteps).Assembly;
        List<string> steps = [];
        foreach (string name in here.GetManifestResourceNames().Where(name => name.StartsWith($"migrations/{engine}/", StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using StreamReader reader = new(here.GetManifestResourceStream(name)!);
            steps.Add(reader.ReadToEnd());
        }

        return steps;
    }
}
