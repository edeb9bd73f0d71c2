using System.Collections.Immutable;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Earthing;
using Mastwright.Station.Feed;
using Mastwright.Station.Mast;
using Mastwright.Station.Sun;
using Mastwright.Station.Supply;

namespace Mastwright.Plans;

/// <summary>The parts of a fit-out with their lengths, as the plan gives them; from the source of the power up to the antenna.</summary>
internal static class PartsNeeded
{
    internal static ImmutableArray<PartNeeded> Of(FitOut fitOut, string fitOutPath)
    {
        string antenna = fitOutPath + "/antenna";
        return
        [
            .. fitOut.Solar is { } solar ? Solar(solar) : [],
            .. Supply(fitOut.Supply),
            .. HasRadio(fitOut.Supply) ? Array.Empty<PartNeeded>() : [new PartNeeded(Named("radio", fitOut.Radio.Name), 1, null, fitOutPath + "/radio")],
            .. fitOut.Box.Surface is { } box
                ? [new PartNeeded(FormattableString.Invariant($"box {box.WidthMetres * 1000:0} × {box.HeightMetres * 1000:0} × {box.DepthMetres * 1000:0} mm"), 1, null, fitOutPath + "/box")]
                : Array.Empty<PartNeeded>(),
            .. fitOut.Feed.Select(Feed),
            new(Named("antenna", fitOut.Antenna.Name), 1, Exactly(fitOut.Antenna.TotalLengthMetres ?? fitOut.Antenna.LengthMetres), antenna),
            .. fitOut.Mast is { } mast ? Mast(mast, fitOutPath + "/mast", isCableListed: fitOut.Feed.Any(part => part is FeedLine) || CableEnds.Of(fitOut.Supply).Length > 0) : [],
            .. fitOut.Earthing is { } earthing ? Earthing(earthing, fitOut.Supply, fitOutPath + "/earthing") : [],
        ];
    }

    private static IEnumerable<PartNeeded> Solar(SolarFit solar)
    {
        yield return new(FormattableString.Invariant($"solar panel {solar.PanelWatts:0.#} W"), 1, null, solar.PlanPath);
        yield return new("solar charge controller", 1, null, solar.PlanPath);
    }

    private static IEnumerable<PartNeeded> Earthing(EarthingFit earthing, ImmutableArray<SupplyPart> supply, string path)
    {
        // Arresters of the supply are listed with it; those that the plan only speaks of are one at each end.
        if (earthing.DataCable == DataCableSurge.Arrester && !CableEnds.Of(supply).Any(cable => cable.IsGuardedAtSource || cable.IsGuardedAtLoads))
        {
            yield return new("data cable surge arrester", 2, null, path + "/data-cable");
        }

        if (earthing.ConductorSquareMillimetres is { } area)
        {
            yield return new(FormattableString.Invariant($"earth conductor {earthing.ConductorMaterial} {area:0.#} mm²").Replace("  ", " ", StringComparison.Ordinal) + ", from the mast to earth", 1, null, path + "/conductor");
        }

        if (earthing.RodLengthMetres is { } rod)
        {
            yield return new("earth rod", earthing.Rods ?? 1, Estimate.Exactly(rod), path + "/rods");
        }

        if (earthing.AirTermination == AirTermination.Rod)
        {
            yield return new("air-termination rod" + (earthing.RodHeightMetres is { } tip ? FormattableString.Invariant($", its tip {tip:0.#} m above the ground") : ""), 1, null, path + "/air-termination");
        }
    }

    private static PartNeeded Feed(FeedPart part) => part switch
    {
        FeedLine line => new("line " + line.LineType, 1, line.LengthMetres, line.PlanPath),
        LossyPart lossy => new(Named(Word(lossy.Kind), lossy.Name), lossy.Count, null, lossy.PlanPath),
        FeedAmplifier amplifier => new(Named("amplifier", amplifier.Name), 1, null, amplifier.PlanPath),
        _ => new("part of the feed", 1, null, part.PlanPath),
    };

    private static string Word(LossyPartKind kind) => kind switch
    {
        LossyPartKind.Connector => "mated pair of connectors",
        LossyPartKind.Adapter => "adapter",
        LossyPartKind.SurgeArrester => "coaxial surge arrester",
        LossyPartKind.Filter => "filter",
        _ => "splitter",
    };

    private static IEnumerable<PartNeeded> Supply(ImmutableArray<SupplyPart> parts)
    {
        foreach (SupplyPart part in parts)
        {
            if (part is SupplyBranches fork)
            {
                foreach (PartNeeded behind in fork.Branches.SelectMany(branch => Supply(branch.Parts)))
                {
                    yield return behind;
                }
            }
            else
            {
                yield return Single(part);
            }
        }
    }

    private static bool HasRadio(ImmutableArray<SupplyPart> parts) =>
        parts.Any(part => part is SupplyLoad { IsRadio: true } || (part is SupplyBranches fork && fork.Branches.Any(branch => HasRadio(branch.Parts))));

    private static PartNeeded Single(SupplyPart part) => part switch
    {
        SupplySource { Kind: SupplySourceKind.PowerOverCable } source => One("power-over-cable source " + source.ClassKey, source),
        SupplySource source => One(FormattableString.Invariant($"{(source.Kind == SupplySourceKind.Injector ? "injector" : "mains adapter")} {source.Volts:0.#} V"), source),
        SupplyCable cable => new(Named((cable.IsData ? "data cable " : "cable ") + cable.Make, cable.Name), 1, cable.LengthMetres, cable.PlanPath),
        SupplyConverter converter => One(FormattableString.Invariant($"converter to {converter.OutputVolts:0.#} V"), converter),
        SupplyFuse fuse => One(FormattableString.Invariant($"fuse {fuse.Amperes:0.###} A"), fuse),
        SupplyArrester arrester => One("data cable surge arrester", arrester),
        SupplyBattery battery => new(Named("cell " + battery.CellType, battery.Name), battery.CellCount, null, battery.PlanPath),
        SupplyLoad load => One((load.IsRadio ? "radio " : "board ") + load.LoadType, load),
        _ => One("part of the supply", part),
    };

    private static PartNeeded One(string what, SupplyPart part) => new(Named(what.Trim(), part.Name), 1, null, part.PlanPath);

    private static IEnumerable<PartNeeded> Mast(MastFit mast, string path, bool isCableListed)
    {
        foreach ((int i, MastTube tube) in mast.Tubes.Index())
        {
            // The lowest tube goes down to the lower bracket; how far another reaches into the one below, the plan does not say.
            double? held = i == 0 ? mast.BracketSpacingMetres : null;
            string size = tube.Size.Length > 0 ? tube.Size : FormattableString.Invariant($"{tube.OuterDiameterMetres * 1000:0.#} × {tube.WallMetres * 1000:0.#} mm");
            yield return new($"tube {size} {tube.Grade}".TrimEnd() + (held is null ? ", free length" : ", cut length with the part between the brackets"), 1, Estimate.Exactly(tube.LengthMetres + (held ?? 0)), tube.PlanPath);
        }

        yield return new("mast bracket", 2, null, path + "/bracket");
        yield return new(Named("antenna clamp", mast.Clamp), 1, null, path + "/clamp");
        if (mast.Cable is { } cable)
        {
            yield return new(
                FormattableString.Invariant($"cable up the mast, {cable.DiameterMetres * 1000:0.#} mm thick{(isCableListed ? ", a part of those above" : "")}"), 1,
                Estimate.Exactly(cable.LengthMetres ?? mast.FreeLengthMetres), path + "/cable");
        }

        if (mast.Guys is { } guys)
        {
            yield return new(FormattableString.Invariant($"guy, rope of {guys.DiameterMetres * 1000:0.#} mm"), guys.Count ?? GuyLevel.UsualCount, Estimate.Exactly(guys.LengthMetres), path + "/guys");
        }
    }

    private static string Named(string what, string name) => name.Length == 0 ? what : $"{what} ({name})";

    private static Estimate? Exactly(double? metres) => metres is { } known ? Estimate.Exactly(known) : null;
}
