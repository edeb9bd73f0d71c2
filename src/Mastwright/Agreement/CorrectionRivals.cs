namespace Mastwright.Agreement;

/// <summary>The simpler ways to predict that a correction has to beat, each with what it can fit: one number, or two.</summary>
internal static class CorrectionRivals
{
    /// <summary>Cover of the second rival, in metres: what suburbs are often taken for (common practice).</summary>
    internal const double UniformCoverMetres = 12;

    /// <summary>Height of an unknown antenna with the rivals, in metres: a roof or a tower (common practice).</summary>
    internal const double UsualHeightMetres = 30;

    /// <summary>Name and prediction: from the links trained on and the link left out, the signal power in dBm.</summary>
    internal static IEnumerable<(string Name, Func<IReadOnlyList<MeasuredLink>, Func<MeasuredLink, double>> Fit)> Of(CorrectionTable table)
    {
        yield return ("the method as the plan has it, and an offset", links => WithOffset(table, links, 0));
        yield return (FormattableString.Invariant($"the method with {UniformCoverMetres:0} m of cover, and an offset"), links => WithOffset(table, links, UniformCoverMetres));
        yield return ("level against the logarithm of distance", AgainstDistance);
    }

    private static Func<MeasuredLink, double> WithOffset(CorrectionTable table, IReadOnlyList<MeasuredLink> links, double coverMetres)
    {
        int candidate = Enumerable.Range(0, table.Candidates.Length)
            .MinBy(place => (Math.Abs(table.Candidates[place].CoverMetres - coverMetres), Math.Abs((table.Candidates[place].HeightMetres ?? UsualHeightMetres) - UsualHeightMetres)));
        double offset = links.Average(link => link.OffDb(candidate));
        return link => link.PredictedDbm[candidate] + offset;
    }

    /// <summary>The loss as a straight line over the logarithm of distance, by least squares.</summary>
    private static Func<MeasuredLink, double> AgainstDistance(IReadOnlyList<MeasuredLink> links)
    {
        double meanX = links.Average(X);
        double meanY = links.Average(Y);
        double along = links.Sum(link => (X(link) - meanX) * (Y(link) - meanY));
        double across = links.Sum(link => (X(link) - meanX) * (X(link) - meanX));
        double slope = across > 0 ? along / across : 0;
        return link => link.AtNoLossDbm + meanY + (slope * (X(link) - meanX));
    }

    private static double X(MeasuredLink link) => Math.Log10(link.DistanceMetres);

    private static double Y(MeasuredLink link) => link.MeasuredDbm - link.AtNoLossDbm;
}
