using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Antenna;

/// <summary>The judgements on an antenna and its mount.</summary>
public static class AntennaFindings
{
    /// <summary>Gain in dB above 2·L/λ that the word "about" in that rule leaves room for.</summary>
    private const double LengthToleranceDb = 1;

    /// <summary>Drop in dB below the main beam from which a direction is called off the beam.</summary>
    private const double OffBeamDb = 3;

    /// <summary>Everything to be said of an antenna as mounted, whatever the direction.</summary>
    /// <param name="fit">The antenna.</param>
    /// <param name="frequencyHz">Frequency in hertz, greater than zero.</param>
    /// <param name="planPath">Where in the plan the antenna stands.</param>
    public static ImmutableArray<Finding> Review(AntennaFit fit, double frequencyHz, string planPath)
    {
        ArgumentNullException.ThrowIfNull(fit);
        double wavelength = SpeedOfLight / frequencyHz;
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
        if (fit.GainDbi is null)
        {
            findings.Add(Missing("antenna-gain-unknown", planPath, "gain", "gain"));
        }

        if (GainForLength(fit, wavelength, planPath) is { } gain)
        {
            findings.Add(gain);
        }

        if (SideMount(fit, wavelength, planPath) is { } mount)
        {
            findings.Add(mount);
        }

        return findings.DrainToImmutable();
    }

    /// <summary>
    /// Whether a direction lies on the antenna's main beam; <see cref="Verdict.Unknown"/> when no pattern was given and the
    /// direction is further off than half the beamwidth that goes with the gain.
    /// </summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="elevationDegrees">Angle above the horizon in degrees.</param>
    /// <param name="bearingDegrees">Direction clockwise from true north in degrees; NaN for the main beam's azimuth.</param>
    /// <param name="subject">What is judged.</param>
    public static Finding Direction(AntennaPattern pattern, double elevationDegrees, double bearingDegrees, string subject)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        double drop = -pattern.RelativeDb(elevationDegrees, bearingDegrees);
        bool blind = pattern.Kind == PatternKind.NotGiven
            && (pattern.MainBeamDbi is not { } gain || Math.Abs(elevationDegrees) > AverageSideLobes.BeamwidthDegrees(gain.Median) / 2);
        Verdict verdict = drop <= OffBeamDb ? Verdict.Ok : Verdict.Tight;
        return new()
        {
            Code = "antenna-direction",
            Subject = subject,
            Verdict = blind ? Verdict.Unknown : verdict,
            Quantity = "level below the main beam",
            Unit = "dB",
            Value = blind ? null : Estimate.Exactly(drop),
            Limit = OffBeamDb,
            Margin = blind ? null : OffBeamDb - drop,
            Source = "half-power beamwidth",
            Details = FindingDetails.Of(
                ("elevation", Text($"{elevationDegrees:0.0}°")),
                ("drop", blind ? "unknown" : Text($"{drop:0.0} dB")),
                ("form", pattern.Form),
                ("null", pattern.ClaimsNulls && drop > 15 ? " That is a null of the pattern." : "")),
        };
    }

    internal const double SpeedOfLight = 299_792_458;

    internal static Finding Missing(string code, string subject, string quantity, string missing) => new()
    {
        Code = code,
        Subject = subject,
        Verdict = Verdict.Unknown,
        Quantity = quantity,
        Details = FindingDetails.Of(("missing", missing)),
    };

    /// <summary>
    /// A uniform line source much longer than a wavelength has a directivity of 2·L/λ (any antenna textbook); a half-wave dipole's
    /// 2.15 dBi is the least that any antenna of the kind has.
    /// </summary>
    private static Finding? GainForLength(AntennaFit fit, double wavelength, string subject)
    {
        if (fit.GainDbi is not { } gain || fit.LengthMetres is not { } length || !(length > 0)
            || fit.Pattern == PatternKind.Yagi || fit.AzimuthBeamwidthDegrees is not null)
        {
            return null;
        }

        double limit = Math.Max(RadiatedPower.HalfWaveDipoleDbi, 10 * Math.Log10(2 * length / wavelength));
        return new()
        {
            Code = "antenna-gain-for-length",
            Subject = subject,
            Verdict = JudgeGain(gain, limit),
            Quantity = "gain",
            Unit = "dBi",
            Value = gain,
            Limit = limit,
            Margin = limit - gain.Median,
            Source = "directivity of a uniform line source, 2·L/λ",
            Details = FindingDetails.Of(
                ("gain", Text($"{gain.Median:0.0} dBi")),
                ("length", Text($"{length:0.00} m")),
                ("limit", Text($"{limit:0.0} dBi"))),
        };
    }

    private static Verdict JudgeGain(Estimate gain, double limit)
    {
        if (gain.Low > limit + LengthToleranceDb)
        {
            return Verdict.Fails;
        }

        if (gain.High > limit + LengthToleranceDb)
        {
            return Verdict.Unknown;
        }

        return gain.Median > limit ? Verdict.Tight : Verdict.Ok;
    }

    private static Finding? SideMount(AntennaFit fit, double wavelength, string subject)
    {
        if (fit.SideMountOffsetMetres is not { } offset)
        {
            return null;
        }

        // Never 'fails': the distance is a caution about the pattern, and the pattern that comes out may even suit.
        return new()
        {
            Code = "antenna-side-mount",
            Subject = subject,
            Verdict = offset < wavelength ? Verdict.Tight : Verdict.Ok,
            Quantity = "distance from the mast",
            Unit = "m",
            Value = Estimate.Exactly(offset),
            Limit = wavelength,
            Margin = offset - wavelength,
            Source = "common practice",
            Details = FindingDetails.Of(
                ("distance", Text($"{offset:0.00} m")),
                ("wavelength", Text($"{wavelength:0.00} m"))),
        };
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
