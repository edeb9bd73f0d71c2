namespace Mastwright.Storage.Demo;

/// <summary>The shore of Skerrin and what it is like: metres east and north of the island's middle in, metres out.</summary>
internal static class SkerrinOutline
{
    private const double HalfLengthMetres = 16_600;
    private const double HalfWidthMetres = 9_500;

    /// <summary>About how far inland a place is, in metres; negative at sea.</summary>
    public static double InlandMetres(double x, double y)
    {
        double wideX = x + (1_300 * SkerrinNoise.At(x / 7_500, y / 7_500, 11)) + (450 * SkerrinNoise.At(x / 2_400, y / 2_400, 12));
        double wideY = y + (1_300 * SkerrinNoise.At(x / 7_500, y / 7_500, 13)) + (450 * SkerrinNoise.At(x / 2_400, y / 2_400, 14));

        // The long axis lies north-north-east: the 7-24-25 triangle turns it by 16° without a sine.
        double along = ((0.28 * wideX) + (0.96 * wideY)) / HalfLengthMetres;
        double across = ((0.96 * wideX) - (0.28 * wideY)) / HalfWidthMetres;
        double inland = HalfWidthMetres * (1 - Math.Sqrt((along * along) + (across * across)));
        inland += 2_500 * SkerrinNoise.Sum(x / 4_600, y / 4_600, 21, 5, 0.56);

        double nearX = x + (620 * SkerrinNoise.Sum(x / 2_100, y / 2_100, 31, 4, 0.55));
        double nearY = y + (620 * SkerrinNoise.Sum(x / 2_100, y / 2_100, 35, 4, 0.55));
        foreach (Stroke headland in Headlands)
        {
            inland = SmoothMost(inland, -headland.OutsideMetres(nearX, nearY), 700);
        }

        foreach (Stroke bay in Bays)
        {
            inland = -SmoothMost(-inland, -bay.OutsideMetres(nearX, nearY), 900);
        }

        double islet = -Islet.OutsideMetres(x + (0.2 * (nearX - x)), y + (0.2 * (nearY - y)));
        inland = Math.Max(inland, islet);
        return inland + (150 * SkerrinNoise.Sum(x / 620, y / 620, 41, 4, 0.62));
    }

    /// <summary>Height of the edge of the land above the sea, in metres: a few at bays and beaches, tens where there are cliffs.</summary>
    public static double ShoreHeightMetres(double x, double y)
    {
        double sheltered = double.MaxValue;
        foreach (Stroke bay in Bays)
        {
            sheltered = Math.Min(sheltered, bay.OutsideMetres(x, y));
        }

        if (Islet.OutsideMetres(x, y) < 1_500)
        {
            return 28;
        }

        double open = SkerrinNoise.Rise(300, 2_600, sheltered);
        double wild = SkerrinNoise.Rise(-0.3, 0.4, SkerrinNoise.Sum(x / 3_600, y / 3_600, 51, 3));
        return 3 + (open * (5 + (82 * wild)));
    }

    /// <summary>The larger of two values, with a rounded edge of the given width where they meet.</summary>
    private static double SmoothMost(double left, double right, double width)
    {
        double apart = Math.Abs(left - right);
        double most = Math.Max(left, right);
        if (apart >= width)
        {
            return most;
        }

        double near = width - apart;
        return most + (near * near / (4 * width));
    }

    private static readonly Stroke[] Bays =
    [
        new(-15_500, 1_900, -8_300, 0, 900), // the western harbour
        new(-9_000, 0, -7_000, -650, 520), // its inner basin
        new(15_000, -1_900, 7_200, -500, 1_900), // the eastern bay
        new(9_500, -600, 6_300, 900, 700), // its northern pocket
        new(9_000, -1_200, 6_200, -2_300, 650), // its southern pocket
        new(-4_500, 17_500, -3_200, 10_400, 700), // the long inlet of the north
        new(2_500, -18_500, 1_400, -13_000, 800), // the south sound
    ];

    private static readonly Stroke[] Headlands =
    [
        new(-7_000, -4_600, -10_900, -4_300, 620), // the pilots' headland
        new(8_000, -5_000, 10_300, -5_800, 900),
        new(8_000, 4_600, 10_300, 3_400, 900),
        new(4_500, 12_500, 6_600, 16_300, 900),
    ];

    private static readonly Stroke Islet = new(-16_010, 2_080, -15_740, 2_260, 230);

    /// <summary>A thick line: everything within a radius of a stretch.</summary>
    private readonly record struct Stroke(double FromX, double FromY, double ToX, double ToY, double RadiusMetres)
    {
        public double OutsideMetres(double x, double y)
        {
            double runX = ToX - FromX;
            double runY = ToY - FromY;
            double share = (((x - FromX) * runX) + ((y - FromY) * runY)) / ((runX * runX) + (runY * runY));
            share = Math.Min(1, Math.Max(0, share));
            double dx = x - (FromX + (share * runX));
            double dy = y - (FromY + (share * runY));
            return Math.Sqrt((dx * dx) + (dy * dy)) - RadiusMetres;
        }
    }
}
