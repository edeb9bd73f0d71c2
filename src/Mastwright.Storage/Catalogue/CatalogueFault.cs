namespace Mastwright.Storage.Catalogue;

/// <summary>Something in a catalogue file that cannot be used: where it stands, what was found and what would be right.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Line">Line, from 1; 0 where the whole file is meant.</param>
/// <param name="Key">The key it stands at, such as "line-types/rg-213/points".</param>
/// <param name="Text">What was found and what would be right.</param>
public sealed record CatalogueFault(string File, long Line, string Key, string Text)
{
    /// <summary>File, line, key and text as one line.</summary>
    public override string ToString() => string.Create(
        System.Globalization.CultureInfo.InvariantCulture, $"{File}{(Line > 0 ? $":{Line}" : "")}{(Key.Length > 0 ? " " + Key : "")}: {Text}");
}
