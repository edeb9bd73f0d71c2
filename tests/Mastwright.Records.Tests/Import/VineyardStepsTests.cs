using System.Globalization;
using Mastwright.Evidence.Proof;
using Mastwright.Plans;
using Mastwright.Records.Proof;
using Mastwright.Records.Store;
using Mastwright.Station.Radio;

namespace Mastwright.Tests.Records.Import;

/// <summary>
/// The known steps of the vineyard's series (emanueleg/lora-rssi; Goldoni et al., Computer Networks 202 (2022) 108627), imported by data/mappings/vineyard.yaml
/// alone: dates and sizes as the README beside the data tells them.
/// </summary>
public sealed class VineyardStepsTests
{
    private static readonly ProofSettings Settings = new() { UsualSpreadingFactor = 7, LimitSnrDb = _ => -7.5 };

    /// <summary>
    /// The periods meet where nothing is known to have happened. The data go down over some days, not at once, and the README gives no bounds: four days and
    /// 1.2 dB are what the two ways of looking may differ by.
    /// </summary>
    [Theory]
    [InlineData("2020-11-16", "2020-12-29", "2021-02-09", "node-06", "2020-12-02", -5.9)]
    [InlineData("2020-12-10", "2021-01-07", "2021-01-22", "node-06", "2020-12-24", 7.9)]
    [InlineData("2020-12-20", "2021-01-17", "2021-01-31", "node-05", "2021-01-03", -5.9)]
    [InlineData("2020-11-16", "2020-12-29", "2021-02-09", "node-08", "2021-01-25", -4.2)]
    public void A_known_step_is_found_with_its_day_and_size(string from, string middle, string to, string node, string day, double stepDb)
    {
        ProofReading read = Read(from, middle, to);
        ProofResult result = ProofExamination.Run(read.Before, read.After, Settings);
        OwnStep step = result.Stations.Single(one => read.Stations[one.Station] == node).OwnStep!;
        Assert.Equal(stepDb, step.StepDb, 1.2);
        Assert.Equal(Micro(day) / 86.4e9, step.TimeMicroseconds / 86.4e9, 4.0);
    }

    [Fact]
    public void Nodes_that_are_known_to_have_kept_still_show_no_step()
    {
        ProofReading read = Read("2020-11-16", "2020-12-29", "2021-02-09");
        ProofResult result = ProofExamination.Run(read.Before, read.After, Settings);
        Assert.All(
            result.Stations.Where(one => read.Stations[one.Station] is "node-01" or "node-02" or "node-03" or "node-07"),
            one => Assert.Null(one.OwnStep));
    }

    private static ProofReading Read(string from, string middle, string to)
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        using FileStream data = File.OpenRead(TestPlaces.Reference("measured", "vineyard", "combined_hourly_data.csv"));
        ImportRun.Into(store, file, File.ReadAllText(Path.Combine(TestPlaces.Repository, "data", "mappings", "vineyard.yaml")), data);
        Plan plan = new()
        {
            Name = "Vineyard",
            Modem = new ModemSetting { FrequencyHz = 868.1e6, BandwidthHz = 125e3, SpreadingFactor = 7, PayloadBytes = 20 },
            Sites = [new() { Key = "gateway-01", Name = "gateway-01", Position = new(new(44.821957, 10.815304), 0) }],
        };
        return ProofReading.Of(store, "skerrin", new(plan), "gateway-01", new(Micro(from), Micro(middle)), new(Micro(middle), Micro(to)));
    }

    private static long Micro(string day) => (long)(DateTime.ParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal) - DateTime.UnixEpoch).TotalMicroseconds;
}
