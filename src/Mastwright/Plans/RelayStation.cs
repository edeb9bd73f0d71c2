using Mastwright.Network.Relays;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Plans;

/// <summary>A relay that is tried: at a candidate's place, with the radio, feed and antenna of a station of the plan.</summary>
public static class RelayStation
{
    /// <summary>The relay as links see it.</summary>
    /// <param name="candidate">Where, and how high.</param>
    /// <param name="like">The station whose radio, feed and antenna it has; what the plan says of that one's place is left out.</param>
    public static LinkStation Of(RelayCandidate candidate, LinkStation like)
    {
        ArgumentNullException.ThrowIfNull(candidate);
        ArgumentNullException.ThrowIfNull(like);
        return like with
        {
            Key = candidate.Key,
            Subject = candidate.Key,
            Name = candidate.Name,
            PlanPath = $"relays/{candidate.Key}",
            Position = new(candidate.Place, 0),
            GroundHeightMetres = null,
            Height = new(Estimate.Exactly(candidate.MastMetres), HeightAbove.Ground),
            Surroundings = new(),
            Indoors = false,
            Traffic = null,
            Site = null,
        };
    }
}
