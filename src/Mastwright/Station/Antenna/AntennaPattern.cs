using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Antenna;

/// <summary>Gain of an antenna by direction. Immutable, so safe from many threads.</summary>
public sealed class AntennaPattern
{
    private readonly AntennaFit _fit;
    private readonly PatternKind _kind;
    private readonly CollinearArray? _array;
    private readonly double _elevationBeamwidth;
    private readonly double? _azimuthBeamwidth;

    private AntennaPattern(
        AntennaFit fit, PatternKind kind, CollinearArray? array, double elevationBeamwidth, double? azimuthBeamwidth,
        Estimate? mainBeamDbi, ImmutableArray<Assumption> assumptions, ImmutableArray<Finding> findings)
    {
        _fit = fit;
        _kind = kind;
        _array = array;
        _elevationBeamwidth = elevationBeamwidth;
        _azimuthBeamwidth = azimuthBeamwidth;
        MainBeamDbi = mainBeamDbi;
        Assumptions = assumptions;
        Findings = findings;
    }

    /// <summary>The form in use, which is <see cref="PatternKind.NotGiven"/> where the fit's own lacks something it needs.</summary>
    public PatternKind Kind => _kind;

    /// <summary>What the form is, for a note beside a gain.</summary>
    public string Form => _kind switch
    {
        PatternKind.Table => "pattern from the table given",
        PatternKind.CollinearArray => _fit.NullFillDb is { } fill
            ? string.Create(CultureInfo.InvariantCulture, $"array formula, nulls filled to {fill:0.#} dB below the main beam")
            : "array formula without null fill",
        PatternKind.Yagi => "main beam by beamwidths, with a floor",
        PatternKind.AverageSideLobes => "ITU-R F.1336 average side-lobe envelope",
        _ => "no pattern given: the gain of the main beam",
    };

    /// <summary>Whether the form is an envelope or a floor beside the main beam, not the level itself.</summary>
    public bool IsEnvelope => _kind is PatternKind.AverageSideLobes or PatternKind.Yagi or PatternKind.NotGiven;

    /// <summary>Whether a low level in it is claimed to be a null: only from a table or an array formula without fill.</summary>
    public bool ClaimsNulls => _kind == PatternKind.Table || (_kind == PatternKind.CollinearArray && _fit.NullFillDb is null);

    /// <summary>Gain in dBi of the main beam; null when nobody said and no formula gives it.</summary>
    public Estimate? MainBeamDbi { get; }

    /// <summary>Whether the level is the same in all azimuths.</summary>
    public bool IsAlikeAllRound => _azimuthBeamwidth is null || _fit.BearingDegrees is null;

    /// <summary>Half-power beamwidth in the vertical plane in degrees, from the fit or from the gain; null where it was not needed.</summary>
    public double? ElevationBeamwidthDegrees => double.IsNaN(_elevationBeamwidth) ? null : _elevationBeamwidth;

    /// <summary>What was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; }

    /// <summary>What is missing for the form that the fit names.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>The pattern of an antenna as it is mounted.</summary>
    /// <param name="fit">The antenna.</param>
    /// <param name="frequencyHz">Frequency in hertz, greater than zero.</param>
    /// <param name="planPath">Where in the plan the antenna stands.</param>
    public static AntennaPattern Of(AntennaFit fit, double frequencyHz, string planPath)
    {
        ArgumentNullException.ThrowIfNull(fit);
        AntennaPatternInputs inputs = new(fit, frequencyHz, planPath);
        return new(
            fit, inputs.Kind, inputs.Array, inputs.ElevationBeamwidth, inputs.AzimuthBeamwidth,
            inputs.MainBeamDbi, [.. inputs.Assumptions], [.. inputs.Findings]);
    }

    /// <summary>Level in dB relative to the main beam: zero or less; minus infinity in a null of the formula.</summary>
    /// <param name="elevationDegrees">Angle above the horizon in degrees, -90 to 90.</param>
    /// <param name="bearingDegrees">Direction clockwise from true north in degrees; NaN for "in the main beam's azimuth".</param>
    public double RelativeDb(double elevationDegrees, double bearingDegrees = double.NaN)
    {
        double azimuthOff = AzimuthOff(bearingDegrees);

        // A beam that is tilted by its mount points up at the back by as much as it points down at the front.
        double tilt = _azimuthBeamwidth is null ? _fit.TiltDegrees : _fit.TiltDegrees * Math.Cos(double.DegreesToRadians(azimuthOff));
        double elevation = Math.Clamp(elevationDegrees - tilt, -90, 90);
        return _kind switch
        {
            PatternKind.Table => PatternTable.RelativeDb(_fit.ElevationTable, elevation) + AzimuthDb(azimuthOff),
            PatternKind.CollinearArray => _array!.RelativeDb(Math.Clamp(elevationDegrees, -90, 90)) + AzimuthDb(azimuthOff),
            PatternKind.Yagi => DirectionalBeam.RelativeDb(
                elevation, azimuthOff, _elevationBeamwidth, _azimuthBeamwidth ?? 360, StationDefaults.YagiFloorDb),
            PatternKind.AverageSideLobes => AverageSideLobes.RelativeDb(elevation, _elevationBeamwidth) + AzimuthDb(azimuthOff),
            _ => AzimuthDb(azimuthOff),
        };
    }

    /// <summary>Gain in dBi in a direction, with the range of the main beam's; null when the gain is unknown.</summary>
    /// <param name="elevationDegrees">Angle above the horizon in degrees, -90 to 90.</param>
    /// <param name="bearingDegrees">Direction clockwise from true north in degrees; NaN for "in the main beam's azimuth".</param>
    public Estimate? GainDbi(double elevationDegrees, double bearingDegrees = double.NaN)
    {
        double relative = RelativeDb(elevationDegrees, bearingDegrees);
        return MainBeamDbi?.Map(gain => gain + relative);
    }

    /// <summary>Fills a table with the median gain in dBi over rising elevations: what an area sweep reads.</summary>
    /// <param name="gainDbi">The table: its first value is at <paramref name="firstDegrees"/>.</param>
    /// <param name="firstDegrees">Elevation of the first value in degrees.</param>
    /// <param name="stepDegrees">Step in degrees, greater than zero.</param>
    /// <param name="bearingDegrees">Direction clockwise from true north in degrees; NaN for "in the main beam's azimuth".</param>
    /// <exception cref="InvalidOperationException">The gain is unknown.</exception>
    public void FillTable(Span<double> gainDbi, double firstDegrees, double stepDegrees, double bearingDegrees = double.NaN)
    {
        if (MainBeamDbi is not { } gain)
        {
            throw new InvalidOperationException("The antenna's gain is unknown; ask for MainBeamDbi first.");
        }

        for (int i = 0; i < gainDbi.Length; i++)
        {
            gainDbi[i] = gain.Median + RelativeDb(firstDegrees + (i * stepDegrees), bearingDegrees);
        }
    }

    private double AzimuthOff(double bearingDegrees) =>
        _azimuthBeamwidth is null || _fit.BearingDegrees is not { } main || double.IsNaN(bearingDegrees)
            ? 0
            : Math.IEEERemainder(bearingDegrees - main, 360);

    private double AzimuthDb(double azimuthOff) => _azimuthBeamwidth is { } width
        ? DirectionalBeam.RelativeDb(0, azimuthOff, 360, width, StationDefaults.YagiFloorDb)
        : 0;
}
