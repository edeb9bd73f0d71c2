using System.Collections.Immutable;
using Mastwright.Quantities;

namespace Mastwright.Station.BoxClimate;

/// <summary>A box through a year of hours: how warm and how cold it gets, and how long dew or frost stands in it.</summary>
public sealed class BoxYear
{
    /// <summary>Water in g/m³ by which two rounds may differ and still be the same.</summary>
    private const double SameWater = 1e-12;

    private readonly double[] _rising;

    private BoxYear(double[] rising, double coldest, bool[] least, bool[] middle, bool[] most)
    {
        _rising = rising;
        ColdestCelsius = coldest;
        int[] dewHours = [Count(least), Count(middle), Count(most)];
        DewHours = Estimate.Of(dewHours.Min(), dewHours[1], dewHours.Max());
        IsWetByHour = [.. middle];

        static int Count(bool[] wet) => wet.Count(hour => hour);
    }

    /// <summary>Highest temperature of the air inside in °C.</summary>
    public double HottestCelsius => _rising[^1];

    /// <summary>Mean temperature of the air inside in °C.</summary>
    public double MeanCelsius => _rising.Average();

    /// <summary>Lowest temperature of the air inside in °C with nothing inside that warms it: what a cold start meets.</summary>
    public double ColdestCelsius { get; }

    /// <summary>Hours in which dew or frost stands on the wall, by the least, middle and most air changes of how tight it is.</summary>
    public Estimate DewHours { get; }

    /// <summary>Whether dew or frost stands on the wall, hour by hour, by the middle air changes of how tight it is.</summary>
    public ImmutableArray<bool> IsWetByHour { get; }

    /// <summary>Hours in all.</summary>
    public int Hours => _rising.Length;

    /// <summary>Hours in which the air inside is warmer than a temperature in °C.</summary>
    public int HoursAbove(double celsius)
    {
        int low = 0;
        int high = _rising.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = _rising[middle] > celsius ? (low, middle) : (middle + 1, high);
        }

        return _rising.Length - low;
    }

    /// <summary>Takes a box through the hours, which go round: the year before was the same.</summary>
    /// <param name="box">The box.</param>
    /// <param name="hours">The hours, one or more.</param>
    public static BoxYear Of(BoxModel box, ReadOnlySpan<BoxHour> hours)
    {
        ArgumentNullException.ThrowIfNull(box);
        ArgumentOutOfRangeException.ThrowIfZero(hours.Length, nameof(hours));
        double[] inside = new double[hours.Length];
        double[] stays = new double[hours.Length];
        double[] vapour = new double[hours.Length];
        double coldest = double.PositiveInfinity;
        for (int i = 0; i < hours.Length; i++)
        {
            (double air, double cold, double roof) = box.Of(hours[i]);
            inside[i] = air;
            coldest = Math.Min(coldest, cold);
            stays[i] = HumidAir.GramsPerCubicMetre(air, HumidAir.SaturationHpa(Math.Min(roof, air)));
            vapour[i] = HumidAir.GramsPerCubicMetre(hours[i].OutsideCelsius, hours[i].Humidity * HumidAir.SaturationHpa(hours[i].OutsideCelsius));
        }

        Estimate changes = box.AirChangesPerHour;
        bool[][] dew = [Dew(changes.Low), Dew(changes.Median), Dew(changes.High)];
        Array.Sort(inside);
        return new(inside, coldest, dew[0], dew[1], dew[2]);

        bool[] Dew(double airChanges) => WetByHour(inside, stays, vapour, airChanges);
    }

    private static bool[] WetByHour(double[] inside, double[] stays, double[] vapour, double airChanges)
    {
        double water = HumidAir.GramsPerCubicMetre(BoxDefaults.ShutCelsius, BoxDefaults.ShutHumidity * HumidAir.SaturationHpa(BoxDefaults.ShutCelsius));
        bool[] wet = new bool[inside.Length];
        double[] firstRound = new double[inside.Length];

        // The first time round finds the water that the second begins with. Once the two agree they go on alike: mostly within days.
        for (int year = 0; year < 2; year++)
        {
            for (int i = 0; i < inside.Length; i++)
            {
                double before = inside[i == 0 ? inside.Length - 1 : i - 1];

                // What it breathes in as it cools comes on top of what leaks.
                double breath = Math.Max(0, SealedAir.Breath(1, before, inside[i]));
                water = BoxWater.AfterHour(water, stays[i], vapour[i], airChanges + breath);
                if (year > 0 && Math.Abs(water - firstRound[i]) <= SameWater)
                {
                    return wet;
                }

                firstRound[i] = water;
                wet[i] = water > stays[i];
            }
        }

        return wet;
    }
}
