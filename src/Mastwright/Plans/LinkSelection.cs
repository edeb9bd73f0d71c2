using System.Collections.Immutable;

namespace Mastwright.Plans;

/// <summary>Which stations of a plan count, and which pairs of them are judged.</summary>
public static class LinkSelection
{
    /// <summary>The stations: each site with the fit-out chosen for it (else the one in use; none: left out), then the neighbours.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="chosen">Fit-out by site key that takes the place of the one in use.</param>
    public static ImmutableArray<LinkStation> Stations(Plan plan, IReadOnlyDictionary<string, string> chosen)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(chosen);
        ImmutableArray<LinkStation>.Builder stations = ImmutableArray.CreateBuilder<LinkStation>();
        foreach (Site site in plan.Sites)
        {
            string key = chosen.GetValueOrDefault(site.Key, site.InUse);
            if (site.FitOuts.FirstOrDefault(fitOut => fitOut.Key == key) is { } fitOut)
            {
                stations.Add(LinkStation.Of(site, fitOut));
            }
        }

        stations.AddRange(plan.Neighbours.Select(one => Station(plan, one)));
        return stations.ToImmutable();
    }

    /// <summary>The station of a neighbour, with the height of the correction that the plan uses where its own is not known.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="neighbour">A neighbour of it.</param>
    public static LinkStation Station(Plan plan, Neighbour neighbour) => Filled(plan, LinkStation.Of(neighbour));

    /// <summary>A station with the height of the correction that a plan uses, where its own is not known.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="station">The station.</param>
    public static LinkStation Filled(Plan plan, LinkStation station)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(station);
        return CorrectionUse.Filled(plan, station);
    }

    /// <summary>
    /// The pairs to judge: those that the plan lists, else every pair with at least one site; in the plan's order. A listed pair of which an
    /// end does not count (a trial site) is left out.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="stations">The stations that count.</param>
    /// <param name="site">Key of the one site whose pairs are wanted; null for all.</param>
    public static ImmutableArray<(LinkStation From, LinkStation To)> Pairs(Plan plan, ImmutableArray<LinkStation> stations, string? site = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        IEnumerable<(LinkStation From, LinkStation To)> pairs = plan.Links.IsEmpty ? EveryPair(stations) : Listed(plan, stations);
        return [.. pairs.Where(pair => site is null || pair.From.Key == site || pair.To.Key == site)];
    }

    private static IEnumerable<(LinkStation From, LinkStation To)> EveryPair(ImmutableArray<LinkStation> stations)
    {
        for (int i = 0; i < stations.Length; i++)
        {
            for (int j = i + 1; j < stations.Length; j++)
            {
                if (stations[i].IsSite || stations[j].IsSite)
                {
                    yield return (stations[i], stations[j]);
                }
            }
        }
    }

    private static IEnumerable<(LinkStation From, LinkStation To)> Listed(Plan plan, ImmutableArray<LinkStation> stations)
    {
        Dictionary<string, LinkStation> byKey = stations.ToDictionary(station => station.Key, StringComparer.Ordinal);
        foreach (WantedLink link in plan.Links)
        {
            if (byKey.TryGetValue(link.From, out LinkStation? from) && byKey.TryGetValue(link.To, out LinkStation? to))
            {
                yield return (from, to);
            }
        }
    }
}
