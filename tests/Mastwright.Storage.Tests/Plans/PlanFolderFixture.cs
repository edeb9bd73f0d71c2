using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Tests.Plans;

/// <summary>A folder of its own for one test, with a plan in it; gone afterwards.</summary>
internal sealed class PlanFolderFixture : IDisposable
{
    internal PlanFolderFixture() => Folder = Directory.CreateTempSubdirectory("mastwright-plan-").FullName;

    internal string Folder { get; }

    internal string Plan => Path.Combine(Folder, "plan.yaml");

    internal string Write(string name, string text)
    {
        string path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    internal PlanReading Read(string text, PlanReadOptions? options = null)
    {
        Write("plan.yaml", text);
        return PlanFile.Read(Plan, options);
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
