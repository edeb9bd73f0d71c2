namespace Mastwright.Station.BoxClimate;

/// <summary>The hottest or the coldest that the air in a box comes to: in the hour that is designed for, or in one of a year of weather that goes beyond it.</summary>
/// <param name="InsideCelsius">Air inside in °C.</param>
/// <param name="OutsideCelsius">Air outside in that hour, in °C.</param>
/// <param name="DesignCelsius">Air inside in °C in the hour that is designed for.</param>
/// <param name="IsOfYear">Whether an hour of the year goes beyond that.</param>
internal readonly record struct BoxExtreme(double InsideCelsius, double OutsideCelsius, double DesignCelsius, bool IsOfYear)
{
    /// <summary>The hottest.</summary>
    /// <param name="model">The box with all that is inside at its highest.</param>
    /// <param name="outsideCelsius">Hottest air that is designed for, in °C.</param>
    /// <param name="year">A year of weather; empty without one.</param>
    internal static BoxExtreme Hottest(BoxModel model, double outsideCelsius, ReadOnlySpan<BoxHour> year)
    {
        double design = model.HottestCelsius(outsideCelsius);
        BoxExtreme hottest = new(design, outsideCelsius, design, false);
        foreach (ref readonly BoxHour hour in year)
        {
            double inside = model.Of(hour).Inside;
            if (inside > hottest.InsideCelsius)
            {
                hottest = new(inside, hour.OutsideCelsius, design, true);
            }
        }

        return hottest;
    }

    /// <summary>The coldest.</summary>
    /// <param name="model">The box with nothing on.</param>
    /// <param name="outsideCelsius">Coldest air that is designed for, in °C.</param>
    /// <param name="year">A year of weather; empty without one.</param>
    internal static BoxExtreme Coldest(BoxModel model, double outsideCelsius, ReadOnlySpan<BoxHour> year)
    {
        double design = model.NightCelsius(outsideCelsius);
        BoxExtreme coldest = new(design, outsideCelsius, design, false);
        foreach (ref readonly BoxHour hour in year)
        {
            double inside = model.Of(hour).Cold;
            if (inside < coldest.InsideCelsius)
            {
                coldest = new(inside, hour.OutsideCelsius, design, true);
            }
        }

        return coldest;
    }
}
