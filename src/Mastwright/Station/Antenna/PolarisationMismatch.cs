using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Antenna;

/// <summary>What it costs when the two antennas of a link are polarised differently.</summary>
public static class PolarisationMismatch
{
    /// <summary>Loss in dB between crossed linear polarisations over a real path: 20 dB, between 10 and 30. Common practice: in theory it is without end, and clutter turns some of the wave round.</summary>
    public static Estimate CrossedLossDb { get; } = Estimate.Of(10, 20, 30);

    /// <summary>Loss in dB between two polarisations: zero when they are the same.</summary>
    public static Estimate LossDb(Polarisation one, Polarisation other) => one == other ? Estimate.Exactly(0) : CrossedLossDb;

    /// <summary>A finding when two ends are polarised differently; null when they are the same.</summary>
    /// <param name="one">Polarisation of one end.</param>
    /// <param name="other">Polarisation of the other end.</param>
    /// <param name="subject">The link that is judged.</param>
    public static Finding? Judge(Polarisation one, Polarisation other, string subject) => one == other ? null : new()
    {
        Code = "polarisation-differs",
        Subject = subject,
        // The link's own margin, which this loss is part of, decides whether the link fails.
        Verdict = Verdict.Tight,
        Quantity = "loss between the polarisations",
        Unit = "dB",
        Value = CrossedLossDb,
        Limit = 0,
        Margin = -CrossedLossDb.Median,
        Source = "common practice",
        Details = FindingDetails.Of(
            ("one", one == Polarisation.Vertical ? "vertical" : "horizontal"),
            ("other", other == Polarisation.Vertical ? "vertical" : "horizontal"),
            ("loss", "about 20 dB")),
    };
}
