using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>What a sweep asks besides the ground: one station, one kind of receiver, one state of the air for the whole map.</summary>
/// <remarks>
/// Plain values only, so that it can be copied anywhere. The default value has no meaning. <see cref="AreaSweep.Run"/> checks every value.
/// </remarks>
public readonly record struct SweepInput
{
    /// <summary>An input with the defaults below; the required values are still to be set.</summary>
    public SweepInput()
    {
    }

    /// <summary>Frequency in Hz, above zero. ITU-R P.1812: 30 MHz to 6 GHz.</summary>
    public required double FrequencyHz { get; init; }

    /// <summary>Height of the station's antenna above its ground, in metres, above zero.</summary>
    public required double StationHeightMetres { get; init; }

    /// <summary>Height of the receiver above the ground of each cell, in metres, above zero.</summary>
    public required double ReceiverHeightMetres { get; init; }

    /// <summary>Height of the ground at the station above sea level, in metres; NaN to take the raster's.</summary>
    public double StationGroundMetres { get; init; } = double.NaN;

    /// <summary>Share of an average year in which the loss is not exceeded, p, in percent: 1 to 50.</summary>
    public double TimePercent { get; init; } = 50;

    /// <summary>Share of the places at which the loss is not exceeded, pL, in percent: 1 to 99.</summary>
    public double LocationPercent { get; init; } = 50;

    /// <summary>Standard deviation σL of the loss over places, in dB, zero or more.</summary>
    public double LocationSigmaDb { get; init; }

    /// <summary>Fall ΔN of the refractivity over the first kilometre, in N-units per km, below 157: one value for the station and all its paths.</summary>
    public double RefractivityGradient { get; init; } = EffectiveEarth.DefaultGradient;

    /// <summary>Sea-level surface refractivity N0, in N-units: one value for the station.</summary>
    public double SurfaceRefractivity { get; init; } = P1812Input.DefaultSurfaceRefractivity;

    /// <summary>Polarisation of the wave.</summary>
    public WavePolarisation Polarisation { get; init; } = WavePolarisation.Vertical;

    /// <summary>Whether the raster's cover is added to its ground (except at both ends of a path). False for a surface model.</summary>
    public bool AddCover { get; init; } = true;

    /// <summary>
    /// False: the station sends and each cell receives. True: each cell sends and the station receives. The loss differs only in what the
    /// share of places adds, which P.1812 leaves out for a receiver at sea.
    /// </summary>
    public bool StationReceives { get; init; }

    /// <summary>Number of radials, a multiple of 8; 0 for three to every four cells on the edge of the map.</summary>
    public int Radials { get; init; }

    internal P1812Input ToPath(double latitudeDegrees, double? toCoastFromStationMetres, double? toCoastFromCellMetres) => new()
    {
        FrequencyHz = FrequencyHz,
        TimePercent = TimePercent,
        LocationPercent = LocationPercent,
        LocationSigmaDb = LocationSigmaDb,
        TransmitterHeightMetres = StationHeightMetres,
        ReceiverHeightMetres = ReceiverHeightMetres,
        Polarisation = Polarisation,
        RefractivityGradient = RefractivityGradient,
        SurfaceRefractivity = SurfaceRefractivity,
        PathCentreLatitudeDegrees = latitudeDegrees,
        DistanceToCoastTransmitterMetres = toCoastFromStationMetres,
        DistanceToCoastReceiverMetres = toCoastFromCellMetres,
        AddCover = AddCover,
    };

    internal void Check(SweepRaster raster)
    {
        Domain.Within(TimePercent, 1, 50, nameof(TimePercent));
        Domain.Within(LocationPercent, 1, 99, nameof(LocationPercent));
        ToPath(raster.StationLatitudeDegrees, null, null);
        if (!double.IsNaN(StationGroundMetres))
        {
            Domain.Within(StationGroundMetres, GroundWindow.LowestHeightMetres, GroundWindow.HighestHeightMetres, nameof(StationGroundMetres));
        }

        Domain.ZeroOrMultiple(Radials, 8, nameof(Radials));
    }
}
