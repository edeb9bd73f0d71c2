using System.Collections.Immutable;

namespace Mastwright.Station.Sun;

/// <summary>What a panel makes of the light in every hour of a year, with and without its horizon: worked out once for all years that one sun shines on.</summary>
public sealed class PanelTrack
{
    private PanelTrack(ImmutableArray<PanelView> open, ImmutableArray<PanelView> shaded)
    {
        Open = open;
        Shaded = shaded;
    }

    /// <summary>Hour by hour with a level horizon.</summary>
    public ImmutableArray<PanelView> Open { get; }

    /// <summary>Hour by hour behind its horizon.</summary>
    public ImmutableArray<PanelView> Shaded { get; }

    /// <summary>The track of a panel under a sun.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="horizon">Its horizon.</param>
    /// <param name="sun">Where the sun stands.</param>
    public static PanelTrack Of(SolarPanel panel, HorizonLine horizon, SunTrack sun)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(sun);
        ImmutableArray<PanelView> open = [.. sun.Places.Select(place => panel.ViewOf(place, HorizonLine.Level))];
        return new(open, ReferenceEquals(horizon, HorizonLine.Level) ? open : [.. sun.Places.Select(place => panel.ViewOf(place, horizon))]);
    }
}
