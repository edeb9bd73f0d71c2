using System.Collections.Immutable;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Earthing;
using Mastwright.Station.Feed;
using Mastwright.Station.Supply;

namespace Mastwright.Plans;

/// <summary>The parts of a fit-out as the rows of its one-line diagram: the antenna on top, the source of the power at the foot.</summary>
internal sealed class ElementRows(FitOutReport report)
{
    private readonly FitOut _fitOut = report.Station.FitOut!;
    private readonly string _path = report.Station.FitOutPath;
    private readonly string? _radioLoad = StationElements.RadioLoad(report.Station.FitOut!.Supply);
    private int _lastLane;

    internal IEnumerable<StationElement> All()
    {
        yield return One("antenna", ElementKind.Antenna, ElementPlace.Mast, Named("antenna", _fitOut.Antenna.Name), AntennaNote()) with { AtWork = report.Chain.RadiatedPower is { } power ? StationElements.Text($"{power.EirpDbm.Median:0.0} dBm EIRP") : "" };
        for (int i = _fitOut.Feed.Length - 1; i >= 0; i--)
        {
            yield return Feed(_fitOut.Feed[i], i < report.Chain.Feed.Stages.Length ? report.Chain.Feed.Stages[i] : null);
        }

        yield return One("radio", ElementKind.Radio, ElementPlace.Radio, Named("radio", _fitOut.Radio.Name), _fitOut.Radio.ConductedPowerDbm is { } set ? StationElements.Text($"{set.Median:0.#} dBm") : "") with { AtWork = _radioLoad is null ? "" : AtWork(_radioLoad) };
        foreach (StationElement element in Chain(_fitOut.Supply, 0, isTop: true))
        {
            yield return element;
        }

        if (_fitOut.Solar is { } solar)
        {
            yield return One("solar", ElementKind.Panel, ElementPlace.Source, "solar panel", StationElements.Text($"{solar.PanelWatts:0.#} W, {solar.TiltDegrees:0}° from level, towards {solar.AzimuthDegrees:0}°"));
        }
    }

    /// <summary>What has no row of its own: frames, and what stands around.</summary>
    internal static IEnumerable<StationElement> Beside(FitOutReport report)
    {
        FitOut fitOut = report.Station.FitOut!;
        string path = report.Station.FitOutPath;
        if (!fitOut.Antenna.Indoors)
        {
            yield return Aside("mast", ElementKind.Mast, "mast", fitOut.Mast is { } mast ? StationElements.Text($"{mast.FreeLengthMetres:0.##} m above its bracket") : "not described");
        }

        yield return Aside("box", ElementKind.Box, fitOut.Box.IsDescribed ? "box" : "where the radio stands", fitOut.Box.Surface is { } box
            ? StationElements.Text($"{box.WidthMetres * 1000:0} × {box.HeightMetres * 1000:0} × {box.DepthMetres * 1000:0} mm")
            : fitOut.Box.TemperatureCelsius is { } given ? StationElements.Text($"{given.Low:0} to {given.High:0} °C") : "not described");
        if (!fitOut.Antenna.Indoors)
        {
            yield return Aside("earthing", ElementKind.Earth, "earth", Earth(fitOut.Earthing));
        }

        yield return Aside("people", ElementKind.People, "people near the antenna", fitOut.People.PublicMetres is { } metres ? StationElements.Text($"public {metres:0.#} m off") : "");
        yield return Aside("hazards", ElementKind.Hazards, "work at the place", "");
        yield return Aside(StationElements.Whole, ElementKind.Whole, "the whole fit-out", "links, and what is said of no single part") with { PlanPath = path };

        StationElement Aside(string key, ElementKind kind, string label, string note) => new() { Key = key, PlanPath = $"{path}/{key}", Kind = kind, Label = label, Note = note };
    }

    private static string Earth(EarthingFit? earthing) => earthing is null
        ? "not described"
        : string.Join(", ", new[]
        {
            earthing.ConductorSquareMillimetres is { } square ? StationElements.Text($"{square:0.#} mm² {earthing.ConductorMaterial}").TrimEnd() : "",
            earthing.RodLengthMetres is { } rod ? StationElements.Text($"{earthing.Rods ?? 1} × {rod:0.##} m of rod") : "",
        }.Where(part => part.Length > 0));

    private string AntennaNote() => string.Join(", ", new[]
    {
        report.Chain.Pattern.MainBeamDbi is { } gain ? StationElements.Text($"{gain.Median:0.#} dBi") : "gain unknown",
        StationElements.Text($"{_fitOut.Antenna.Height.Metres.Median:0.##} m up"),
    });

    private StationElement Feed(FeedPart part, FeedStage? stage)
    {
        string work = stage?.TransmitGainDb is { } gain ? StationElements.Text($"{gain.Median:0.00} dB") : "loss unknown";
        return part switch
        {
            FeedLine line => Of(ElementKind.Line, stage?.Label ?? line.LineType, StationElements.Text($"{line.LengthMetres.Median:0.##} m")),
            LossyPart lossy => Of(
                lossy.Kind switch { LossyPartKind.Connector or LossyPartKind.Adapter => ElementKind.Connectors, LossyPartKind.SurgeArrester => ElementKind.Arrester, _ => ElementKind.Filter },
                lossy.Name.Length > 0 ? lossy.Name : lossy.Kind == LossyPartKind.Connector ? "connectors" : stage?.Label ?? "part",
                lossy.Kind == LossyPartKind.Connector ? StationElements.Text($"{lossy.Count} mated {(lossy.Count == 1 ? "pair" : "pairs")}") : lossy.Count > 1 ? StationElements.Text($"{lossy.Count} of them") : ""),
            FeedAmplifier amplifier => Of(ElementKind.Amplifier, Named("amplifier", amplifier.Name), ""),
            _ => Of(ElementKind.Filter, stage?.Label ?? "part of the feed", ""),
        };

        StationElement Of(ElementKind kind, string label, string note) => At(part.PlanPath, kind, ElementPlace.Mast, 0, label, note) with { AtWork = work };
    }

    /// <summary>A chain of the supply from its loads down to its source. Of a fork the branch with the radio goes on straight up; the others stand beside it.</summary>
    private IEnumerable<StationElement> Chain(ImmutableArray<SupplyPart> parts, int lane, bool isTop)
    {
        int firstCable = isTop ? Cable(parts, first: true) : -1;
        int lastCable = isTop ? Cable(parts, first: false) : -1;
        for (int i = parts.Length - 1; i >= 0; i--)
        {
            if (parts[i].PlanPath == _radioLoad)
            {
                continue;
            }

            if (parts[i] is SupplyBranches fork)
            {
                SupplyBranch? straight = fork.Branches.FirstOrDefault(branch => StationElements.RadioLoad(branch.Parts) is not null) ?? fork.Branches[0];
                foreach (StationElement element in Chain(straight.Parts, lane, isTop: false))
                {
                    yield return element;
                }

                foreach (SupplyBranch branch in fork.Branches.Where(branch => branch != straight))
                {
                    foreach (StationElement element in Chain(branch.Parts, ++_lastLane, isTop: false))
                    {
                        yield return element;
                    }
                }
            }

            ElementPlace place = i < firstCable ? ElementPlace.Source : i > lastCable ? ElementPlace.Radio : ElementPlace.Run;
            yield return Supply(parts[i], place, lane);
        }
    }

    private static int Cable(ImmutableArray<SupplyPart> parts, bool first)
    {
        int[] cables = [.. Enumerable.Range(0, parts.Length).Where(i => parts[i] is SupplyCable)];
        return cables.Length == 0 ? -1 : first ? cables[0] : cables[^1];
    }

    private StationElement Supply(SupplyPart part, ElementPlace place, int lane)
    {
        (ElementKind kind, string usual, string note) = part switch
        {
            SupplySource { Kind: SupplySourceKind.PowerOverCable } source => (ElementKind.Source, "power-over-cable source", source.ClassKey),
            SupplySource source => (ElementKind.Source, source.Kind == SupplySourceKind.Injector ? "injector" : "mains adapter", Volts(source.Volts)),
            SupplyCable cable => (cable.IsData ? ElementKind.DataCable : ElementKind.PowerCable, cable.IsData ? "data cable with power" : "cable with two cores", StationElements.Text($"{cable.LengthMetres.Median:0.##} m, {cable.Make}")),
            SupplyConverter converter => (ElementKind.Converter, "converter", "to " + Volts(converter.OutputVolts)),
            SupplyFuse fuse => (ElementKind.Fuse, "fuse", StationElements.Text($"{fuse.Amperes:0.###} A")),
            SupplyArrester => (ElementKind.Arrester, "surge arrester", ""),
            SupplyBattery battery => (ElementKind.Battery, "battery", BatteryNote(battery)),
            SupplyLoad load => (load.IsRadio ? ElementKind.Radio : ElementKind.Board, load.IsRadio ? "radio" : "board", ""),
            _ => (ElementKind.Fork, "fork", ""),
        };
        return At(part.PlanPath, kind, place, lane, part.Name.Length > 0 ? part.Name : usual, note) with { AtWork = AtWork(part.PlanPath) };
    }

    private string BatteryNote(SupplyBattery battery) => report.Supply.Batteries.FirstOrDefault(one => one.PlanPath == battery.PlanPath) is { } known
        ? StationElements.Text($"{battery.CellCount} × {battery.CellType}, {known.Battery.Pack.WattHours:0.#} Wh")
        : StationElements.Text($"{battery.CellCount} × {battery.CellType}");

    private static string Volts(double? volts) => volts is { } known ? StationElements.Text($"{known:0.#} V") : "";

    /// <summary>Volts and watts at its input on average.</summary>
    private string AtWork(string path) => report.Supply.Mean.FirstOrDefault(point => point.PlanPath == path) is { } mean
        ? StationElements.Text($"{mean.Volts:0.0} V, {mean.Watts:0.00} W")
        : "";

    private StationElement One(string key, ElementKind kind, ElementPlace place, string label, string note) => At($"{_path}/{key}", kind, place, 0, label, note);

    private StationElement At(string path, ElementKind kind, ElementPlace place, int lane, string label, string note) => new()
    {
        Key = path[(_path.Length + 1)..],
        PlanPath = path,
        Kind = kind,
        Place = place,
        Lane = lane,
        Label = label,
        Note = note,
    };

    private static string Named(string what, string name) => name.Length > 0 ? name : what;
}
