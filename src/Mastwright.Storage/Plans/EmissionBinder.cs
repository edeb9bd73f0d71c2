using Mastwright.Station.Radio;

namespace Mastwright.Storage.Plans;

/// <summary>Binds what the law asks of a signal beyond the modem's own setting.</summary>
internal static class EmissionBinder
{
    internal static EmissionSetting Bind(MappingReader modem, double frequencyHz)
    {
        EmissionSetting emission = new()
        {
            OccupiedHz = modem.Exact(ModemKeys.OccupiedBandwidth),
            SixDecibelHz = modem.Exact(ModemKeys.SixDecibelBandwidth),
            Hopping = Hopping(modem, frequencyHz),
            Polite = modem.YesNo(ModemKeys.PoliteAccess, false),
        };
        if (emission.SixDecibelHz > emission.OccupiedHz)
        {
            modem.Binding.Add(
                modem.Find(ModemKeys.SixDecibelBandwidth)!,
                modem.PathOf(ModemKeys.SixDecibelBandwidth),
                "plan-contradiction",
                "The bandwidth at 6 dB is wider than the one that holds 99 % of the power.",
                "at most the occupied bandwidth");
        }

        return emission;
    }

    private static HoppingSetting? Hopping(MappingReader modem, double frequencyHz)
    {
        if (modem.Find(ModemKeys.Hopping) is not { } node || MappingReader.Open(modem.Binding, node, modem.PathOf(ModemKeys.Hopping), ModemKeys.HoppingShape) is not { } reader)
        {
            return null;
        }

        int? channels = reader.Whole(ModemKeys.HoppingChannels);
        double? lowest = reader.Exact(ModemKeys.HoppingLowest);
        double? highest = reader.Exact(ModemKeys.HoppingHighest);
        double? dwell = reader.Exact(ModemKeys.HoppingDwell);
        bool within = reader.YesNo(ModemKeys.HoppingWithinPacket, false);
        reader.Done();
        if (channels is not { } count || lowest is not { } low || highest is not { } high)
        {
            return null;
        }

        if (low >= high)
        {
            reader.Binding.Add(reader.Find(ModemKeys.HoppingHighest)!, reader.PathOf(ModemKeys.HoppingHighest), "plan-range", "The highest carrier is not above the lowest.", "a frequency above 'lowest'");
            return null;
        }

        if (frequencyHz > 0 && (frequencyHz < low || frequencyHz > high))
        {
            reader.Binding.Add(reader.Node, reader.Path, "plan-contradiction", "The modem's frequency lies outside the carriers that it hops over.", "lowest and highest around modem/frequency");
            return null;
        }

        return new(count, low, high, dwell, within);
    }
}
