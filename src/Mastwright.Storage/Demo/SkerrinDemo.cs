using System.Collections.Immutable;
using Mastwright.Storage.Files;

namespace Mastwright.Storage.Demo;

/// <summary>What came of writing the demo out.</summary>
/// <param name="PlanPath">The plan to run.</param>
/// <param name="Written">Files that were written, relative to the folder.</param>
/// <param name="LeftAlone">Files that somebody has changed, relative to the folder: they stay as they are.</param>
/// <param name="GroundWritten">Whether the ground had to be made.</param>
public sealed record SkerrinDemoFiles(
    string PlanPath, ImmutableArray<string> Written, ImmutableArray<string> LeftAlone, bool GroundWritten);

/// <summary>The demo: the plan of an invented island with its parts and its ground, written out for anyone to run and change.</summary>
public static class SkerrinDemo
{
    private const string ListName = "written.txt";
    private const string ResourcePrefix = "demo/skerrin/";
    private static readonly string[] Names = ["plan.yaml", "parts.yaml", "records.yaml", "README.md"];

    /// <summary>The text of one of the demo's own files as it is shipped: "plan.yaml", "parts.yaml", "records.yaml" or "README.md".</summary>
    /// <exception cref="ArgumentException">There is no such file.</exception>
    public static ImmutableArray<byte> Shipped(string name)
    {
        using Stream stream = typeof(SkerrinDemo).Assembly.GetManifestResourceStream(ResourcePrefix + name)
            ?? throw new ArgumentException($"The demo has no file '{name}'.", nameof(name));
        byte[] content = new byte[stream.Length];
        stream.ReadExactly(content);
        return System.Runtime.InteropServices.ImmutableCollectionsMarshal.AsImmutableArray(content);
    }

    /// <summary>Writes plan, parts, notes and ground into a folder.</summary>
    /// <remarks>A file that is there and is not as this program, or an earlier version of it, wrote it is somebody's work and is left alone.</remarks>
    /// <param name="folder">Folder to write into; made when it is not there.</param>
    /// <exception cref="IOException">The folder cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    public static SkerrinDemoFiles WriteTo(string folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        Directory.CreateDirectory(folder);
        string listPath = Path.Combine(folder, ListName);
        WrittenList before = WrittenList.Read(listPath);
        WrittenList after = WrittenList.Of("Skerrin demo, invented", folder, []);
        ImmutableArray<string>.Builder written = ImmutableArray.CreateBuilder<string>();
        ImmutableArray<string>.Builder leftAlone = ImmutableArray.CreateBuilder<string>();
        foreach (string name in Names)
        {
            string path = Path.Combine(folder, name);
            ImmutableArray<byte> shipped = Shipped(name);
            string shippedHash = WrittenList.Hash(shipped.AsSpan());
            string present = File.Exists(path) ? WrittenList.HashOfFile(path) : "";
            if (present == shippedHash)
            {
                after.Add(name, shippedHash);
            }
            else if (present.Length == 0 || present == before.HashOf(name))
            {
                WholeFile.Write(path, shipped.AsSpan());
                written.Add(name);
                after.Add(name, shippedHash);
            }
            else
            {
                leftAlone.Add(name);
            }
        }

        if (written.Count > 0 || before.Writer.Length == 0)
        {
            after.Write(listPath);
        }

        bool groundWritten = SkerrinGround.WriteTo(folder);
        return new(Path.Combine(folder, Names[0]), written.ToImmutable(), leftAlone.ToImmutable(), groundWritten);
    }
}
