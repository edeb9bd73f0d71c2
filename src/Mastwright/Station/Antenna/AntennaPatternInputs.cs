using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Antenna;

/// <summary>Gathers what a pattern needs from the fit, and lists what it had to assume or misses.</summary>
internal sealed class AntennaPatternInputs
{
    private readonly AntennaFit _fit;
    private readonly string _planPath;

    internal AntennaPatternInputs(AntennaFit fit, double frequencyHz, string planPath)
    {
        _fit = fit;
        _planPath = planPath;
        Kind = fit.Pattern;
        MainBeamDbi = fit.GainDbi;
        AzimuthBeamwidth = fit.AzimuthBeamwidthDegrees;
        switch (fit.Pattern)
        {
            case PatternKind.Table:
                Table();
                break;
            case PatternKind.CollinearArray:
                Collinear();
                break;
            case PatternKind.Yagi:
                Yagi();
                break;
            case PatternKind.AverageSideLobes:
                Envelope(frequencyHz);
                break;
            default:
                Assume("antenna-pattern", "the antenna's full gain in every direction of elevation", "pattern");
                break;
        }

        if (AzimuthBeamwidth is not null && fit.BearingDegrees is null)
        {
            Missing("antenna-bearing-unknown", "bearing", "bearing");
        }
    }

    internal PatternKind Kind { get; private set; }

    internal CollinearArray? Array { get; private set; }

    internal double ElevationBeamwidth { get; private set; } = double.NaN;

    internal double? AzimuthBeamwidth { get; private set; }

    internal Estimate? MainBeamDbi { get; private set; }

    internal List<Assumption> Assumptions { get; } = [];

    internal List<Finding> Findings { get; } = [];

    private void Table()
    {
        if (_fit.ElevationTable.IsDefaultOrEmpty)
        {
            FallBack("pattern-file");
            return;
        }

        if (_fit.ElevationTable[0].AngleDegrees >= 0)
        {
            Assume("antenna-table-mirrored", "the pattern below the horizon as the table gives it above", "pattern");
        }
    }

    private void Collinear()
    {
        double spacing = _fit.SpacingWavelengths ?? StationDefaults.CollinearSpacingWavelengths;
        if (_fit.Elements is not { } elements || !CollinearArray.IsValid(elements, spacing, _fit.NullFillDb, _fit.TiltDegrees))
        {
            FallBack("elements");
            return;
        }

        if (_fit.SpacingWavelengths is null)
        {
            Assume("antenna-spacing", string.Create(CultureInfo.InvariantCulture, $"elements {spacing:0.##} wavelengths apart"), "spacing");
        }

        Array = new(elements, spacing, _fit.NullFillDb, _fit.TiltDegrees);
        if (MainBeamDbi is null)
        {
            MainBeamDbi = Estimate.Exactly(Array.DirectivityDbi);
            Assume("antenna-gain-from-array", string.Create(CultureInfo.InvariantCulture, $"gain {Array.DirectivityDbi:0.0} dBi, the directivity of the array without loss"), "gain");
        }
    }

    private void Yagi()
    {
        if ((_fit.ElevationBeamwidthDegrees is null || AzimuthBeamwidth is null) && MainBeamDbi is null)
        {
            FallBack("gain or elevation-beamwidth");
            return;
        }

        if (_fit.ElevationBeamwidthDegrees is { } given)
        {
            ElevationBeamwidth = given;
        }
        else
        {
            ElevationBeamwidth = DirectionalBeam.BeamwidthDegrees(MainBeamDbi!.Value.Median, AzimuthBeamwidth);
            Assume("antenna-beamwidth", string.Create(CultureInfo.InvariantCulture, $"vertical beamwidth {ElevationBeamwidth:0.#}°, from the gain"), "elevation-beamwidth");
        }

        if (AzimuthBeamwidth is null)
        {
            AzimuthBeamwidth = DirectionalBeam.BeamwidthDegrees(MainBeamDbi!.Value.Median, ElevationBeamwidth);
            Assume("antenna-beamwidth", string.Create(CultureInfo.InvariantCulture, $"horizontal beamwidth {AzimuthBeamwidth:0.#}°, from the gain"), "azimuth-beamwidth");
        }

        Assume("antenna-floor", string.Create(CultureInfo.InvariantCulture, $"nothing lower than {StationDefaults.YagiFloorDb:0} dB under the main beam"), "pattern");
    }

    private void Envelope(double frequencyHz)
    {
        if (_fit.ElevationBeamwidthDegrees is { } given)
        {
            ElevationBeamwidth = given;
        }
        else if (MainBeamDbi is { } gain)
        {
            ElevationBeamwidth = AverageSideLobes.BeamwidthDegrees(gain.Median);
            Assume("antenna-beamwidth", string.Create(CultureInfo.InvariantCulture, $"vertical beamwidth {ElevationBeamwidth:0.#}°, from the gain"), "elevation-beamwidth");
        }
        else
        {
            FallBack("gain or elevation-beamwidth");
            return;
        }

        if (frequencyHz < AverageSideLobes.LowestHz)
        {
            Assume("antenna-envelope-range", "the ITU-R F.1336 envelope below its 400 MHz", "pattern");
        }
    }

    private void FallBack(string missing)
    {
        Kind = PatternKind.NotGiven;
        Missing("antenna-pattern-incomplete", "pattern", missing);
        Assume("antenna-pattern", "the antenna's full gain in every direction of elevation", "pattern");
    }

    private void Assume(string code, string text, string key) =>
        Assumptions.Add(new(code, text, "common practice", StationDefaults.Join(_planPath, key)));

    private void Missing(string code, string quantity, string missing) => Findings.Add(AntennaFindings.Missing(code, _planPath, quantity, missing));
}
