namespace Mastwright.Quantities;

/// <summary>What a quantity measures, and with it the unit that its number has inside the program.</summary>
public enum Dimension
{
    /// <summary>A length, in metres.</summary>
    Length,

    /// <summary>A frequency or bandwidth, in hertz.</summary>
    Frequency,

    /// <summary>An antenna's gain, in dBi ("dBd" is 2.15 dB more).</summary>
    Gain,

    /// <summary>A ratio, in dB.</summary>
    Ratio,

    /// <summary>A power, in dBm.</summary>
    Power,

    /// <summary>A plane angle, in degrees.</summary>
    Angle,

    /// <summary>A temperature, in degrees Celsius.</summary>
    Temperature,

    /// <summary>A time, in seconds.</summary>
    Time,

    /// <summary>An amount of data, in bytes.</summary>
    Data,

    /// <summary>A share, in percent.</summary>
    Percent,

    /// <summary>A relative error, in parts per million.</summary>
    PartsPerMillion,

    /// <summary>A data rate, in bits per second.</summary>
    BitRate,

    /// <summary>A voltage, in volts.</summary>
    Voltage,

    /// <summary>An electric current, in amperes.</summary>
    Current,

    /// <summary>A power that a supply gives or a load draws, in watts: unlike <see cref="Power"/> it may be zero and its differences add.</summary>
    Wattage,

    /// <summary>An electric charge, in ampere-hours.</summary>
    Charge,

    /// <summary>An electric resistance, in ohms.</summary>
    Resistance,

    /// <summary>A speed, in metres per second.</summary>
    Speed,

    /// <summary>A mass, in kilograms.</summary>
    Mass,

    /// <summary>A mass per length, in kilograms per metre.</summary>
    MassPerLength,

    /// <summary>An area, in square metres.</summary>
    Area,

    /// <summary>A force, in newtons.</summary>
    Force,

    /// <summary>An electric resistivity, in ohm metres.</summary>
    Resistivity,

    /// <summary>A difference of temperatures, in kelvins.</summary>
    TemperatureDifference,
}
