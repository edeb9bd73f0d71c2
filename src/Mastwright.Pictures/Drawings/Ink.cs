using System.Globalization;
using System.Runtime.CompilerServices;

namespace Mastwright.Pictures.Drawings;

/// <summary>A colour to draw with: red, green, blue and opacity, each 0 to 255.</summary>
/// <param name="Red">Red, 0 to 255.</param>
/// <param name="Green">Green, 0 to 255.</param>
/// <param name="Blue">Blue, 0 to 255.</param>
/// <param name="Opacity">0 draws nothing, 255 hides what is below.</param>
/// <remarks>The default draws nothing.</remarks>
public readonly record struct Ink(byte Red, byte Green, byte Blue, byte Opacity)
{
    /// <summary>An opaque colour from its six hexadecimal digits, such as 0x1F5FA8.</summary>
    public static Ink Of(int rgb) => new((byte)(rgb >> 16), (byte)(rgb >> 8), (byte)rgb, 255);

    /// <summary>The same colour, seen through: 0 nothing, 1 opaque.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The share is not between 0 and 1.</exception>
    public Ink Veil(double share)
    {
        if (!(share >= 0 && share <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "An opacity lies between 0 and 1.");
        }

        return this with { Opacity = (byte)Math.Round(share * 255) };
    }

    /// <summary>An opaque colour between this one, at 0, and another, at 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Ink Towards(Ink other, double share) => new(Between(Red, other.Red, share), Between(Green, other.Green, share), Between(Blue, other.Blue, share), 255);

    /// <summary>Six hexadecimal digits after a number sign, without the opacity.</summary>
    public string ToHex() => string.Create(CultureInfo.InvariantCulture, $"#{Red:x2}{Green:x2}{Blue:x2}");

    /// <summary>The digits, and the opacity where it is not full.</summary>
    public override string ToString() =>
        Opacity == 255 ? ToHex() : string.Create(CultureInfo.InvariantCulture, $"{ToHex()}/{Opacity}");

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static byte Between(byte here, byte there, double share) => (byte)Math.Round(here + ((there - here) * share));
}
