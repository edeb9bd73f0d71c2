using System.Collections.Immutable;
using Mastwright.Quantities;
using Mastwright.Station.HoldUp;
using Mastwright.Station.Rules;
using Mastwright.Station.Supply;

namespace Mastwright.Tests.Station.Supply;

/// <summary>Rows and parts for the tests of supply and hold-up.</summary>
internal static class SupplySamples
{
    internal static readonly CellRow Cell = new()
    {
        Key = "cell",
        Name = "cell",
        AmpereHours = 3.35,
        NominalVolts = 3.6,
        FullVolts = 4.2,
        CutOffVolts = 3,
        RestVolts = new([new(0, 3), new(0.1, 3.45), new(0.5, 3.7), new(1, 4.18)]),
        CapacityByCelsius = new(
            new([new(-20, 0.4), new(0, 0.8), new(25, 1)]), new([new(-20, 0.6), new(0, 0.88), new(25, 1)]), new([new(-20, 0.7), new(0, 0.92), new(25, 1)])),
        OhmAmpereHours = 0.17,
        ResistanceByCelsius = new([new(-20, 5), new(0, 1.8), new(25, 1)]),
        AgedResistanceFactor = 2,
        RatedHours = 5,
        PeukertExponent = 1.05,
        ChargeRateByCelsius = new([new(0, 0.2), new(10, 0.5), new(60, 0.5)]),
        ChargeLeastCelsius = 0,
        DischargeLeastCelsius = -20,
        MostCelsius = 60,
        MostDischargeRate = 2,
        LifeYears = Estimate.Of(4, 7, 10),
        ChargeEfficiency = 0.99,
        ChargeTaper = Estimate.Of(1.1, 1.3, 1.6),
        Source = "made up",
    };

    internal static readonly SupplyCatalogue Catalogue = new()
    {
        Cables =
        [
            Cable("awg-24", 4, 84.2),
            Cable("pairs-20-ohm", 4, 200),
            Cable("clad", 4, 130) with { Metal = ConductorMetal.CopperCladAluminium },
            Cable("solid-1-5", 0, 12.1) with { MostAmperes = 16 },
            Cable("solid-2-5", 0, 7.41) with { MostAmperes = 20 },
            Cable("thread", 0, 100) with { MostAmperes = 0.1, SheathMillimetres = 1 },
        ],
        Classes =
        [
            Class("class-1", 1, 2, 4, 3.84, 44, 37, 0.35),
            Class("class-2", 1, 2, 7, 6.49, 44, 37, 0.35),
            Class("class-3", 1, 2, 15.4, 12.95, 44, 37, 0.35),
            Class("class-4", 2, 2, 30, 25.5, 50, 42.5, 0.6),
            Class("class-8", 4, 4, 90, 71.3, 52, 41.1, 1.92),
        ],
        Converters =
        [
            new("buck", "step-down converter", new([new(0.01, 0.3), new(0.1, 0.8), new(0.5, 0.9), new(1, 0.87)]), "made up") { Step = ConverterStep.Down },
            new("boost", "step-up converter", LinearCurve.Level(0.85), "made up") { Step = ConverterStep.Up },
            new("isolated", "isolated converter", LinearCurve.Level(0.8), "made up"),
            new("mains-adapter", "mains adapter", LinearCurve.Level(0.8), "made up"),
            new("charger", "charger", LinearCurve.Level(0.85), "made up"),
        ],
        Loads =
        [
            new()
            {
                Key = "board", Name = "board", IsRadio = false, SleepWatts = Estimate.Exactly(0.1), AwakeWatts = Estimate.Of(1, 1.2, 1.4), BusyWatts = Estimate.Of(2, 2.5, 3),
                BootWatts = 4, LeastVolts = 4.75, MostVolts = 5.25, Source = "made up",
            },
            new()
            {
                Key = "node", Name = "node", IsRadio = true, SleepWatts = Estimate.Exactly(0.001), AwakeWatts = Estimate.Of(0.04, 0.05, 0.06),
                TransmitWatts = new([new(0, 0.1), new(14, 0.2), new(22, 0.6)]), BootWatts = 0.3, LeastVolts = 3, MostVolts = 5.5, Source = "made up",
            },
        ],
        Cells = [Cell],
    };

    internal static readonly SupplyContext Context = new()
    {
        PlanPath = "p",
        Catalogue = Catalogue,
        ConductedPowerDbm = 14,
        Traffic = TrafficEstimate.Of(new() { OwnMean = 12, RelayedMean = 60 }, 0.5, "p/traffic"),
        BoxCelsius = Estimate.Of(-10, 10, 35),
    };

    internal static SupplySource Adapter(double volts, double? watts = null) => new("p/supply/1", SupplySourceKind.MainsAdapter) { Volts = volts, RatedWatts = watts };

    internal static SupplySource Injector(double volts, double? watts = null) => new("p/supply/1", SupplySourceKind.Injector) { Volts = volts, RatedWatts = watts };

    internal static SupplySource OfClass(string key, double? volts = null) => new("p/supply/1", SupplySourceKind.PowerOverCable) { ClassKey = key, Volts = volts };

    internal static SupplyCable Data(string type, double metres, double celsius = 20, int? pairs = 2) =>
        new("p/supply/2", true, type, Estimate.Exactly(metres)) { TemperatureCelsius = celsius, Pairs = pairs };

    internal static SupplyCable Cores(string type, double metres, double celsius = 20) => new("p/supply/2", false, type, Estimate.Exactly(metres)) { TemperatureCelsius = celsius };

    /// <summary>A board that draws one power at all times.</summary>
    internal static SupplyLoad Steady(double watts, Estimate? input = null) => new("p/supply/9", false, "")
    {
        Name = "load",
        AwakeWatts = Estimate.Exactly(watts),
        PeakWatts = Estimate.Exactly(watts),
        PeakShare = 0,
        InputVolts = input,
    };

    internal static SupplyLoad Node { get; } = new("p/supply/8", true, "node");

    internal static SupplyBattery Battery { get; } = new("p/supply/4", "cell")
    {
        ChargerAmperes = 0.5,
        StopsChargeInCold = true,
        AgeYears = Estimate.Between(0, 4),
        ChargeAtStart = Estimate.Exactly(1),
        WantedHours = 24,
    };

    internal static SupplyResult Compute(params ImmutableArray<SupplyPart> parts) => SupplyChain.Compute(parts, Context);

    private static CableRow Cable(string key, int pairs, double ohms) => new()
    {
        Key = key,
        Name = key,
        Pairs = pairs,
        OhmsPerKilometre = ohms,
        MostAmperes = 0.5,
        SheathMillimetres = 5,
        MostCelsius = 60,
        Source = "made up",
    };

    private static PowerClassRow Class(string key, int type, int pairs, double source, double device, double least, double deviceLeast, double amperes) => new()
    {
        Key = key,
        Type = type,
        Pairs = pairs,
        SourceWatts = source,
        DeviceWatts = device,
        SourceLeastVolts = least,
        DeviceLeastVolts = deviceLeast,
        MostVolts = 57,
        MostAmperes = amperes,
        Source = "IEEE 802.3",
    };
}
