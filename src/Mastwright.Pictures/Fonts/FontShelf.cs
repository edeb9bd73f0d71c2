using System.Reflection;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Fonts;

/// <summary>The two fonts that are embedded in the program, read when first asked for.</summary>
internal static class FontShelf
{
    private static readonly Lazy<FontFile> Regular = new(() => Read("fonts/regular.ttf"));
    private static readonly Lazy<FontFile> SemiBold = new(() => Read("fonts/semibold.ttf"));

    /// <summary>The font of a weight.</summary>
    /// <exception cref="InvalidOperationException">The program was built without it; text would silently be missing.</exception>
    public static FontFile Of(TextWeight weight) => weight == TextWeight.SemiBold ? SemiBold.Value : Regular.Value;

    /// <summary>The whole file of a weight, for a page to show its own text in.</summary>
    /// <exception cref="InvalidOperationException">The program was built without it.</exception>
    internal static byte[] Bytes(TextWeight weight) => Bytes(weight == TextWeight.SemiBold ? "fonts/semibold.ttf" : "fonts/regular.ttf");

    /// <summary>Reads an embedded font, or refuses.</summary>
    internal static FontFile Read(string name) => FontFile.Parse(Bytes(name));

    private static byte[] Bytes(string name)
    {
        using Stream? stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name);
        if (stream is null)
        {
            throw new InvalidOperationException($"The font '{name}' is not in the program, so no text can be drawn. Build it again with npm at hand.");
        }

        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
