using System.Collections.Immutable;

namespace Mastwright.Station.BoxClimate;

/// <summary>An IP code of IEC 60529: how much of solids and of water a case keeps out.</summary>
/// <remarks>
/// A second numeral up to 6 holds for every lower one too; 7 and 8 (under water) do not stand for 5 and 6 (jets), which is why a case may carry two codes
/// (IEC 60529, clause 6). 9 stands for none of them. A numeral of X was not tested and counts as 0.
/// </remarks>
public sealed class IngressCode
{
    private const int LeastUnderWater = 7;

    private readonly ImmutableArray<(int First, int Second)> _codes;

    private IngressCode(string text, ImmutableArray<(int First, int Second)> codes)
    {
        Text = text;
        _codes = codes;
    }

    /// <summary>As it is written, in capitals.</summary>
    public string Text { get; }

    /// <summary>The largest numeral for solids.</summary>
    public int First => _codes.Max(code => code.First);

    /// <summary>Whether it was tested under water.</summary>
    public bool IsUnderWater => _codes.Any(code => code.Second is LeastUnderWater or LeastUnderWater + 1);

    /// <summary>Reads a code such as "IP66", "IPX7" or "IP66/IP67".</summary>
    /// <param name="text">The text.</param>
    /// <param name="code">The code; null when the text is none.</param>
    /// <returns>Whether it is a code.</returns>
    public static bool TryParse(string? text, out IngressCode? code)
    {
        code = null;
        if (string.IsNullOrWhiteSpace(text))
        {
            return false;
        }

        string written = text.Trim().ToUpperInvariant();
        ImmutableArray<(int, int)>.Builder codes = ImmutableArray.CreateBuilder<(int, int)>();
        foreach (string part in written.Split('/', StringSplitOptions.TrimEntries))
        {
            string numerals = part.StartsWith("IP", StringComparison.Ordinal) ? part[2..] : part;
            if (numerals.Length != 2 || Numeral(numerals[0], 6) is not { } first || Numeral(numerals[1], 9) is not { } second)
            {
                return false;
            }

            codes.Add((first, second));
        }

        code = new(written, codes.ToImmutable());
        return true;
    }

    /// <summary>Whether what was tested for this code keeps out what another asks for.</summary>
    public bool Covers(IngressCode needed)
    {
        ArgumentNullException.ThrowIfNull(needed);
        return needed._codes.All(want => _codes.Any(has => has.First >= want.First) && _codes.Any(has => Keeps(has.Second, want.Second)));
    }

    /// <summary>The code as written.</summary>
    public override string ToString() => Text;

    private static bool Keeps(int has, int wanted) => has == wanted || (has > wanted && (has < LeastUnderWater || wanted >= LeastUnderWater) && has != 9) || wanted == 0
        || (has is LeastUnderWater or LeastUnderWater + 1 && wanted <= 4);

    private static int? Numeral(char letter, int most) => letter == 'X' ? 0 : letter is >= '0' and <= '9' && letter - '0' <= most ? letter - '0' : null;
}
