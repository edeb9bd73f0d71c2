using System.CommandLine;
using System.Globalization;
using System.Text;
using Mastwright.Cli.Output;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Radio;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Plans;

namespace Mastwright.Cli.Commands;

/// <summary>airtime: how long a packet is on the air, and how weak a signal the setting still reads.</summary>
internal static class AirtimeCommand
{
    internal static Command Create()
    {
        Argument<string?> plan = new("PLAN") { Description = "A plan whose modem setting to use; else give the options.", Arity = ArgumentArity.ZeroOrOne };
        Option<Estimate?> bandwidth = Options.Quantity("--bandwidth", Dimension.Frequency, "Bandwidth, such as '125 kHz'.");
        Option<int?> factor = Options.Whole("--spreading-factor", "Spreading factor, 5 to 12.");
        Option<string?> coding = new("--coding-rate") { Description = "Coding rate, 4/5 to 4/8 (default 4/5)." };
        Option<int?> preamble = Options.Whole("--preamble", "Preamble in symbols (default 8).");
        Option<Estimate?> payload = Options.Quantity("--payload", Dimension.Data, "Payload, such as '40 B'.");
        Option<Estimate?> noise = Options.Quantity("--noise-figure", Dimension.Ratio, "Receiver noise figure (default 6 dB).");
        Option<bool> json = Options.Json();
        Command command = new("airtime", "Give the time on air of a packet, the share of an hour it takes, and the sensitivity.")
        {
            plan, bandwidth, factor, coding, preamble, payload, noise, json,
        };
        command.SetAction(parsed =>
        {
            ModemSetting? setting = null;
            StationCatalogue catalogue = StationCatalogueFile.LoadBuiltIn();
            if (parsed.GetValue(plan) is { } planPath)
            {
                if (PlanSession.Read(planPath, allowOutside: false) is not { } document || PlanSession.Catalogue(document, allowOutside: false) is not { } own)
                {
                    return ExitCode.BadInput;
                }

                setting = document.Plan.Modem;
                catalogue = own;
            }

            if (Setting(setting, parsed.GetValue(bandwidth), parsed.GetValue(factor), parsed.GetValue(coding), parsed.GetValue(preamble), parsed.GetValue(payload), out string problem) is not { } complete)
            {
                Console.Error.WriteLine(problem);
                return ExitCode.BadInput;
            }

            AirtimeReport report = AirtimeReport.Of(complete, parsed.GetValue(noise)?.Median, catalogue);
            Console.Out.WriteLine(parsed.GetValue(json) ? report.Json() : report.Text());
            return ExitCode.Fine;
        });
        return command;
    }

    private static ModemSetting? Setting(
        ModemSetting? below, Estimate? bandwidth, int? factor, string? coding, int? preamble, Estimate? payload, out string problem)
    {
        problem = "";
        if (below is null && (bandwidth is null || factor is null || payload is null))
        {
            problem = "airtime needs a PLAN, or --bandwidth, --spreading-factor and --payload";
            return null;
        }

        int denominator = below?.CodingRateDenominator ?? 5;
        if (coding is not null && !(coding.StartsWith("4/", StringComparison.Ordinal) && int.TryParse(coding.AsSpan(2), NumberStyles.None, CultureInfo.InvariantCulture, out denominator)))
        {
            problem = $"--coding-rate: '{coding}' is not a coding rate; write 4/5, 4/6, 4/7 or 4/8";
            return null;
        }

        ModemSetting setting = (below ?? new() { FrequencyHz = 868e6, BandwidthHz = 0 }) with { CodingRateDenominator = denominator };
        setting = setting with
        {
            BandwidthHz = bandwidth?.Median ?? setting.BandwidthHz,
            SpreadingFactor = factor ?? setting.SpreadingFactor,
            PreambleLength = preamble ?? setting.PreambleLength,
            PayloadBytes = payload is { } bytes ? (int)Math.Clamp(bytes.Median, -1, int.MaxValue) : setting.PayloadBytes,
        };
        return ModemSettingCheck.TryValidate(setting, out problem) ? setting : null;
    }
}

/// <summary>What the airtime command answers.</summary>
internal sealed record AirtimeReport(ModemSetting Setting, AirtimeResult Airtime, double NoiseFigureDb, bool NoiseFigureAssumed, double? SensitivityDbm)
{
    internal static AirtimeReport Of(ModemSetting setting, double? noiseFigureDb, StationCatalogue catalogue)
    {
        double noise = noiseFigureDb ?? StationDefaults.NoiseFigureDb;
        DemodulationLimit? limit = Demodulation.SnrLimit(setting, null, catalogue);
        return new(
            setting,
            Mastwright.Station.Radio.Airtime.Compute(setting),
            noise,
            noiseFigureDb is null,
            limit is null ? null : Sensitivity.Dbm(setting.BandwidthHz, noise, limit.SnrDb));
    }

    internal string Text()
    {
        StringBuilder text = new();
        text.Line($"Packet of {Setting.PayloadBytes} bytes at {Setting.BandwidthHz / 1e3:0.###} kHz, {Way()}");
        bool chirps = Setting.Modulation == Modulation.ChirpSpreadSpectrum;
        string unit = chirps ? "symbols" : "bits";
        text.Line($"  {(chirps ? "symbol" : "bit"),-21} {Airtime.SymbolSeconds * 1e3,10:0.000} ms");
        text.Line($"  preamble              {Airtime.PreambleSeconds * 1e3,10:0.000} ms  ({Airtime.PreambleSymbols:0.##} {unit})");
        text.Line($"  header and payload    {Airtime.PayloadSeconds * 1e3,10:0.000} ms  ({Airtime.PayloadSymbols} {unit})");
        text.Line($"  time on air           {Airtime.TotalSeconds * 1e3,10:0.000} ms");
        if (chirps)
        {
            text.Line($"  low-data-rate rule    {(Airtime.LowDataRateOptimised ? "on (a symbol lasts longer than 16 ms)" : "off"),10}");
        }

        text.Line($"  raw bit rate          {Airtime.BitRate,10:0.0} bit/s");
        text.AppendLine();
        text.AppendLine("Packets an hour within a share of the time");
        foreach (double share in (double[])[0.1, 1, 10])
        {
            text.Line($"  at {share,4:0.#} % of the time {Math.Floor(36 * share / Airtime.TotalSeconds),8:0}   (one every {Airtime.TotalSeconds * 100 / share:0.#} s)");
        }

        text.AppendLine();
        text.AppendLine(SensitivityDbm is { } level
            ? FormattableString.Invariant($"Sensitivity {level:0.0} dBm with a noise figure of {NoiseFigureDb:0.#} dB{(NoiseFigureAssumed ? " (assumed, common practice)" : "")}")
            : "Sensitivity unknown: the catalogue has no demodulation limit for this setting");
        return text.ToString().TrimEnd();
    }

    internal string Json() => JsonDocumentWriter.Write("airtime", 1, writer =>
    {
        bool chirp = Setting.Modulation == Modulation.ChirpSpreadSpectrum;
        writer.WriteString("modulation", chirp ? "chirp-spread-spectrum" : "frequency-shift-keying");
        writer.Number("bandwidth-hertz", Setting.BandwidthHz);
        writer.Number("spreading-factor", chirp ? Setting.SpreadingFactor : null);
        writer.WriteString("coding-rate", chirp ? FormattableString.Invariant($"4/{Setting.CodingRateDenominator}") : null);
        writer.Number("preamble", Setting.PreambleLength);
        writer.Number("payload-bytes", Setting.PayloadBytes);
        writer.Number("symbol-seconds", Airtime.SymbolSeconds);
        writer.Number("preamble-seconds", Airtime.PreambleSeconds);
        writer.Number("payload-symbols", Airtime.PayloadSymbols);
        writer.Number("time-on-air-seconds", Airtime.TotalSeconds);
        writer.WriteBoolean("low-data-rate", Airtime.LowDataRateOptimised);
        writer.Number("bit-rate", Airtime.BitRate);
        writer.Number("noise-figure-db", NoiseFigureDb);
        writer.WriteBoolean("noise-figure-assumed", NoiseFigureAssumed);
        writer.Number("sensitivity-dbm", SensitivityDbm);
        writer.Ledger("ledger", Airtime.Ledger);
    });

    private string Way() => Setting.Modulation == Modulation.FrequencyShiftKeying
        ? FormattableString.Invariant($"frequency-shift keying at {Setting.BitRate:0} bit/s")
        : FormattableString.Invariant($"spreading factor {Setting.SpreadingFactor}, coding rate 4/{Setting.CodingRateDenominator}");
}
