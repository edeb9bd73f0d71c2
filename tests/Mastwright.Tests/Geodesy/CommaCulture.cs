using System.Globalization;

namespace Mastwright.Tests.Geodesy;

/// <summary>A culture that writes numbers as de-DE does; the program runs without culture data, so it is made here.</summary>
internal static class CommaCulture
{
    internal static CultureInfo Create()
    {
        CultureInfo culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = "−";
        return culture;
    }
}
