using System.Globalization;

namespace Mastwright.Pictures.Drawings;

/// <summary>How large a picture is drawn, in pixels at scale 1.</summary>
/// <remarks>The default value has no size and is refused by whatever draws.</remarks>
public readonly record struct PictureSize
{
    /// <summary>A size: 640 to 4000 pixels across, 360 to 4000 down. Below that, text and plot have no room beside each other.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public PictureSize(int widthPixels, int heightPixels)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(widthPixels, 640);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(widthPixels, 4000);
        ArgumentOutOfRangeException.ThrowIfLessThan(heightPixels, 360);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(heightPixels, 4000);
        WidthPixels = widthPixels;
        HeightPixels = heightPixels;
    }

    /// <summary>The size for a screen or a printed page across: 1200 × 520.</summary>
    public static PictureSize Wide => new(1200, 520);

    /// <summary>The size for a narrow column: 800 × 400.</summary>
    public static PictureSize Small => new(800, 400);

    /// <summary>Pixels across.</summary>
    public int WidthPixels { get; }

    /// <summary>Pixels down.</summary>
    public int HeightPixels { get; }

    /// <summary>Both numbers.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{WidthPixels} × {HeightPixels}");
}

/// <summary>What a picture is drawn for. The default is <see cref="Light"/>.</summary>
public enum Theme
{
    /// <summary>Dark on light: paper and bright screens.</summary>
    Light,

    /// <summary>Light on dark.</summary>
    Dark,
}
