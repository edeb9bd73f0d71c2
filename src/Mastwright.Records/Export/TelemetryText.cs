using System.Text;
using Mastwright.Evidence;

namespace Mastwright.Records.Export;

/// <summary>What stations told of themselves as delimited text of RFC 4180.</summary>
public static class TelemetryText
{
    /// <summary>The text of a file.</summary>
    public static string Of(IReadOnlyList<TelemetryRecord> records)
    {
        ArgumentNullException.ThrowIfNull(records);
        StringBuilder text = new("time,time_text,clock_ahead_s,station,battery_v,supply_v,temperature_c,channel_use_ratio,transmit_ratio,other_fields\n");
        foreach (TelemetryRecord one in records)
        {
            text.Append(DelimitedText.Line(
                UtcTime.Text(one.TimeMicroseconds), one.TimeText, one.ClockOffsetMicroseconds / 1e6, one.Station, one.BatteryVolts, one.SupplyVolts, one.TemperatureCelsius, one.ChannelUseRatio,
                one.TransmitRatio, one.OtherFields));
        }

        return text.ToString();
    }
}
