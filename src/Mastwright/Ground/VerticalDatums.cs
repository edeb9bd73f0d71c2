using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Ground;

/// <summary>Reviews what the height sources of a plan say about their heights.</summary>
public static class VerticalDatums
{
    /// <summary>Findings on datums that differ or are unknown, and on sources that do not say what their heights are of.</summary>
    /// <param name="sources">The plan's height sources, with the datum that the file states where the plan gives none.</param>
    /// <param name="otherDatums">Datums of the heights above sea level that the plan gives for antennas; null or empty when it gives none.</param>
    /// <returns>Nothing when every source says the same; each finding with a plan path as its subject.</returns>
    public static ImmutableArray<Finding> Review(IEnumerable<HeightSource> sources, IEnumerable<string>? otherDatums = null)
    {
        ArgumentNullException.ThrowIfNull(sources);
        List<HeightSource> all = [.. sources];
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
        string[] datums =
        [
            .. all.Select(source => source.Datum).Concat(otherDatums ?? [])
                .Where(datum => datum.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase),
        ];
        if (datums.Length > 1)
        {
            findings.Add(Of("ground-datums-mixed", Verdict.Tight, "ground", ("datums", string.Join(", ", datums))));
        }

        for (int i = 0; i < all.Count; i++)
        {
            HeightSource source = all[i];
            string subject = $"ground/heights/{i + 1}";
            if (source.Datum.Length == 0)
            {
                findings.Add(Of("ground-datum-unknown", Verdict.Unknown, subject, ("source", source.Name)));
            }

            if (source.Kind == HeightKind.Unknown)
            {
                findings.Add(Of("ground-kind-unknown", Verdict.Unknown, subject, ("source", source.Name)));
            }
        }

        return findings.ToImmutable();
    }

    private static Finding Of(string code, Verdict verdict, string subject, (string Name, string Value) detail) => new()
    {
        Code = code,
        Subject = subject,
        Verdict = verdict,
        Source = "common practice",
        Details = ImmutableSortedDictionary<string, string>.Empty.Add(detail.Name, detail.Value),
    };
}
