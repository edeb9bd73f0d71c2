using System.Text.Json;
using System.Text.Json.Nodes;

namespace Mastwright.Benchmarks;

/// <summary>Writes a result: beside its name first, so that no half of one is ever there.</summary>
internal static class ResultFile
{
    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    internal static void Write(string path, JsonObject content)
    {
        string beside = path + ".part";
        using (FileStream stream = File.Create(beside))
        {
            stream.Write(JsonSerializer.SerializeToUtf8Bytes(content, Indented));
            stream.WriteByte((byte)'\n');
            stream.Flush(flushToDisk: true);
        }

        File.Move(beside, path, overwrite: true);
        Console.Out.WriteLine($"Wrote {Path.GetRelativePath(Directory.GetCurrentDirectory(), path)}");
    }
}
