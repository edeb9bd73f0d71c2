namespace Mastwright.Tests.Records;

/// <summary>A folder for one test, with the place of a store in it.</summary>
internal sealed class StoreFile : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("mastwright-records-");

    public string Path => Beside("records.sqlite");

    public string Folder => folder.FullName;

    public string Beside(string name) => System.IO.Path.Combine(folder.FullName, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(Beside(name), text);
        return Beside(name);
    }

    public void Dispose() => folder.Delete(recursive: true);
}
