using System.Text.Json;
using Mastwright.Propagation;

namespace Mastwright.Reports.Documents;

/// <summary>The intermediates of ITU-R P.1812 as a JSON object, by the names of the published result files.</summary>
internal static class P1812Json
{
    internal static void P1812(this Utf8JsonWriter writer, string name, P1812Result? result)
    {
        if (result is not { } values)
        {
            writer.WriteNull(name);
            return;
        }

        writer.WriteStartObject(name);
        foreach ((string symbol, double value) in values.Named())
        {
            writer.Number(symbol, value);
        }

        writer.WriteEndObject();
    }
}
