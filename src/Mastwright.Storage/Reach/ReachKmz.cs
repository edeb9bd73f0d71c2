using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Xml;
using Mastwright.Geodesy;

namespace Mastwright.Storage.Reach;

/// <summary>Packs a reach map as KMZ for a phone or a globe: KML 2.2 (OGC 07-147r2) with a ground overlay, its legend and the stations.</summary>
public static class ReachKmz
{
    private const string Namespace = "http://www.opengis.net/kml/2.2";

    /// <summary>Same input, same bytes: the entries carry no time of writing.</summary>
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>The bytes of the file.</summary>
    /// <param name="content">What it shows.</param>
    public static byte[] Write(ReachKmzContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        using MemoryStream file = new();
        using (ZipArchive zip = new(file, ZipArchiveMode.Create, leaveOpen: true))
        {
            Add(zip, "doc.kml", Document(content));
            Add(zip, "map.png", content.MapPng.Span);
            Add(zip, "legend.png", content.LegendPng.Span);
        }

        return file.ToArray();
    }

    private static void Add(ZipArchive zip, string name, ReadOnlySpan<byte> bytes)
    {
        ZipArchiveEntry entry = zip.CreateEntry(name, CompressionLevel.Optimal);
        entry.LastWriteTime = NoTime;
        using Stream stream = entry.Open();
        stream.Write(bytes);
    }

    private static byte[] Document(ReachKmzContent content)
    {
        using MemoryStream text = new();
        using (XmlWriter xml = XmlWriter.Create(text, new() { Indent = true, NewLineChars = "\n", Encoding = new UTF8Encoding(false) }))
        {
            xml.WriteStartElement("kml", Namespace);
            xml.WriteStartElement("Document", Namespace);
            Element(xml, "name", content.Name);
            Element(xml, "description", content.Description);
            xml.WriteStartElement("GroundOverlay", Namespace);
            Element(xml, "name", content.Name);
            Icon(xml, "map.png");
            xml.WriteStartElement("LatLonBox", Namespace);
            Element(xml, "north", Number(content.NorthDegrees));
            Element(xml, "south", Number(content.SouthDegrees));
            Element(xml, "east", Number(content.EastDegrees));
            Element(xml, "west", Number(content.WestDegrees));
            xml.WriteEndElement();
            xml.WriteEndElement();
            Legend(xml);
            foreach ((string name, GeoPoint place) in content.Stations)
            {
                xml.WriteStartElement("Placemark", Namespace);
                Element(xml, "name", name);
                xml.WriteStartElement("Point", Namespace);
                Element(xml, "coordinates", $"{Number(place.LongitudeDegrees)},{Number(place.LatitudeDegrees)}");
                xml.WriteEndElement();
                xml.WriteEndElement();
            }

            xml.WriteEndElement();
            xml.WriteEndElement();
        }

        return text.ToArray();
    }

    private static void Legend(XmlWriter xml)
    {
        xml.WriteStartElement("ScreenOverlay", Namespace);
        Element(xml, "name", "Legend");
        Icon(xml, "legend.png");
        foreach (string corner in (string[])["overlayXY", "screenXY"])
        {
            xml.WriteStartElement(corner, Namespace);
            xml.WriteAttributeString("x", "0");
            xml.WriteAttributeString("y", "1");
            xml.WriteAttributeString("xunits", "fraction");
            xml.WriteAttributeString("yunits", "fraction");
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    private static void Icon(XmlWriter xml, string file)
    {
        xml.WriteStartElement("Icon", Namespace);
        Element(xml, "href", file);
        xml.WriteEndElement();
    }

    private static void Element(XmlWriter xml, string name, string text) => xml.WriteElementString(name, Namespace, text);

    private static string Number(double degrees) => degrees.ToString("0.########", CultureInfo.InvariantCulture);
}

/// <summary>What a KMZ file of a reach map shows.</summary>
public sealed record ReachKmzContent
{
    /// <summary>Name of the map.</summary>
    public required string Name { get; init; }

    /// <summary>What it shows, in sentences.</summary>
    public required string Description { get; init; }

    /// <summary>The stations: the name of each, and where it stands.</summary>
    public required ImmutableArray<(string Name, GeoPoint Place)> Stations { get; init; }

    /// <summary>The overlay as PNG, evenly spaced in degrees.</summary>
    public required ReadOnlyMemory<byte> MapPng { get; init; }

    /// <summary>The legend as PNG.</summary>
    public required ReadOnlyMemory<byte> LegendPng { get; init; }

    /// <summary>Western edge of the overlay in degrees.</summary>
    public required double WestDegrees { get; init; }

    /// <summary>Southern edge in degrees.</summary>
    public required double SouthDegrees { get; init; }

    /// <summary>Eastern edge in degrees.</summary>
    public required double EastDegrees { get; init; }

    /// <summary>Northern edge in degrees.</summary>
    public required double NorthDegrees { get; init; }
}
