namespace Mastwright.Quantities;

/// <summary>Random draws that depend on what they belong to and on nothing else: the same in, the same out, in any order.</summary>
/// <remarks>Source of the mixing: G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014 (SplitMix64).</remarks>
public static class KeyedDraws
{
    private const ulong Golden = 0x9E37_79B9_7F4A_7C15;

    /// <summary>A number for a text, the same on every machine.</summary>
    /// <param name="text">Any text.</param>
    public static ulong SeedOf(string text)
    {
        ArgumentNullException.ThrowIfNull(text);

        // FNV-1a over the text's characters (Fowler, Noll, Vo; IETF draft-eastlake-fnv).
        ulong hash = 14_695_981_039_346_656_037;
        foreach (char letter in text)
        {
            hash = (hash ^ letter) * 1_099_511_628_211;
        }

        return hash;
    }

    /// <summary>A number for something within what a number stands for: a world of a link, a packet of a world.</summary>
    internal static ulong Within(ulong seed, ulong part) => Mixed(seed ^ Mixed(part + Golden));

    /// <summary>A draw between 0 and 1, neither included.</summary>
    /// <param name="seed">What the draw belongs to.</param>
    /// <param name="index">Which of its draws, 0 or more.</param>
    public static double Uniform(ulong seed, int index)
    {
        ulong z = Mixed(unchecked(seed + (Golden * (ulong)(index + 1))));
        return ((z >> 11) + 0.5) / (1UL << 53);
    }

    /// <param name="seed">What the draw belongs to.</param>
    /// <param name="index">Which of its draws, 0 or more, apart from the uniform ones.</param>
    /// <summary>A standard normal draw (G. E. P. Box, M. E. Muller, Ann. Math. Statist. 29, 1958).</summary>
    public static double Normal(ulong seed, int index) =>
        Math.Sqrt(-2 * Math.Log(Uniform(seed, 2 * index))) * Math.Cos(2 * Math.PI * Uniform(seed, (2 * index) + 1));

    private static ulong Mixed(ulong z)
    {
        z = unchecked((z ^ (z >> 30)) * 0xBF58_476D_1CE4_E5B9);
        z = unchecked((z ^ (z >> 27)) * 0x94D0_49BB_1331_11EB);
        return z ^ (z >> 31);
    }
}
