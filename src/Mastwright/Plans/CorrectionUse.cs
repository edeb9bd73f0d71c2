using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Plans;

/// <summary>Puts the correction that a plan uses into its predictions; without one, nothing changes.</summary>
internal static class CorrectionUse
{
    /// <summary>The correction that a plan uses; null for none.</summary>
    internal static AdoptedCorrection? Of(Plan plan) => plan.Corrections.FirstOrDefault(one => one.Key == plan.CorrectionInUse);

    /// <summary>The correction for a link between two stations; null for none.</summary>
    internal static AdoptedCorrection? For(Plan plan, LinkStation from, LinkStation to) =>
        Of(plan) is { } used && (used.IsFor(from.Key) || used.IsFor(to.Key)) ? used : null;

    /// <summary>A station with the correction's height where the plan gives none; its range is part of the spread.</summary>
    internal static LinkStation Filled(Plan plan, LinkStation station) =>
        station.Height is null && Of(plan) is { StationHeightMetres: { } metres } used && used.IsFor(station.Key)
            ? station with { Height = new MountHeight(Estimate.Exactly(metres.Median), HeightAbove.Ground), HeightIsFitted = true }
            : station;

    /// <summary>The ground under the correction's cover.</summary>
    internal static GroundMosaic Covered(AdoptedCorrection? correction, GroundMosaic ground) =>
        correction is { CoverMetres: { } cover } ? ground.WithUniformCover(cover.Median) : ground;

    /// <inheritdoc cref="Covered(AdoptedCorrection?, GroundMosaic)"/>
    internal static GroundExtent Covered(AdoptedCorrection? correction, GroundExtent ground) =>
        correction is { CoverMetres: { } cover } ? ground.WithUniformCover(cover.Median) : ground;

    /// <summary>The loss of a path with the correction's offset, and the receiving station's own, as lines of its ledger.</summary>
    /// <remarks>Their ranges are part of the spread, so that they are not counted as ranges of the level too.</remarks>
    internal static PathLossRange? Corrected(AdoptedCorrection? correction, PathLossRange? path, string receiver)
    {
        if (correction is null || path is null)
        {
            return path;
        }

        ImmutableArray<LedgerLine> lines = path.Lines.Add(OffsetLine(correction, correction.OffsetDb.Median));
        double offset = correction.OffsetDb.Median;
        if (correction.Stations.TryGetValue(receiver, out OwnCorrection own))
        {
            offset += own.OffsetDb.Median;
            lines = lines.Add(new("correction-own", $"Adopted correction {correction.Key}: what {receiver} hears", own.OffsetDb.Median, Place(correction) + "/stations/" + receiver, Range(own.OffsetDb)));
        }

        return path with { LossDb = path.LossDb - Estimate.Exactly(offset), Lines = lines };
    }

    /// <summary>The line of a correction's offset.</summary>
    /// <param name="correction">The correction.</param>
    /// <param name="valueDb">Its value: a gain in a budget of levels, or the same as a loss.</param>
    internal static LedgerLine OffsetLine(AdoptedCorrection correction, double valueDb) =>
        new("correction", $"Adopted correction {correction.Key}", valueDb, Place(correction), Range(correction.OffsetDb));

    /// <summary>What is wanted of a link, with the correction's spread in place of the model's own error and of location variability.</summary>
    /// <param name="correction">The correction; null for none.</param>
    /// <param name="wanted">What is wanted without it.</param>
    /// <param name="receiver">Key of the station that hears; null where it may be any.</param>
    internal static LinkWanted Corrected(AdoptedCorrection? correction, LinkWanted wanted, string? receiver) => correction is null ? wanted : wanted with
    {
        ModelErrorDb = receiver is not null && correction.Stations.TryGetValue(receiver, out OwnCorrection own) ? own.SpreadDb ?? correction.SpreadDb : correction.SpreadDb,
        ModelErrorSource = $"adopted correction {correction.Key}",
        LocationDb = 0,
        LocationSource = $"in the spread of adopted correction {correction.Key}",
    };

    /// <summary>What the correction takes for granted, for stations at hand.</summary>
    internal static IEnumerable<Assumption> Assumptions(AdoptedCorrection? correction, bool hasOwnCover, params IEnumerable<LinkStation> stations)
    {
        if (correction is null)
        {
            yield break;
        }

        if (correction.CoverMetres is { } cover && !hasOwnCover)
        {
            yield return new("correction-cover", Text($"cover of {cover.Median:0.#} m all along the path"), $"adopted correction {correction.Key}", Place(correction) + "/cover-height");
        }

        foreach (LinkStation station in stations.Where(station => station.HeightIsFitted))
        {
            yield return new("correction-height", Text($"height of the antenna of {station.Name}: {station.Height!.Metres.Median:0.#} m"), $"adopted correction {correction.Key}", Place(correction) + "/station-height");
        }
    }

    private static string Place(AdoptedCorrection correction) => "corrections/" + correction.Key;

    private static string Range(Estimate range) => range.IsExact ? "" : Text($"{range.Low:0.0} to {range.High:0.0} dB, counted in the spread");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
