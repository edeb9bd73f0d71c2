using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Mastwright.Storage.Plans;

/// <summary>The JSON Schema (draft 2020-12) of the plan format, for editors: made from the description that the reader itself uses.</summary>
public static class PlanSchema
{
    /// <summary>Contains a digit and ends in something that is neither a digit nor a space, or in the square of "mm2": a number with a unit.</summary>
    internal const string QuantityPattern = "\\d[\\s\\S]*([^\\d\\s.]|m2)\\s*$";

    /// <summary>The schema as indented JSON text, the same on every call.</summary>
    /// <param name="included">Whether the schema is that of an included file with parts rather than of a plan.</param>
    public static string ToJson(bool included = false)
    {
        ArrayBufferWriter<byte> buffer = new();
        JsonWriterOptions options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" };
        using (Utf8JsonWriter writer = new(buffer, options))
        {
            writer.WriteStartObject();
            writer.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
            writer.WriteString("title", included ? "Mastwright parts, version 1" : "Mastwright plan, version 1");
            Body(writer, included ? PlanKeys.IncludedShape : PlanKeys.Shape);
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Body(Utf8JsonWriter writer, ValueShape shape)
    {
        switch (shape)
        {
            case MappingShape mapping:
                Mapping(writer, mapping);
                break;
            case KeyedShape keyed:
                writer.WriteString("type", "object");
                writer.WriteBoolean("additionalProperties", false);
                writer.WriteStartObject("patternProperties");
                Nested(writer, keyed.KeyPattern, keyed.Item);
                writer.WriteEndObject();
                break;
            case ListShape list:
                writer.WriteString("type", "array");
                Nested(writer, "items", list.Item);
                break;
            case OneOrManyShape many:
                writer.WriteStartArray("anyOf");
                Element(writer, many.Item);
                Element(writer, new ListShape(many.Item));
                writer.WriteEndArray();
                break;
            case AlternativesShape alternatives:
                writer.WriteStartArray("oneOf");
                foreach (MappingShape choice in alternatives.Choices)
                {
                    Element(writer, choice);
                }

                writer.WriteEndArray();
                break;
            default:
                Scalar(writer, shape);
                break;
        }
    }

    private static void Mapping(Utf8JsonWriter writer, MappingShape mapping)
    {
        writer.WriteString("type", "object");
        writer.WriteBoolean("additionalProperties", false);
        KeyShape[] required = [.. mapping.Keys.Where(key => key.Required && !mapping.MayComeFromPart(key))];
        if (required.Length > 0)
        {
            writer.WriteStartArray("required");
            foreach (KeyShape key in required)
            {
                writer.WriteStringValue(key.Name);
            }

            writer.WriteEndArray();
        }

        writer.WriteStartObject("properties");
        foreach (KeyShape key in mapping.Keys)
        {
            writer.WriteStartObject(key.Name);
            writer.WriteString("description", key.Meaning);
            if (key.MayBeEmpty)
            {
                writer.WriteStartArray("anyOf");
                Element(writer, key.Value);
                writer.WriteStartObject();
                writer.WriteString("type", "null");
                writer.WriteEndObject();
                writer.WriteEndArray();
            }
            else
            {
                Body(writer, key.Value);
            }

            writer.WriteEndObject();
        }

        writer.WriteEndObject();
    }

    private static void Scalar(Utf8JsonWriter writer, ValueShape shape)
    {
        switch (shape)
        {
            case NumberShape number:
                writer.WriteString("type", "number");
                writer.WriteNumber("minimum", number.Minimum);
                writer.WriteNumber("maximum", number.Maximum);
                break;
            case WholeShape whole:
                writer.WriteString("type", "integer");
                writer.WriteNumber("minimum", whole.Minimum);
                writer.WriteNumber("maximum", whole.Maximum);
                break;
            case YesNoShape:
                // YAML 1.1 editors turn yes into true, YAML 1.2 editors leave the word.
                writer.WriteStartArray("enum");
                writer.WriteBooleanValue(true);
                writer.WriteBooleanValue(false);
                writer.WriteStringValue("yes");
                writer.WriteStringValue("no");
                writer.WriteEndArray();
                break;
            case ChoiceShape choice:
                writer.WriteStartArray("enum");
                foreach (string word in choice.Words)
                {
                    writer.WriteStringValue(word);
                }

                writer.WriteEndArray();
                break;
            case QuantityShape quantity:
                writer.WriteString("type", "string");
                writer.WriteString("pattern", QuantityPattern);
                Example(writer, quantity.Example);
                break;
            case PositionShape:
                writer.WriteString("type", "string");
                Example(writer, "46.4012, -18.7421 ± 5 m");
                break;
            case KeyNameShape key:
                writer.WriteString("type", "string");
                writer.WriteString("pattern", KeyNameShape.Pattern);
                Example(writer, key.Example);
                break;
            case FormShape form:
                writer.WriteString("type", "string");
                writer.WriteString("pattern", form.Pattern);
                break;
            case TextShape text:
                writer.WriteString("type", "string");
                Example(writer, text.Example);
                break;
            case FileShape file:
                writer.WriteString("type", "string");
                Example(writer, file.Example);
                break;
            default:
                throw new InvalidOperationException($"The schema does not know {shape.GetType().Name}.");
        }
    }

    private static void Example(Utf8JsonWriter writer, string example)
    {
        writer.WriteStartArray("examples");
        writer.WriteStringValue(example);
        writer.WriteEndArray();
    }

    private static void Nested(Utf8JsonWriter writer, string name, ValueShape shape)
    {
        writer.WriteStartObject(name);
        Body(writer, shape);
        writer.WriteEndObject();
    }

    private static void Element(Utf8JsonWriter writer, ValueShape shape)
    {
        writer.WriteStartObject();
        Body(writer, shape);
        writer.WriteEndObject();
    }
}
