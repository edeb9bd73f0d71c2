using System.Buffers.Binary;
using System.Text;

namespace Mastwright.Pictures.Fonts;

/// <summary>A small TrueType font that holds only the characters a picture uses, to be embedded in it.</summary>
/// <remarks>
/// Tables as the OpenType specification lays them out. Hints and kerning are left out: a screen does without hints, and widths then equal
/// <see cref="TextRuler"/>'s. The name table keeps the copyright and licence lines of the font and gives up its name, as the licence
/// of the font asks of a modified version.
/// </remarks>
internal static class FontSubset
{
    private const int ArgumentsAreWords = 0x0001;
    private const int HasScale = 0x0008;
    private const int MoreComponents = 0x0020;
    private const int HasTwoScales = 0x0040;
    private const int HasMatrix = 0x0080;
    private const int HasInstructions = 0x0100;

    /// <summary>The font of the given characters; those that the font lacks are passed over.</summary>
    public static byte[] Of(FontFile font, IEnumerable<Rune> runes)
    {
        SortedDictionary<int, int> characters = [];
        List<int> kept = [0];
        Dictionary<int, int> numbers = new() { [0] = 0 };
        foreach (Rune rune in runes.Where(font.Has).Distinct().Order())
        {
            characters[rune.Value] = Number(font.GlyphOf(rune), kept, numbers);
        }

        // The list grows while it is walked: an accented letter brings its parts along.
        List<byte[]> outlines = [];
        for (int i = 0; i < kept.Count; i++)
        {
            outlines.Add(Bare(font.Outline(kept[i]), kept, numbers));
        }

        SortedDictionary<string, byte[]> tables = new(StringComparer.Ordinal)
        {
            ["OS/2"] = font.Table("OS/2").ToArray(),
            ["cmap"] = CharacterMap(characters),
            ["glyf"] = [.. outlines.SelectMany(outline => outline)],
            ["head"] = Patched(font.Table("head"), (50, 1), (8, 0), (10, 0)),
            ["hhea"] = Patched(font.Table("hhea"), (34, kept.Count)),
            ["hmtx"] = [.. kept.SelectMany(glyph => Words(font.AdvanceUnits(glyph), font.LeftBearingUnits(glyph)))],
            ["loca"] = Places(outlines),
            ["maxp"] = Patched(font.Table("maxp"), (4, kept.Count)),
            ["name"] = Names(font.Table("name")),
            ["post"] = [0, 3, 0, 0, .. font.Table("post")[4..16], .. new byte[16]],
        };
        return Assembled(tables);
    }

    private static int Number(int glyph, List<int> kept, Dictionary<int, int> numbers)
    {
        if (!numbers.TryGetValue(glyph, out int number))
        {
            number = kept.Count;
            numbers[glyph] = number;
            kept.Add(glyph);
        }

        return number;
    }

    /// <summary>An outline without its hints, its parts renumbered, padded to four bytes.</summary>
    private static byte[] Bare(ReadOnlySpan<byte> outline, List<int> kept, Dictionary<int, int> numbers)
    {
        if (outline.IsEmpty)
        {
            return [];
        }

        int contours = BinaryPrimitives.ReadInt16BigEndian(outline);
        List<byte> bare = [];
        if (contours >= 0)
        {
            int hintsAt = 10 + (2 * contours);
            int hints = BinaryPrimitives.ReadUInt16BigEndian(outline[hintsAt..]);
            bare.AddRange(outline[..hintsAt]);
            bare.AddRange([0, 0]);
            bare.AddRange(outline[(hintsAt + 2 + hints)..]);
        }
        else
        {
            bare.AddRange(outline[..10]);
            int at = 10;
            int flags;
            do
            {
                flags = BinaryPrimitives.ReadUInt16BigEndian(outline[at..]);
                int part = Number(BinaryPrimitives.ReadUInt16BigEndian(outline[(at + 2)..]), kept, numbers);
                int tail = (flags & ArgumentsAreWords) != 0 ? 4 : 2;
                tail += (flags & HasScale) != 0 ? 2 : (flags & HasTwoScales) != 0 ? 4 : (flags & HasMatrix) != 0 ? 8 : 0;
                bare.AddRange(Words(flags & ~HasInstructions, part));
                bare.AddRange(outline.Slice(at + 4, tail));
                at += 4 + tail;
            }
            while ((flags & MoreComponents) != 0);
        }

        while (bare.Count % 4 != 0)
        {
            bare.Add(0);
        }

        return [.. bare];
    }

    private static byte[] CharacterMap(SortedDictionary<int, int> characters)
    {
        // Format 12, one group a character: short lists, and characters beyond U+FFFF need no second table.
        List<byte> map = [.. Words(0, 1, 3, 10), .. Long(12), .. Words(12, 0), .. Long(16 + (12 * characters.Count)), .. Long(0), .. Long(characters.Count)];
        foreach ((int code, int glyph) in characters)
        {
            map.AddRange([.. Long(code), .. Long(code), .. Long(glyph)]);
        }

        return [.. map];
    }

    private static byte[] Places(List<byte[]> outlines)
    {
        List<byte> places = [.. Long(0)];
        int sum = 0;
        foreach (byte[] outline in outlines)
        {
            sum += outline.Length;
            places.AddRange(Long(sum));
        }

        return [.. places];
    }

    private static byte[] Names(ReadOnlySpan<byte> names)
    {
        List<(int Id, byte[] Text)> kept = [];
        int count = BinaryPrimitives.ReadUInt16BigEndian(names[2..]);
        int storage = BinaryPrimitives.ReadUInt16BigEndian(names[4..]);
        for (int i = 0; i < count; i++)
        {
            ReadOnlySpan<byte> entry = names.Slice(6 + (12 * i), 12);
            int id = BinaryPrimitives.ReadUInt16BigEndian(entry[6..]);
            if (BinaryPrimitives.ReadUInt16BigEndian(entry) == 3 && id is 0 or 14)
            {
                int length = BinaryPrimitives.ReadUInt16BigEndian(entry[8..]);
                kept.Add((id, names.Slice(storage + BinaryPrimitives.ReadUInt16BigEndian(entry[10..]), length).ToArray()));
            }
        }

        foreach (int id in (ReadOnlySpan<int>)[1, 4, 6])
        {
            kept.Add((id, Encoding.BigEndianUnicode.GetBytes(id == 6 ? "MastwrightText" : "Mastwright Text")));
        }

        kept.Add((2, Encoding.BigEndianUnicode.GetBytes("Regular")));
        kept = [.. kept.OrderBy(name => name.Id)];
        List<byte> table = [.. Words(0, kept.Count, 6 + (12 * kept.Count))];
        int at = 0;
        foreach ((int id, byte[] text) in kept)
        {
            table.AddRange(Words(3, 1, 0x409, id, text.Length, at));
            at += text.Length;
        }

        return [.. table, .. kept.SelectMany(name => name.Text)];
    }

    private static byte[] Assembled(SortedDictionary<string, byte[]> tables)
    {
        int power = 1 << (int)Math.Log2(tables.Count);
        List<byte> head = [.. Long(0x00010000), .. Words(tables.Count, power * 16, (int)Math.Log2(power), (tables.Count - power) * 16)];
        List<byte> body = [];
        int start = 12 + (16 * tables.Count);
        int headAt = 0;
        foreach ((string tag, byte[] bytes) in tables)
        {
            headAt = tag == "head" ? start + body.Count : headAt;
            head.AddRange([.. Encoding.ASCII.GetBytes(tag), .. Long((int)CheckSum(bytes)), .. Long(start + body.Count), .. Long(bytes.Length)]);
            body.AddRange(bytes);
            while (body.Count % 4 != 0)
            {
                body.Add(0);
            }
        }

        byte[] font = [.. head, .. body];
        BinaryPrimitives.WriteUInt32BigEndian(font.AsSpan(headAt + 8), unchecked(0xB1B0AFBA - CheckSum(font)));
        return font;
    }

    private static uint CheckSum(ReadOnlySpan<byte> bytes)
    {
        uint sum = 0;
        for (int i = 0; i < bytes.Length; i++)
        {
            unchecked
            {
                sum += (uint)bytes[i] << (8 * (3 - (i % 4)));
            }
        }

        return sum;
    }

    private static byte[] Patched(ReadOnlySpan<byte> table, params ReadOnlySpan<(int At, int Value)> words)
    {
        byte[] copy = table.ToArray();
        foreach ((int at, int value) in words)
        {
            BinaryPrimitives.WriteUInt16BigEndian(copy.AsSpan(at), (ushort)value);
        }

        return copy;
    }

    private static byte[] Words(params ReadOnlySpan<int> values)
    {
        byte[] bytes = new byte[2 * values.Length];
        for (int i = 0; i < values.Length; i++)
        {
            BinaryPrimitives.WriteUInt16BigEndian(bytes.AsSpan(2 * i), unchecked((ushort)values[i]));
        }

        return bytes;
    }

    private static byte[] Long(int value)
    {
        byte[] bytes = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, value);
        return bytes;
    }
}
