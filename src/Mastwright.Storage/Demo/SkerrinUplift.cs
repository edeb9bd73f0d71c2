namespace Mastwright.Storage.Demo;

/// <summary>How fast the rock rises: fastest along The Combs, slowly on the low ground.</summary>
internal static class SkerrinUplift
{
    // The spine from south-south-west to north-north-east: metres east and north of the middle, and how strongly it rises there.
    private static readonly (double X, double Y, double Strength)[] Spine =
    [
        (-3_600, -12_800, 0.25),
        (-2_000, -9_600, 0.62),
        (-300, -6_300, 0.86),
        (700, -3_200, 0.84),
        (1_500, -300, 1.0),
        (1_700, 2_600, 0.84),
        (2_700, 5_600, 0.95),
        (3_700, 8_800, 0.80),
        (5_200, 12_600, 0.30),
    ];

    private const double IsletBeyondX = -13_500;

    /// <summary>The rise, on a scale whose most is about 1; zero or more.</summary>
    public static double At(double x, double y, double inlandMetres)
    {
        if (x < IsletBeyondX)
        {
            return 0.42;
        }

        double bentX = x + (1_150 * SkerrinNoise.Sum(x / 3_000, y / 3_000, 61, 3));
        double bentY = y + (1_150 * SkerrinNoise.Sum(x / 3_000, y / 3_000, 65, 3));
        double spine = 0;
        for (int i = 1; i < Spine.Length; i++)
        {
            (double fromX, double fromY, double from) = Spine[i - 1];
            (double toX, double toY, double to) = Spine[i];
            double runX = toX - fromX;
            double runY = toY - fromY;
            double share = (((bentX - fromX) * runX) + ((bentY - fromY) * runY)) / ((runX * runX) + (runY * runY));
            share = Math.Min(1, Math.Max(0, share));
            double dx = bentX - (fromX + (share * runX));
            double dy = bentY - (fromY + (share * runY));
            double away = ((dx * dx) + (dy * dy)) / (2_050.0 * 2_050.0);
            spine = Math.Max(spine, (from + (share * (to - from))) / (1 + (away * (0.6 + (0.4 * away)))));
        }

        double hills = 0.06 + (0.17 * SkerrinNoise.Rise(-0.2, 0.9, SkerrinNoise.Sum(x / 3_800, y / 3_800, 71, 3)));
        double uneven = 1 + (0.45 * SkerrinNoise.Sum(x / 1_300, y / 1_300, 75, 2));
        return Math.Max(0, (spine + hills) * uneven) * (0.25 + (0.75 * SkerrinNoise.Rise(0, 1_600, inlandMetres)));
    }
}
