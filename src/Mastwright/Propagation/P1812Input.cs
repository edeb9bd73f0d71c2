namespace Mastwright.Propagation;

/// <summary>What ITU-R P.1812 asks about a path besides its profile. Basic transmission loss holds no antenna gains.</summary>
/// <remarks>
/// The checks here refuse what the equations cannot take. The ranges of the Recommendation are narrower: <see cref="ModelRange"/> lists
/// what lies outside them.
/// </remarks>
public sealed record P1812Input
{
    /// <summary>Frequency in Hz, above zero. The Recommendation: 30 MHz to 6 GHz.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is zero, negative, infinite or NaN.</exception>
    public required double FrequencyHz { get; init => field = Domain.Positive(value, nameof(FrequencyHz)); }

    /// <summary>Share of an average year in which the loss is not exceeded, p, in percent. The Recommendation: 1 to 50.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 100 (both excluded).</exception>
    public double TimePercent { get; init => field = Percent(value, nameof(TimePercent)); } = 50;

    /// <summary>Share of the places around the receiver at which the loss is not exceeded, pL, in percent. The Recommendation: 1 to 99.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 100 (both excluded).</exception>
    public double LocationPercent { get; init => field = Percent(value, nameof(LocationPercent)); } = 50;

    /// <summary>Standard deviation σL of the loss over places, in dB, zero or more. <see cref="LocationVariability"/> gives the Recommendation's own.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative, infinite or NaN.</exception>
    public double LocationSigmaDb { get; init => field = Domain.ZeroOrMore(value, nameof(LocationSigmaDb)); }

    /// <summary>Height of the transmitting antenna above the ground at the first point, in metres, above zero. The Recommendation: 1 to 3 000 m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The height is zero, negative, infinite or NaN.</exception>
    public required double TransmitterHeightMetres { get; init => field = Domain.Positive(value, nameof(TransmitterHeightMetres)); }

    /// <summary>Height of the receiving antenna above the ground at the last point, in metres, above zero. The Recommendation: 1 to 3 000 m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The height is zero, negative, infinite or NaN.</exception>
    public required double ReceiverHeightMetres { get; init => field = Domain.Positive(value, nameof(ReceiverHeightMetres)); }

    /// <summary>Polarisation of the wave.</summary>
    public WavePolarisation Polarisation { get; init; } = WavePolarisation.Vertical;

    /// <summary>Fall ΔN of the refractivity over the first kilometre at the middle of the path, in N-units per km, below 157.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is 157 or more, infinite or NaN.</exception>
    public double RefractivityGradient
    {
        get;
        init
        {
            EffectiveEarth.FactorFromGradient(value);
            field = value;
        }
    }
    = EffectiveEarth.DefaultGradient;

    /// <summary>Sea-level surface refractivity N0 at the middle of the path, in N-units.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public double SurfaceRefractivity { get; init => field = Domain.Finite(value, nameof(SurfaceRefractivity)); } = DefaultSurfaceRefractivity;

    /// <summary>Latitude of the middle of the path, in degrees; <see cref="PathCentre"/> finds it from the two ends.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The latitude is not between −90 and 90.</exception>
    public required double PathCentreLatitudeDegrees { get; init => field = Domain.Within(value, -90, 90, nameof(PathCentreLatitudeDegrees)); }

    /// <summary>
    /// Distance dct over land from the transmitter to the sea along the path, in metres. Null: 0 where the first point is sea, else 500 km,
    /// which is what the published results do.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The distance is negative, infinite or NaN.</exception>
    public double? DistanceToCoastTransmitterMetres
    {
        get;
        init => field = value is double metres ? Domain.ZeroOrMore(metres, nameof(DistanceToCoastTransmitterMetres)) : null;
    }

    /// <summary>Distance dcr over land from the receiver to the sea along the path, in metres. Null: as for the transmitter.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The distance is negative, infinite or NaN.</exception>
    public double? DistanceToCoastReceiverMetres
    {
        get;
        init => field = value is double metres ? Domain.ZeroOrMore(metres, nameof(DistanceToCoastReceiverMetres)) : null;
    }

    /// <summary>
    /// Whether the cover of the profile is added to its ground (except at the first and last points). False for a profile of a surface
    /// model, which holds trees and houses already.
    /// </summary>
    public bool AddCover { get; init; } = true;

    /// <summary>Refractivity taken where nobody gives one: 325 N-units.</summary>
    public const double DefaultSurfaceRefractivity = 325;

    private static double Percent(double value, string name) =>
        value is > 0 and < 100 ? value : throw new ArgumentOutOfRangeException(name, value, "A percentage between 0 and 100 is needed.");
}
