using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Storage.Plans;

/// <summary>Binds an antenna, and the height of a neighbour's.</summary>
internal static class AntennaBinder
{
    /// <summary>The antenna of a fit-out; null when it is no mapping or refers to a part that is not there.</summary>
    internal static AntennaFit? Bind(PlanBinding binding, PlanNode node, string path)
    {
        if (!PartLookup.Find(binding, node, path, AntennaKeys.Part, binding.AntennaParts, "antennas", out PlanNode? part))
        {
            return null;
        }

        return MappingReader.Open(binding, node, path, AntennaKeys.Shape, part) is { } reader ? Read(reader, isPart: false) : null;
    }

    /// <summary>Checks an antenna described as a part.</summary>
    internal static void CheckPart(PlanBinding binding, PlanNode node, string path)
    {
        if (MappingReader.Open(binding, node, path, AntennaKeys.PartShape) is { } reader)
        {
            Read(reader, isPart: true);
        }
    }

    /// <summary>A height with what it is measured from; null when there is none.</summary>
    internal static MountHeight? Height(MappingReader reader, KeyShape key, bool isPart = false)
    {
        Estimate? metres = reader.Quantity(key);
        HeightAbove above = reader.Choice(AntennaKeys.Above) switch { 1 => HeightAbove.Roof, 2 => HeightAbove.SeaLevel, _ => HeightAbove.Ground };
        Estimate? roof = reader.Quantity(AntennaKeys.Roof);
        string datum = reader.Text(AntennaKeys.Datum);
        if (isPart)
        {
            return null;
        }

        Belongs(reader, AntennaKeys.Roof, above == HeightAbove.Roof, "above: roof");
        Belongs(reader, AntennaKeys.Datum, above == HeightAbove.SeaLevel, "above: sea-level");
        if (metres is { Low: < 0 } && above != HeightAbove.SeaLevel && reader.Find(key) is { } node)
        {
            reader.Binding.Add(node, reader.PathOf(key), "plan-range", "An antenna below what its height is measured from.", "a height of 0 m or more, or above: sea-level with a datum");
        }

        if (reader.Find(key) is null && reader.Find(AntennaKeys.Above) is { } alone)
        {
            reader.Binding.Add(alone, reader.PathOf(AntennaKeys.Above), "plan-contradiction", "'above' says what a height is measured from, and no height is given.", "height: 6 m beside it");
        }

        return metres is { } height ? new(height, above, above == HeightAbove.Roof ? roof : null, datum) : null;
    }

    /// <summary>The polarisation of an antenna.</summary>
    internal static Polarisation Polarised(MappingReader reader) =>
        reader.Choice(AntennaKeys.Polarisation) == 1 ? Polarisation.Horizontal : Polarisation.Vertical;

    private static AntennaFit? Read(MappingReader reader, bool isPart)
    {
        if (!isPart)
        {
            reader.Has(AntennaKeys.Part);
        }

        MountHeight? height = Height(reader, AntennaKeys.Height, isPart);
        PatternKind pattern = reader.Choice(AntennaKeys.Pattern) switch
        {
            0 => PatternKind.CollinearArray,
            1 => PatternKind.Yagi,
            2 => PatternKind.AverageSideLobes,
            3 => PatternKind.Table,
            _ => PatternKind.NotGiven,
        };
        AntennaFit antenna = new()
        {
            Name = reader.Text(AntennaKeys.Name),
            GainDbi = reader.Quantity(AntennaKeys.Gain),
            Height = height ?? new(Estimate.Exactly(0), HeightAbove.Ground),
            Polarisation = Polarised(reader),
            Pattern = pattern,
            ElevationTable = PatternFile.Bind(reader),
            Elements = reader.Whole(AntennaKeys.Elements),
            SpacingWavelengths = Spacing(reader),
            NullFillDb = reader.Exact(AntennaKeys.NullFill),
            ElevationBeamwidthDegrees = reader.Exact(AntennaKeys.ElevationBeamwidth),
            AzimuthBeamwidthDegrees = reader.Exact(AntennaKeys.AzimuthBeamwidth),
            BearingDegrees = reader.Exact(AntennaKeys.Bearing),
            TiltDegrees = reader.Exact(AntennaKeys.Tilt) ?? 0,
            LengthMetres = reader.Exact(AntennaKeys.Length),
            SideMountOffsetMetres = reader.Exact(AntennaKeys.MastDistance),
            Indoors = reader.YesNo(AntennaKeys.Indoors, false),
            TotalLengthMetres = reader.Exact(AntennaKeys.TotalLength),
            DiameterMetres = reader.Exact(AntennaKeys.Diameter),
            WindAreaSquareMetres = reader.Exact(AntennaKeys.WindArea),
            DragCoefficient = reader.Number(AntennaKeys.DragCoefficient),
            MassKilograms = reader.Exact(AntennaKeys.Mass),
        };
        if (!isPart)
        {
            Belongs(reader, AntennaKeys.PatternFile, pattern == PatternKind.Table, "pattern: table");
            reader.Done();
        }

        return antenna;
    }

    /// <summary>A key that one choice asks for and no other has a use for.</summary>
    private static void Belongs(MappingReader reader, KeyShape key, bool asked, string choice)
    {
        PlanNode? node = reader.Find(key);
        if (asked && node is null)
        {
            reader.Binding.Add(reader.Node, reader.Path, "plan-missing-key", $"With {choice} the key '{key.Name}' is needed.", $"{key.Name}: {key.Value.Wanted}");
        }
        else if (!asked && node is not null && reader.Node.Find(key.Name) is not null)
        {
            reader.Binding.Add(node, reader.PathOf(key), "plan-contradiction", $"The key '{key.Name}' has a use only with {choice}.", $"{choice} beside it, or neither");
        }
    }

    private static double? Spacing(MappingReader reader)
    {
        KeyShape key = AntennaKeys.Spacing;
        if (reader.Find(key) is not { } node || ScalarBinder.Text(reader.Binding, node, reader.PathOf(key), key.Value) is not { } text)
        {
            return null;
        }

        string[] words = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        if (words is [var number, "wavelength" or "wavelengths"]
            && double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double spacing) && spacing is >= 0.1 and <= 4)
        {
            return spacing;
        }

        reader.Binding.Add(node, reader.PathOf(key), ScalarBinder.ValueCode, "This is not a spacing in wavelengths.", key.Value.Wanted);
        return null;
    }
}
