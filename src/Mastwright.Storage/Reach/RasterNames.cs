using System.Text;
using System.Xml;

namespace Mastwright.Storage.Reach;

/// <summary>Names for the numbers of a raster, as a file beside it that GIS programs read: category names in the auxiliary XML format of GDAL.</summary>
public static class RasterNames
{
    /// <summary>What the name of the raster is followed by.</summary>
    public const string Ending = ".aux.xml";

    /// <summary>The text of the file.</summary>
    /// <param name="names">The names of 0, 1, 2 and so on.</param>
    public static string Write(IEnumerable<string> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        StringBuilder text = new();
        using (XmlWriter xml = XmlWriter.Create(text, new() { Indent = true, NewLineChars = "\n", OmitXmlDeclaration = true }))
        {
            xml.WriteStartElement("PAMDataset");
            xml.WriteStartElement("PAMRasterBand");
            xml.WriteAttributeString("band", "1");
            xml.WriteStartElement("CategoryNames");
            foreach (string name in names)
            {
                xml.WriteElementString("Category", name);
            }

            xml.WriteEndElement();
            xml.WriteEndElement();
            xml.WriteEndElement();
        }

        return text.Append('\n').ToString();
    }
}
