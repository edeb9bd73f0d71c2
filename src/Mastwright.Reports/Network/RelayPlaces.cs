using System.Collections.Immutable;
using Mastwright.Network.Relays;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;
using Mastwright.Storage.Network;

namespace Mastwright.Reports.Network;

/// <summary>The candidates of a search with the stations that they would be.</summary>
/// <param name="Candidates">The candidates.</param>
/// <param name="Stations">The stations, in the same order.</param>
internal sealed record RelayPlaces(ImmutableArray<RelayCandidate> Candidates, ImmutableArray<LinkStation> Stations)
{
    /// <summary>Gathers them: the user's own, else those found on the ground; null, with the problem told, when there are none.</summary>
    internal static RelayPlaces? Gather(PlanSession session, RelayArea area, LinkStation like, RelayOptions options, Action<string> tell, CancellationToken cancellation)
    {
        double mast = options.MastMetres ?? RelayOptions.UsualMastMetres;
        if (Limits(options, tell) is not { } limits)
        {
            return null;
        }

        List<RelayCandidate> candidates = [];
        List<LinkStation> stations = [];
        foreach (string name in options.Sites)
        {
            if (OfPlan(session, name, mast, tell) is not { } site)
            {
                return null;
            }

            candidates.Add(site.Candidate);
            stations.Add(site.Station);
        }

        string problem = "";
        ImmutableArray<RelayCandidate> more = options.PlacesFile is { } file
            ? RelayPlacesFile.Read(file, mast, out problem)
            : options.LooksOnGround ? RelayCandidates.Find(area.Plane, Wish(options, mast, limits), cancellation) : [];
        if (problem.Length > 0)
        {
            tell($"--places: {problem}");
            return null;
        }

        foreach (RelayCandidate candidate in more.Where(one => options.LooksOnGround || limits.Allow(one.Place)))
        {
            if (double.IsNaN(area.Ground.HeightAt(candidate.Place).Metres))
            {
                tell($"{candidate.Name} is left out: there is no ground at {candidate.Place}");
                continue;
            }

            candidates.Add(candidate);
            stations.Add(RelayStation.Of(candidate, like));
        }

        if (candidates.Count is > 0 and <= RelayOptions.MostCandidates)
        {
            return new([.. candidates], [.. stations]);
        }

        tell(candidates.Count == 0
            ? "relay: there is no candidate; allow a smaller --prominence or --spacing, or less --exclude"
            : FormattableString.Invariant($"relay: {candidates.Count} candidates are more than {RelayOptions.MostCandidates}"));
        return null;
    }

    private static RelayWish Wish(RelayOptions options, double mastMetres, RelayLimits limits) => new()
    {
        Most = options.Candidates,
        SpacingMetres = options.SpacingMetres,
        ProminenceMetres = options.ProminenceMetres,
        MastMetres = mastMetres,
        Limits = limits,
    };

    private static (RelayCandidate Candidate, LinkStation Station)? OfPlan(PlanSession session, string name, double mastMetres, Action<string> tell)
    {
        LinkStation? station = StationChoice.Find(session.Plan, name, out string problem);
        if (station is null)
        {
            tell($"--candidate: {problem}");
            return null;
        }

        bool hasSupply = station.FitOut is { } fitOut && (!fitOut.Supply.IsEmpty || fitOut.Solar is not null);
        RelayCandidate candidate = new(station.Subject, station.Name, station.Position.Point, station.Height?.Metres.Median ?? mastMetres) { Power = hasSupply ? "as the plan has it" : "" };
        return (candidate, station);
    }

    private static RelayLimits? Limits(RelayOptions options, Action<string> tell)
    {
        RelayLimits limits = RelayLimits.None;
        if (options.ExcludeFile is { } exclude)
        {
            if (Shapes("--exclude", exclude, shapes => shapes.Areas.IsEmpty, "no area", tell) is not { } shapes)
            {
                return null;
            }

            limits = limits with { Excluded = shapes.Areas };
        }

        if (options.TrackFile is { } track)
        {
            if (Shapes("--track", track, shapes => shapes.Lines.IsEmpty, "no line", tell) is not { } shapes)
            {
                return null;
            }

            limits = limits with { Tracks = shapes.Lines, TrackMetres = options.TrackMetres };
        }

        return limits;
    }

    private static RelayShapes? Shapes(string option, string path, Func<RelayShapes, bool> isEmpty, string what, Action<string> tell)
    {
        RelayShapes? shapes = RelayShapes.Read(path, out string problem);
        if (shapes is not null && isEmpty(shapes))
        {
            problem = $"{path}: it holds {what}";
        }

        if (problem.Length == 0)
        {
            return shapes;
        }

        tell($"{option}: {problem}");
        return null;
    }
}
