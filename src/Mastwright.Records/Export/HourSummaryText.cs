using System.Text;
using Mastwright.Records.Store;

namespace Mastwright.Records.Export;

/// <summary>Hours as delimited text of RFC 4180.</summary>
public static class HourSummaryText
{
    /// <summary>The text of a file.</summary>
    public static string Of(IReadOnlyList<HourSummary> hours)
    {
        ArgumentNullException.ThrowIfNull(hours);
        StringBuilder text = new("hour,receiver,originator,last_sender,frequency_hz,bandwidth_hz,spreading_factor,hops_taken,records,first,last,level_records,level_mean_dbm,level_least_dbm,level_most_dbm,snr_records,snr_mean_db,power_records,power_mean_dbm\n");
        foreach (HourSummary hour in hours)
        {
            text.Append(DelimitedText.Line(
                UtcTime.Text(hour.HourMicroseconds), hour.Receiver, hour.Originator, hour.LastSender, hour.FrequencyHz, hour.BandwidthHz, hour.SpreadingFactor, hour.HopsTaken, hour.Records,
                UtcTime.Text(hour.FirstMicroseconds), UtcTime.Text(hour.LastMicroseconds), hour.Level.Records, hour.MeanLevelDbm, hour.LeastLevelDbm, hour.MostLevelDbm, hour.Snr.Records,
                hour.MeanSnrDb, hour.Power.Records, hour.MeanPowerDbm));
        }

        return text.ToString();
    }
}
