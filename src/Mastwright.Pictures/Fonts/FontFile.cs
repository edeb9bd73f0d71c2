using System.Buffers.Binary;
using System.Text;

namespace Mastwright.Pictures.Fonts;

/// <summary>A TrueType font in memory: which characters it has and how wide they are.</summary>
/// <remarks>
/// Reads the tables head, maxp, hhea, hmtx and cmap (formats 4 and 12) of the OpenType specification (ISO/IEC 14496-22). Immutable,
/// safe from many threads. Written for the font that ships in the program, not for files from strangers.
/// </remarks>
internal sealed class FontFile
{
    private readonly byte[] bytes;
    private readonly Dictionary<string, (int Offset, int Length)> tables = new(StringComparer.Ordinal);
    private readonly Dictionary<int, int> glyphs = [];

    private FontFile(byte[] bytes) => this.bytes = bytes;

    /// <summary>The whole file.</summary>
    public ReadOnlyMemory<byte> Bytes => bytes;

    /// <summary>Font units in one em.</summary>
    public int UnitsPerEm { get; private set; }

    /// <summary>Number of glyphs.</summary>
    public int GlyphCount { get; private set; }

    private int MetricCount { get; set; }

    /// <summary>Reads a font.</summary>
    /// <exception cref="InvalidDataException">It is not a TrueType font, or a needed table is missing.</exception>
    public static FontFile Parse(byte[] bytes)
    {
        FontFile font = new(bytes);
        if (bytes.Length < 12 || font.UInt32(0) != 0x00010000)
        {
            throw new InvalidDataException("The font is not a TrueType file.");
        }

        int count = font.UInt16(4);
        for (int i = 0; i < count; i++)
        {
            int entry = 12 + (16 * i);
            font.tables[Encoding.ASCII.GetString(bytes, entry, 4)] = ((int)font.UInt32(entry + 8), (int)font.UInt32(entry + 12));
        }

        font.UnitsPerEm = font.UInt16(font.At("head") + 18);
        font.GlyphCount = font.UInt16(font.At("maxp") + 4);
        font.MetricCount = font.UInt16(font.At("hhea") + 34);
        font.ReadCharacterMap();
        return font;
    }

    /// <summary>Whether the font has a glyph for the character.</summary>
    public bool Has(Rune rune) => glyphs.ContainsKey(rune.Value);

    /// <summary>The glyph of a character; 0, the box, when there is none.</summary>
    public int GlyphOf(Rune rune) => glyphs.GetValueOrDefault(rune.Value);

    /// <summary>How far the pen moves for a glyph, in font units.</summary>
    public int AdvanceUnits(int glyph) => UInt16(At("hmtx") + (4 * Math.Min(glyph, MetricCount - 1)));

    /// <summary>Where a glyph's outline begins on its left, in font units.</summary>
    public int LeftBearingUnits(int glyph)
    {
        int place = glyph < MetricCount ? (4 * glyph) + 2 : (4 * MetricCount) + (2 * (glyph - MetricCount));
        return (short)UInt16(At("hmtx") + place);
    }

    /// <summary>The bytes of a glyph's outline; empty for a blank.</summary>
    public ReadOnlySpan<byte> Outline(int glyph)
    {
        bool wide = UInt16(At("head") + 50) == 1;
        int places = At("loca");
        int from = wide ? (int)UInt32(places + (4 * glyph)) : 2 * UInt16(places + (2 * glyph));
        int to = wide ? (int)UInt32(places + (4 * glyph) + 4) : 2 * UInt16(places + (2 * glyph) + 2);
        return bytes.AsSpan(At("glyf") + from, to - from);
    }

    /// <summary>A table's bytes.</summary>
    public ReadOnlySpan<byte> Table(string tag) => bytes.AsSpan(At(tag), tables[tag].Length);

    private int At(string tag) => tables.TryGetValue(tag, out (int Offset, int Length) table)
        ? table.Offset
        : throw new InvalidDataException($"The font has no table '{tag}'.");

    private int UInt16(int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at));

    private uint UInt32(int at) => BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at));

    private void ReadCharacterMap()
    {
        int map = At("cmap");
        int count = UInt16(map + 2);
        for (int i = 0; i < count; i++)
        {
            int table = map + (int)UInt32(map + 4 + (8 * i) + 4);
            switch (UInt16(table))
            {
                case 4:
                    ReadSegments(table);
                    break;
                case 12:
                    ReadGroups(table);
                    break;
            }
        }

        if (glyphs.Count == 0)
        {
            throw new InvalidDataException("The font has no character map of format 4 or 12.");
        }
    }

    private void ReadSegments(int table)
    {
        int doubled = UInt16(table + 6);
        for (int i = 0; i < doubled; i += 2)
        {
            int end = UInt16(table + 14 + i);
            int start = UInt16(table + 16 + doubled + i);
            int delta = UInt16(table + 16 + (2 * doubled) + i);
            int rangeAt = table + 16 + (3 * doubled) + i;
            int range = UInt16(rangeAt);
            for (int code = start; code <= end && code != 0xFFFF; code++)
            {
                int glyph = range == 0 ? code : UInt16(rangeAt + range + (2 * (code - start)));
                glyph = range == 0 || glyph != 0 ? (glyph + delta) & 0xFFFF : 0;
                Keep(code, glyph);
            }
        }
    }

    private void ReadGroups(int table)
    {
        uint count = UInt32(table + 12);
        for (int i = 0; i < count; i++)
        {
            int group = table + 16 + (12 * i);
            int start = (int)UInt32(group);
            int end = (int)UInt32(group + 4);
            int first = (int)UInt32(group + 8);
            for (int code = start; code <= end; code++)
            {
                Keep(code, first + code - start);
            }
        }
    }

    private void Keep(int code, int glyph)
    {
        if (glyph != 0)
        {
            glyphs[code] = glyph;
        }
    }
}
