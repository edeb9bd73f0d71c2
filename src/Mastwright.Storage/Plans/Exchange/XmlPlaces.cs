using System.Text;
using System.Xml;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>What the two XML formats share: bounded reading without document types, and clean text.</summary>
internal static class XmlPlaces
{
    /// <summary>Namespace of the elements of our own that a GPX file carries.</summary>
    internal const string OwnNamespace = "urn:mastwright:plan:1";

    private const int Deepest = 64;

    /// <summary>A reader that takes no document type, follows nothing and ends at 16 million characters.</summary>
    internal static XmlReader Open(byte[] bytes) => XmlReader.Create(new MemoryStream(bytes), new XmlReaderSettings
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        MaxCharactersInDocument = PlanLimits.FileBytes,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
        IgnoreWhitespace = true,
    });

    /// <summary>The line that the reader is at.</summary>
    internal static int Line(XmlReader reader) => reader is IXmlLineInfo info && info.HasLineInfo() ? info.LineNumber : 0;

    /// <summary>Moves on, and refuses nesting that no file of places has.</summary>
    internal static bool Read(XmlReader reader)
    {
        bool more = reader.Read();
        return reader.Depth <= Deepest ? more : throw new PlaceFaultException(Line(reader), "The nesting is deeper than any file of places has.");
    }

    /// <summary>The text inside the element that the reader is at, markup left out; the reader ends at its end tag.</summary>
    internal static string Text(XmlReader reader)
    {
        if (reader.IsEmptyElement)
        {
            return "";
        }

        StringBuilder text = new();
        int depth = reader.Depth;
        while (Read(reader) && !(reader.NodeType == XmlNodeType.EndElement && reader.Depth == depth))
        {
            if (reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.SignificantWhitespace)
            {
                text.Append(reader.Value);
            }
        }

        return text.ToString().Trim();
    }

    /// <summary>A text without the characters that XML cannot hold.</summary>
    internal static string Clean(string text)
    {
        StringBuilder clean = new(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (XmlConvert.IsXmlChar(text[i]))
            {
                clean.Append(text[i]);
            }
            else if (i + 1 < text.Length && XmlConvert.IsXmlSurrogatePair(text[i + 1], text[i]))
            {
                clean.Append(text[i]).Append(text[++i]);
            }
        }

        return clean.ToString();
    }

    /// <summary>Writes an XML document as text.</summary>
    internal static string Write(Action<XmlWriter> content)
    {
        using MemoryStream stream = new();
        using (XmlWriter writer = XmlWriter.Create(stream, new XmlWriterSettings { Indent = true, NewLineChars = "\n", Encoding = new UTF8Encoding(false) }))
        {
            content(writer);
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }
}
