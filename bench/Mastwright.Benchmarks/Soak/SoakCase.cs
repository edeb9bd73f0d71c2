using System.Text;

namespace Mastwright.Benchmarks.Soak;

/// <summary>One case: an input, and what must hold for it.</summary>
/// <param name="FileName">Name under which the input is kept when the case fails.</param>
/// <param name="Input">The input; for a case that is all numbers, they as text.</param>
/// <param name="Check">Throws when something does not hold, or when what it tries throws.</param>
internal sealed record SoakCase(string FileName, byte[] Input, Action Check)
{
    internal static SoakCase OfText(string fileName, string text, Action check) => new(fileName, Encoding.UTF8.GetBytes(text), check);
}

/// <summary>Many cases of one kind; a start number alone makes its case again.</summary>
/// <param name="Name">Name on the command line and in the result.</param>
/// <param name="Make">Makes the case of a start number.</param>
internal sealed record Campaign(string Name, Func<Random, SoakCase> Make)
{
    /// <summary>The longest that a case may take on a busy machine, in seconds.</summary>
    internal double MostSeconds { get; init; } = 20;

    /// <summary>The most that a case may allocate in all, in bytes; the largest sound input of most campaigns takes a twentieth.</summary>
    internal long MostBytes { get; init; } = 600L << 20;

    /// <summary>What the campaign counts beside its cases, by name, as it stands now; null for nothing.</summary>
    internal (string Name, Func<long> Now)? Counted { get; init; }
}

/// <summary>Something that must hold does not.</summary>
internal sealed class SoakFailureException : Exception
{
    public SoakFailureException()
    {
    }

    public SoakFailureException(string message)
        : base(message)
    {
    }

    public SoakFailureException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    internal static void Require(bool holds, string what)
    {
        if (!holds)
        {
            throw new SoakFailureException(what);
        }
    }
}
