using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of the items of a supply, from the source to the loads. The first key of each says what the item is.</summary>
internal static class SupplyKeys
{
    private const double Year = 31_557_600;

    private static readonly QuantityShape Watts = new(Dimension.Wattage, 0, 1000, "1.2 W", Ranged: true);
    private static readonly QuantityShape MostWatts = new(Dimension.Wattage, 0.001, 5000, "15 W");
    private static readonly QuantityShape Share = new(Dimension.Percent, 0, 100, "1 %");
    private static readonly QuantityShape EfficiencyShape = new(Dimension.Percent, 1, 100, "88 %");
    private static readonly QuantityShape Metres = new(Dimension.Length, 0, 2000, "24 m", Ranged: true);
    private static readonly QuantityShape Around = new(Dimension.Temperature, -60, 90, "40 °C");

    internal static readonly KeyShape Name = new("name", new TextShape("in the office"), "Name to speak of it by.");
    internal static readonly KeyShape Efficiency = new("efficiency", EfficiencyShape, "Its efficiency; without it the catalogue's curve over the load.");
    internal static readonly KeyShape Power = new("power", MostWatts, "The most it gives.");
    internal static readonly KeyShape Input = new("input", new QuantityShape(Dimension.Voltage, 0.5, 75, "9…57 V", Ranged: true), "The voltage that it takes at its input, least and most.");

    internal static readonly KeyShape AdapterVolts = new("mains-adapter", new QuantityShape(Dimension.Voltage, 1, 60, "24 V"), "Mains adapter: its output voltage, direct.", Required: true);
    internal static readonly MappingShape Adapter = new("mains adapter", AdapterVolts, Power, Efficiency, Name);

    internal static readonly KeyShape ClassName = new("power-over-cable", new KeyNameShape("class-3"), "Source of power over data cable by IEEE 802.3: its class.", Required: true);
    internal static readonly KeyShape ClassVolts = new("voltage", new QuantityShape(Dimension.Voltage, 44, 57, "53 V"), "Its voltage; without it the least that the class allows.");
    internal static readonly MappingShape PowerOverCable = new("power over cable", ClassName, ClassVolts, Power, Efficiency, Name);

    internal static readonly KeyShape InjectorVolts = new("injector", new QuantityShape(Dimension.Voltage, 5, 57, "24 V"), "Passive injector: the voltage that it puts on the pairs, whatever is plugged in.", Required: true);
    internal static readonly MappingShape Injector = new("injector", InjectorVolts, Power, Efficiency, Name);

    internal static readonly KeyShape DataCableType = new("data-cable", new KeyNameShape("cat-5e"), "Data cable that carries the power: its catalogue type; empty when its conductors stand here.", Required: true, MayBeEmpty: true);
    internal static readonly KeyShape DcCableType = new("dc-cable", new KeyNameShape("flexible-1-5"), "Cable with two cores: its catalogue type; empty when its conductors stand here.", Required: true, MayBeEmpty: true);
    internal static readonly KeyShape Length = new("length", Metres, "Length of the cable.", Required: true);
    internal static readonly KeyShape Pairs = new("pairs", new WholeShape(1, 4), "Pairs that carry the power, 1, 2 or 4, half of their conductors each way; without it what the source uses.");
    internal static readonly KeyShape CableTemperature = new("temperature", Around, "Temperature around the cable, in its bundle.");
    internal static readonly KeyShape Gauge = new("gauge", new WholeShape(0, 40), "American wire gauge of a conductor, in place of a catalogue type.");
    internal static readonly KeyShape Section = new("section", new QuantityShape(Dimension.Area, 1e-8, 1e-4, "1.5 mm²"), "Nominal section of a conductor, in place of a catalogue type.");
    internal static readonly KeyShape Metal = new("metal", new ChoiceShape("copper", "aluminium", "copper-clad-aluminium"), "What the conductors are made of; without it copper, listed as assumed.");
    internal static readonly KeyShape Strands = new("strands", new ChoiceShape("solid", "stranded", "flexible"), "How a conductor is made up: one wire, several, or many thin ones; without it flexible, which has the greatest resistance.");
    internal static readonly KeyShape Carries = new("carries", new QuantityShape(Dimension.Current, 0.01, 100, "0.5 A"), "The most current in one conductor; without it from its section, listed as assumed.");
    internal static readonly KeyShape CablePairs = new("cable-pairs", new WholeShape(2, 4), "Pairs in the data cable, 2 or 4; without it 4, listed as assumed.");
    internal static readonly MappingShape DataCable = new("data cable", DataCableType, Length, Pairs, CableTemperature, Gauge, Section, Metal, Strands, Carries, CablePairs, Name);
    internal static readonly MappingShape DcCable = new("direct-current cable", DcCableType, Length, CableTemperature, Gauge, Section, Metal, Strands, Carries, Name);

    internal static readonly KeyShape ConverterVolts = new("converter", new QuantityShape(Dimension.Voltage, 0.5, 60, "5 V"), "Converter: its output voltage.", Required: true);
    internal static readonly KeyShape Kind = new("kind", new KeyNameShape("isolated"), "Kind of converter in the catalogue; without it buck, a step-down converter.");
    internal static readonly KeyShape Rating = new("rating", MostWatts, "The most it gives.");
    internal static readonly MappingShape Converter = new("converter", ConverterVolts, Kind, Rating, Efficiency, Input, Name);

    internal static readonly KeyShape FuseAmperes = new("fuse", new QuantityShape(Dimension.Current, 0.05, 100, "2 A"), "Fuse: its rated current.", Required: true);
    internal static readonly MappingShape Fuse = new("fuse", FuseAmperes, Name);

    internal static readonly KeyShape ArresterOhms = new("surge-arrester", new QuantityShape(Dimension.Resistance, 0, 100, "0.5 ohm"), "Surge arrester in the cable: its resistance in the loop; empty when unknown.", Required: true, MayBeEmpty: true);
    internal static readonly MappingShape Arrester = new("surge arrester in a supply", ArresterOhms, Name);

    internal static readonly KeyShape CellType = new("battery", new KeyNameShape("li-ion"), "Battery with its charger: type of its cells in the catalogue. Everything behind it is held up.", Required: true);
    internal static readonly KeyShape Series = new("series", new WholeShape(1, 32), "Cells in series; without it 1.");
    internal static readonly KeyShape Parallel = new("parallel", new WholeShape(1, 64), "Cells side by side; without it 1.");
    internal static readonly KeyShape Capacity = new("capacity", new QuantityShape(Dimension.Charge, 0.01, 2000, "3.35 Ah"), "Capacity of one cell; without it the catalogue's.");
    internal static readonly KeyShape Age = new("age", new QuantityShape(Dimension.Time, 0, 40 * Year, "0…5 years", Ranged: true), "Age over which it is to last.");
    internal static readonly KeyShape Charge = new("charge", new QuantityShape(Dimension.Percent, 1, 100, "90…100 %", Ranged: true), "How full it is when it takes over.");
    internal static readonly KeyShape CutOff = new("cut-off", new QuantityShape(Dimension.Voltage, 0.5, 60, "3.2 V"), "Voltage of the whole battery at which it is switched off.");
    internal static readonly KeyShape ChargerAmperes = new("charger", new QuantityShape(Dimension.Current, 0.001, 200, "0.5 A"), "Current that the charger gives to battery and loads together.");
    internal static readonly KeyShape ChargerEfficiency = new("charger-efficiency", EfficiencyShape, "Efficiency of the charger.");
    internal static readonly KeyShape StopsInCold = new("stops-charge-in-cold", new YesNoShape(), "Whether the charger stops where the cells are too cold for charging.");
    internal static readonly KeyShape Hold = new("hold", new QuantityShape(Dimension.Time, 1, 10 * Year, "12 h"), "How long it is wanted to last.");
    internal static readonly KeyShape BatteryTemperature = new("temperature", new QuantityShape(Dimension.Temperature, -60, 90, "15 (-5…35) °C", Ranged: true), "Temperature of the battery; without it that of the box.");
    internal static readonly MappingShape Battery = new(
        "battery", CellType, Series, Parallel, Capacity, Age, Charge, CutOff, ChargerAmperes, ChargerEfficiency, Input, StopsInCold, Hold, BatteryTemperature, Name);

    internal static readonly KeyShape Sleep = new("sleep", Watts, "Power asleep.");
    internal static readonly KeyShape SleepShare = new("sleep-share", Share, "Share of time asleep; without it none.");
    internal static readonly KeyShape Boot = new("boot", new QuantityShape(Dimension.Wattage, 0, 1000, "4 W"), "The most it takes while it starts.");

    internal static readonly KeyShape BoardType = new("board", new KeyNameShape("small-board"), "Board: its catalogue type; empty when its figures stand here.", Required: true, MayBeEmpty: true);
    internal static readonly KeyShape Idle = new("idle", Watts, "Power idle.");
    internal static readonly KeyShape Busy = new("busy", Watts, "Power busy.");
    internal static readonly KeyShape BusyShare = new("busy-share", Share, "Share of time busy.");
    internal static readonly MappingShape Board = new("board", BoardType, Sleep, SleepShare, Idle, Busy, BusyShare, Boot, Input, Name);

    internal static readonly KeyShape RadioType = new("radio", new KeyNameShape("chirp-node"), "The radio as a load: its catalogue type; empty when its figures stand here.", Required: true, MayBeEmpty: true);
    internal static readonly KeyShape Receive = new("receive", Watts, "Power receiving.");
    internal static readonly KeyShape Transmit = new("transmit", Watts, "Power transmitting; without it the catalogue's at the radio's power setting.");
    internal static readonly KeyShape TransmitShare = new("transmit-share", Share, "Share of time transmitting; without it from the station's traffic.");
    internal static readonly MappingShape Radio = new("radio as a load", RadioType, Sleep, SleepShare, Receive, Transmit, TransmitShare, Boot, Input, Name);

    internal static readonly KeyShape PartName = new("part", new KeyNameShape("box-cell"), "A part described under parts/supply.", Required: true);
    internal static readonly MappingShape Part = new("part of a supply", PartName);

    /// <summary>What may stand under parts/supply: a part is no reference to another part, and no fork.</summary>
    internal static readonly AlternativesShape PartItem = new([Adapter, PowerOverCable, Injector, DataCable, DcCable, Converter, Fuse, Arrester, Battery, Board, Radio]);

    /// <summary>What may stand in a branch of a branch.</summary>
    internal static readonly AlternativesShape InnerItem = new([DataCable, DcCable, Converter, Fuse, Arrester, Battery, Board, Radio, Part]);

    internal static readonly KeyShape InnerBranches = new("branches", new KeyedShape(KeyNameShape.Pattern, new ListShape(InnerItem)), "Where the line forks: branches by name, each a list like this one.", Required: true);
    internal static readonly MappingShape InnerFork = new("branches", InnerBranches);

    /// <summary>What may stand in a branch.</summary>
    internal static readonly AlternativesShape BranchItem = new([.. InnerItem.Choices, InnerFork]);

    internal static readonly KeyShape Branches = new("branches", new KeyedShape(KeyNameShape.Pattern, new ListShape(BranchItem)), "Where the line forks: branches by name, each a list like this one.", Required: true);
    internal static readonly MappingShape Fork = new("branches", Branches);

    /// <summary>What may stand in a supply.</summary>
    internal static readonly AlternativesShape Item = new([.. PartItem.Choices, Part, Fork]);

    /// <summary>Alternatives and the shape of the list in each branch below them, for a fork's own key.</summary>
    internal static AlternativesShape Below(KeyShape branches) => branches == Branches ? BranchItem : InnerItem;
}
