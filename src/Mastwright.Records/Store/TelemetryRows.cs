using System.Data.Common;
using Mastwright.Evidence;

namespace Mastwright.Records.Store;

/// <summary>Makes telemetry of rows, and rows of it.</summary>
internal static class TelemetryRows
{
    internal const string OfStation = """
        SELECT t.time_microseconds, t.time_resolution_microseconds, t.time_text, t.clock_offset_microseconds, s.address, t.battery_volts, t.supply_volts,
               t.temperature_celsius, t.channel_use_ratio, t.transmit_ratio, t.other_fields
        FROM telemetry t JOIN station s ON s.network = t.network AND s.station = t.station
        WHERE t.network = (SELECT network FROM network WHERE name = @network) AND (@every = 1 OR s.address = @station)
              AND t.time_microseconds >= @from AND t.time_microseconds < @to
        ORDER BY t.time_microseconds, t.step_microseconds, t.hash
        """;

    private const string Insert = """
        INSERT INTO telemetry (network, station, step_microseconds, hash, time_microseconds, time_resolution_microseconds, time_text,
                               clock_offset_microseconds, battery_volts, supply_volts, temperature_celsius, channel_use_ratio, transmit_ratio, other_fields)
        VALUES (@network, @station, @step, @hash, @time, @resolution, @text, @ahead, @battery, @supply, @temperature, @channel, @transmit, @others)
        ON CONFLICT (network, station, step_microseconds, hash) DO NOTHING
        """;

    /// <summary>Adds what is not there yet; tells how many.</summary>
    internal static int InsertAll(DbConnection connection, DbTransaction transaction, long network, SqlStations stations, IReadOnlyList<TelemetryRecord> batch)
    {
        int added = 0;
        using DbCommand command = connection.Command(transaction, Insert);
        foreach (TelemetryRecord record in batch)
        {
            foreach ((int place, (string name, object? value)) in Values(network, stations.Of(transaction, network, record.Station), record).Index())
            {
                if (command.Parameters.Count == place)
                {
                    DbParameter parameter = command.CreateParameter();
                    parameter.ParameterName = name;
                    command.Parameters.Add(parameter);
                }

                command.Parameters[place].Value = value ?? DBNull.Value;
            }

            added += command.ExecuteNonQuery();
        }

        return added;
    }

    private static (string Name, object? Value)[] Values(long network, long station, TelemetryRecord record)
    {
        RecordKey key = RecordKey.Of(record);
        return
        [
            ("@network", network), ("@station", station), ("@step", key.StepMicroseconds), ("@hash", key.Hash), ("@time", record.TimeMicroseconds),
            ("@resolution", record.TimeResolutionMicroseconds), ("@text", record.TimeText), ("@ahead", record.ClockOffsetMicroseconds), ("@battery", record.BatteryVolts),
            ("@supply", record.SupplyVolts), ("@temperature", record.TemperatureCelsius), ("@channel", record.ChannelUseRatio), ("@transmit", record.TransmitRatio),
            ("@others", record.OtherFields),
        ];
    }

    internal static TelemetryRecord Record(DbDataReader row) => new()
    {
        TimeMicroseconds = row.GetInt64(0),
        TimeResolutionMicroseconds = row.GetInt64(1),
        TimeText = row.TextOrNull(2),
        ClockOffsetMicroseconds = row.LongOrNull(3),
        Station = row.GetString(4),
        BatteryVolts = row.DoubleOrNull(5),
        SupplyVolts = row.DoubleOrNull(6),
        TemperatureCelsius = row.DoubleOrNull(7),
        ChannelUseRatio = row.DoubleOrNull(8),
        TransmitRatio = row.DoubleOrNull(9),
        OtherFields = row.TextOrNull(10),
    };
}
