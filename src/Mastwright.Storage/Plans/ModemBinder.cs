using Mastwright.Station.Radio;

namespace Mastwright.Storage.Plans;

/// <summary>Binds the modem setting.</summary>
internal static class ModemBinder
{
    private static readonly ModemSetting None = new() { FrequencyHz = 0, BandwidthHz = 0 };

    /// <summary>The setting; that it is there was checked with the plan's other keys.</summary>
    internal static ModemSetting Bind(MappingReader plan)
    {
        int before = plan.Binding.Problems.Count;
        if (plan.Find(PlanKeys.Modem) is not { } node || MappingReader.Open(plan.Binding, node, plan.PathOf(PlanKeys.Modem), ModemKeys.Shape) is not { } modem)
        {
            return None;
        }

        Modulation modulation = modem.Choice(ModemKeys.Modulation) == 1 ? Modulation.FrequencyShiftKeying : Modulation.ChirpSpreadSpectrum;
        bool chirp = modulation == Modulation.ChirpSpreadSpectrum;
        Need(modem, chirp ? ModemKeys.SpreadingFactor : ModemKeys.BitRate, chirp ? "chirp spread spectrum" : "frequency-shift keying");
        Refuse(modem, chirp ? [ModemKeys.BitRate] : [ModemKeys.SpreadingFactor, ModemKeys.CodingRate], chirp ? "chirp spread spectrum" : "frequency-shift keying");
        double payload = modem.Exact(ModemKeys.Payload) ?? 0;
        if (payload != Math.Truncate(payload))
        {
            modem.Binding.Add(modem.Find(ModemKeys.Payload)!, modem.PathOf(ModemKeys.Payload), ScalarBinder.ValueCode, "A packet holds whole bytes.", "a whole number of bytes, such as 40 B");
        }

        ModemSetting setting = new()
        {
            FrequencyHz = modem.Exact(ModemKeys.Frequency) ?? 0,
            BandwidthHz = modem.Exact(ModemKeys.Bandwidth) ?? 0,
            Modulation = modulation,
            SpreadingFactor = modem.Whole(ModemKeys.SpreadingFactor) ?? 0,
            CodingRateDenominator = CodingRate(modem),
            BitRate = modem.Exact(ModemKeys.BitRate) ?? 0,
            PreambleLength = modem.Whole(ModemKeys.Preamble) ?? 8,
            PayloadBytes = (int)payload,
            ExplicitHeader = modem.YesNo(ModemKeys.Header, true),
            Checksum = modem.YesNo(ModemKeys.Checksum, true),
            Emission = EmissionBinder.Bind(modem, modem.Exact(ModemKeys.Frequency) ?? 0),
        };
        modem.Done();

        // A value that did not read, or was refused before, stands as zero here, and its own problem was told.
        bool isWhole = !node.IsRefused && !node.LacksKeys && node.Entries.All(entry => !entry.Value.IsRefused);
        if (isWhole && plan.Binding.Problems.Count == before)
        {
            Check(modem, setting);
        }

        return setting;
    }

    /// <summary>What each key allows by itself was checked as it was read; what a modem can be given together is checked here.</summary>
    private static void Check(MappingReader modem, ModemSetting setting)
    {
        foreach (ModemSettingProblem problem in ModemSettingCheck.Problems(setting))
        {
            KeyShape key = problem.Property switch
            {
                nameof(ModemSetting.FrequencyHz) => ModemKeys.Frequency,
                nameof(ModemSetting.BandwidthHz) => ModemKeys.Bandwidth,
                nameof(ModemSetting.SpreadingFactor) => ModemKeys.SpreadingFactor,
                nameof(ModemSetting.CodingRateDenominator) => ModemKeys.CodingRate,
                nameof(ModemSetting.BitRate) => ModemKeys.BitRate,
                nameof(ModemSetting.PreambleLength) => ModemKeys.Preamble,
                _ => ModemKeys.Payload,
            };
            modem.Binding.Add(modem.Find(key) ?? modem.Node, modem.PathOf(key), "plan-range", ScalarBinder.Sentence(problem.Text));
        }
    }

    private static int CodingRate(MappingReader modem)
    {
        string text = modem.Text(ModemKeys.CodingRate, "4/5");
        if (text.Length == 3 && text.StartsWith("4/", StringComparison.Ordinal) && text[2] is >= '5' and <= '8')
        {
            return text[2] - '0';
        }

        modem.Binding.Add(modem.Find(ModemKeys.CodingRate)!, modem.PathOf(ModemKeys.CodingRate), ScalarBinder.ValueCode, "This is not a coding rate.", ModemKeys.CodingRate.Value.Wanted);
        return 5;
    }

    private static void Need(MappingReader modem, KeyShape key, string modulation)
    {
        if (!modem.Has(key) && !modem.Node.LacksKeys)
        {
            modem.Binding.Add(modem.Node, modem.Path, "plan-missing-key", $"With {modulation} the modem needs the key '{key.Name}'.", $"{key.Name}: {key.Value.Wanted}");
        }
    }

    private static void Refuse(MappingReader modem, KeyShape[] keys, string modulation)
    {
        foreach (KeyShape key in keys)
        {
            if (modem.Find(key) is { } node)
            {
                modem.Binding.Add(node, modem.PathOf(key), "plan-contradiction", $"With {modulation} the key '{key.Name}' has no meaning; remove it, or change the modulation.");
            }
        }
    }
}
