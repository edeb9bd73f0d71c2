using System.Text;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>Writes one imported station as lines of a plan.</summary>
internal static class StationText
{
    internal static void Append(StringBuilder block, ExchangedPlace place, string key, BlockPlace at, string newLine, SitesImportOptions options)
    {
        string outer = new(' ', at.Indent);
        string inner = new(' ', at.Indent + 2);
        block.Append(outer).Append(key).Append(':').Append(newLine);
        string name = OneLine(place.Name);
        if (name.Length > 0)
        {
            block.Append(inner).Append("name: ").Append(YamlScalar.Write(name)).Append(newLine);
        }

        string radius = place.Position.RadiusMetres > 0 ? $" ± {PlaceNumbers.Write(place.Position.RadiusMetres)} m" : "";
        block.Append(inner)
            .Append("position: ")
            .Append(PlaceNumbers.Write(place.Position.Point.LatitudeDegrees))
            .Append(", ")
            .Append(PlaceNumbers.Write(place.Position.Point.LongitudeDegrees))
            .Append(radius)
            .Append(newLine);
        if (place.ElevationMetres is { } elevation)
        {
            block.Append(inner)
                .Append(options.ElevationIsGround ? "ground-height: " : "# elevation in the file: ")
                .Append(PlaceNumbers.Write(elevation))
                .Append(" m")
                .Append(newLine);
        }

        foreach (string line in place.Remark.ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            block.Append(inner).Append("# ").Append(OneLine(line)).Append(newLine);
        }
    }

    /// <summary>The text with everything that would break a line, or is no whole character, made a blank.</summary>
    private static string OneLine(string text)
    {
        StringBuilder clean = new(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (clean.Length < PlanLimits.ValueLength - 2)
            {
                string character = rune.ToString();
                clean.Append(ScalarBinder.IsText(character) ? character : " ");
            }
        }

        return clean.ToString().Trim();
    }
}
