namespace Mastwright.Station.Feed;

/// <summary>Reflection at a junction of a line and a load, in its customary forms.</summary>
/// <remarks>
/// With S the voltage standing-wave ratio: |Γ| = (S−1)/(S+1), return loss = −20·log10|Γ|, mismatch loss = −10·log10(1−|Γ|²).
/// Exact for a line and a load without loss between them. Carrying a reading along a line neglects what connectors reflect.
/// </remarks>
public static class Mismatch
{
    /// <summary>Size of the reflection coefficient of a VSWR of 1 or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The VSWR is below 1 or NaN.</exception>
    public static double ReflectionFromVswr(double vswr)
    {
        if (!(vswr >= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(vswr), "A VSWR is 1 or more.");
        }

        return double.IsPositiveInfinity(vswr) ? 1 : (vswr - 1) / (vswr + 1);
    }

    /// <summary>VSWR of a reflection coefficient's size, 0 to 1: infinite at 1.</summary>
    public static double VswrFromReflection(double reflection) => (1 + Size(reflection)) / (1 - reflection);

    /// <summary>Return loss in dB of a reflection coefficient's size, 0 to 1: infinite at 0.</summary>
    public static double ReturnLossDbFromReflection(double reflection) => -20 * Math.Log10(Size(reflection));

    /// <summary>Size of the reflection coefficient of a return loss in dB, zero or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The return loss is negative or NaN.</exception>
    public static double ReflectionFromReturnLossDb(double returnLossDb) =>
        returnLossDb >= 0
            ? Math.Pow(10, -returnLossDb / 20)
            : throw new ArgumentOutOfRangeException(nameof(returnLossDb), "A return loss is zero or more.");

    /// <summary>Return loss in dB of a VSWR of 1 or more.</summary>
    public static double ReturnLossDbFromVswr(double vswr) => ReturnLossDbFromReflection(ReflectionFromVswr(vswr));

    /// <summary>VSWR of a return loss in dB, zero or more.</summary>
    public static double VswrFromReturnLossDb(double returnLossDb) => VswrFromReflection(ReflectionFromReturnLossDb(returnLossDb));

    /// <summary>Loss in dB because a part of the power is turned back: infinite when all of it is.</summary>
    /// <param name="reflection">Size of the reflection coefficient, 0 to 1.</param>
    public static double LossDb(double reflection) => -10 * Math.Log10(1 - (Size(reflection) * reflection));

    /// <summary>Return loss in dB at the far end of a line, from the reading at its near end: the reflection ran the line twice.</summary>
    /// <param name="returnLossDb">Return loss at the near end in dB.</param>
    /// <param name="matchedLossDb">Loss of the line one way, in dB.</param>
    /// <returns>Zero or less when no passive load could give the reading.</returns>
    public static double ReturnLossDbAtFarEnd(double returnLossDb, double matchedLossDb) => returnLossDb - (2 * matchedLossDb);

    /// <summary>Loss in dB between the power that enters a line and the power that its mismatched load takes.</summary>
    /// <param name="matchedLossDb">Loss of the line with a matched load, in dB: zero or more.</param>
    /// <param name="loadReflection">Size of the load's reflection coefficient: 0 to less than 1.</param>
    /// <remarks>
    /// Source: 10·log10[(a²−|Γ|²)/(a·(1−|Γ|²))] with a = 10^(matched loss/10), the form of the amateur radio antenna handbooks.
    /// With the mismatch left at the radio's end it sums to matched loss plus the load's mismatch loss, which is what
    /// a radio with a matched output sees, and what the budget uses.
    /// </remarks>
    public static double TotalLineLossDb(double matchedLossDb, double loadReflection)
    {
        double a = Math.Pow(10, matchedLossDb / 10);
        double power = Size(loadReflection) * loadReflection;
        return 10 * Math.Log10(((a * a) - power) / (a * (1 - power)));
    }

    private static double Size(double reflection) => reflection is >= 0 and <= 1
        ? reflection
        : throw new ArgumentOutOfRangeException(nameof(reflection), "The size of a reflection coefficient lies between 0 and 1.");
}
