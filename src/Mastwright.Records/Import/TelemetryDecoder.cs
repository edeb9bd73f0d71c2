using Mastwright.Evidence;

namespace Mastwright.Records.Import;

/// <summary>Makes of one row what a station tells of itself.</summary>
internal sealed class TelemetryDecoder
{
    private readonly TimeReader time;
    private readonly AddressBook addresses;
    private readonly FieldReader station;
    private readonly FieldReader? battery, supply, temperature, channelUse, transmission;
    private readonly OtherFields others = new();

    internal TelemetryDecoder(FieldsText fields, SourcePlaces places, AddressBook addresses, SourceClock clock)
    {
        this.addresses = addresses;
        FieldReader? Tied(string name, FieldText? field) => FieldReader.Of(name, field, places);
        time = new(fields.Time!, places, clock);
        station = Tied("station", fields.Station)!;
        battery = Tied("battery", fields.Battery);
        supply = Tied("supply", fields.Supply);
        temperature = Tied("temperature", fields.Temperature);
        channelUse = Tied("channel-use", fields.ChannelUse);
        transmission = Tied("transmission", fields.Transmission);
    }

    /// <summary>Whether the row tells anything of the station.</summary>
    internal bool IsTold<TRow>(TRow row)
        where TRow : ISourceRow, allows ref struct => Has(battery, row) || Has(supply, row) || Has(temperature, row) || Has(channelUse, row) || Has(transmission, row);

    /// <summary>The record, or null with the reason why the row is none.</summary>
    internal TelemetryRecord? Decode<TRow>(TRow row, out string reason)
        where TRow : ISourceRow, allows ref struct
    {
        long microseconds = time.Read(row, out reason);
        ReadOnlySpan<char> address = station.Text(row);
        if (reason.Length == 0 && address.IsEmpty)
        {
            reason = "the station is empty";
        }

        double? batteryVolts = battery?.Number(row, ref reason);
        double? supplyVolts = supply?.Number(row, ref reason);
        double? celsius = temperature?.Number(row, ref reason);
        double? channelUseRatio = Ratio(channelUse, row, ref reason);
        double? transmitRatio = Ratio(transmission, row, ref reason);
        return reason.Length > 0 ? null : new()
        {
            TimeMicroseconds = microseconds,
            TimeResolutionMicroseconds = time.ResolutionMicroseconds,
            TimeText = time.Text(row).ToString(),
            ClockOffsetMicroseconds = time.AheadMicroseconds,
            Station = addresses.Of(address)!,
            BatteryVolts = batteryVolts,
            SupplyVolts = supplyVolts,
            TemperatureCelsius = celsius,
            ChannelUseRatio = channelUseRatio,
            TransmitRatio = transmitRatio,
            OtherFields = others.Of(row),
        };
    }

    private static bool Has<TRow>(FieldReader? field, TRow row)
        where TRow : ISourceRow, allows ref struct => field is not null && !field.Text(row).IsEmpty;

    private static double? Ratio<TRow>(FieldReader? field, TRow row, ref string reason)
        where TRow : ISourceRow, allows ref struct
    {
        double? value = field?.Number(row, ref reason);
        if (value is < 0 or > 1 && reason.Length == 0)
        {
            reason = $"{field!.Name} is no part of the time, 0 to 1 or 0 % to 100 %";
        }

        return value;
    }
}
