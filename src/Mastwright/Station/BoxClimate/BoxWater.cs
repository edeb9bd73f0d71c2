namespace Mastwright.Station.BoxClimate;

/// <summary>The water in a box: vapour that comes and goes with the air, and dew that stays on the wall until the air carries it off.</summary>
/// <remarks>
/// dm/dt = n·(ρₒ − v) with m all water and v the vapour, g/m³ of the box each, n air changes per hour, ρₒ the vapour outside; v is m, but never more than what
/// the coldest wall lets stay in the air. Solved exactly from one change of rule to the next. What plastics and desiccants take up is left out.
/// </remarks>
public static class BoxWater
{
    /// <summary>All water in g/m³ after an hour.</summary>
    /// <param name="water">All water before, in g/m³.</param>
    /// <param name="stays">The vapour that can stay in the air, in g/m³.</param>
    /// <param name="outside">The vapour outside, in g/m³.</param>
    /// <param name="airChanges">Air changes in the hour, zero or more.</param>
    public static double AfterHour(double water, double stays, double outside, double airChanges)
    {
        double hours = 1;
        if (water > stays)
        {
            double perHour = airChanges * (outside - stays);
            double untilDry = perHour < 0 ? (water - stays) / -perHour : double.PositiveInfinity;
            if (untilDry >= hours)
            {
                return water + (perHour * hours);
            }

            water = stays;
            hours -= untilDry;
        }

        double after = outside + ((water - outside) * Math.Exp(-airChanges * hours));
        if (after <= stays || outside <= stays)
        {
            return Math.Min(after, Math.Max(stays, water));
        }

        // The vapour reaches what can stay on the way: from there on dew gathers evenly.
        double untilDew = Math.Log((outside - water) / (outside - stays)) / airChanges;
        return stays + (airChanges * (outside - stays) * (hours - untilDew));
    }
}
