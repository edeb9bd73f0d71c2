using Mastwright.Plans;
using Mastwright.Station;
using Mastwright.Storage.Plans;

namespace Mastwright.Cli;

/// <summary>Opens plans and reads choices for commands: what is wrong goes to the error output.</summary>
internal static class ConsoleSessions
{
    extension(PlanSession)
    {
        /// <summary>Opens a plan; tells what is wrong on the error output and gives null when it cannot be used.</summary>
        internal static PlanSession? Open(string path, bool allowOutside, long? cacheBytes = null) => PlanSession.Open(path, allowOutside, Console.Error.WriteLine, cacheBytes);

        /// <summary>Reads a plan; tells what is wrong on the error output and gives null when it cannot be used.</summary>
        internal static PlanDocument? Read(string path, bool allowOutside) => PlanSession.Read(path, allowOutside, Console.Error.WriteLine);

        /// <summary>The catalogue of a plan; tells what is wrong on the error output and gives null when it cannot be used.</summary>
        internal static StationCatalogue? Catalogue(PlanDocument document, bool allowOutside) => PlanSession.Catalogue(document, allowOutside, Console.Error.WriteLine);
    }

    extension(StationChoice)
    {
        /// <summary>Finds a station; tells what is wrong on the error output and gives null.</summary>
        internal static LinkStation? Find(Plan plan, string name) => Told(StationChoice.Find(plan, name, out string problem), problem);
    }

    extension(FitOutChoice)
    {
        /// <summary>Reads the choices; tells what is wrong on the error output and gives null.</summary>
        internal static Dictionary<string, string>? Read(Plan plan, IEnumerable<string> choices) => Told(FitOutChoice.Read(plan, choices, out string problem), problem);
    }

    /// <summary>Files that turned out to be damaged while they were read; tells them on the error output and says whether there are any.</summary>
    internal static bool TellDamage(this PlanSession session) => session.TellDamage(Console.Error.WriteLine);

    private static T? Told<T>(T? found, string problem)
        where T : class
    {
        if (found is null)
        {
            Console.Error.WriteLine(problem);
        }

        return found;
    }
}
