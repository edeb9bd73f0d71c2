namespace Mastwright.Records.Import;

/// <summary>The units that a mapping may name for a field, and what one of them is in the unit that records are kept in.</summary>
internal static class FieldUnits
{
    internal static readonly string[] Level = ["dBm"];
    internal static readonly string[] Ratio = ["dB"];
    internal static readonly string[] Frequency = ["Hz", "kHz", "MHz", "GHz"];
    internal static readonly string[] Voltage = ["V", "mV"];
    internal static readonly string[] Temperature = ["°C"];
    internal static readonly string[] PartOfTime = ["%", "1"];

    /// <summary>How many base units (dBm, dB, Hz, V, °C, a part of 1) one of this unit is; 1 where the field has none.</summary>
    internal static double PerUnit(string? unit) => unit switch
    {
        "kHz" => 1e3,
        "MHz" => 1e6,
        "GHz" => 1e9,
        "mV" => 1e-3,
        "%" => 1e-2,
        _ => 1,
    };
}
