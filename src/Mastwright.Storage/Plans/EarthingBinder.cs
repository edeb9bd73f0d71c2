using Mastwright.Station.Earthing;

namespace Mastwright.Storage.Plans;

/// <summary>Binds the earthing of a fit-out.</summary>
internal static class EarthingBinder
{
    /// <summary>The earthing; null when the fit-out says nothing of it.</summary>
    internal static EarthingFit? Bind(MappingReader fitOut)
    {
        if (fitOut.Find(FitOutKeys.Earthing) is not { } node
            || MappingReader.Open(fitOut.Binding, node, fitOut.PathOf(FitOutKeys.Earthing), EarthingKeys.Shape) is not { } reader)
        {
            return null;
        }

        EarthingFit earthing = new()
        {
            LightningClass = reader.Word(EarthingKeys.LightningClass),
            AirTermination = (AirTermination)(reader.Choice(EarthingKeys.AirTermination) + 1),
            RodHeightMetres = reader.Exact(EarthingKeys.RodHeight),
            RodDistanceMetres = reader.Exact(EarthingKeys.RodDistance),
            ConductorSquareMillimetres = reader.Exact(EarthingKeys.Conductor) * 1e6,
            ConductorMaterial = reader.Text(EarthingKeys.Material),
            BelowRoofEdgeMetres = reader.Exact(EarthingKeys.BelowRoofEdge),
            FromWallMetres = reader.Exact(EarthingKeys.FromWall),
            SoilOhmMetres = reader.Quantity(EarthingKeys.SoilResistivity),
            Soil = reader.Text(EarthingKeys.Soil),
            HasLightningProtection = reader.YesNo(EarthingKeys.HasProtection),
            SeparationMetres = reader.Exact(EarthingKeys.Separation),
            SeparationLengthMetres = reader.Exact(EarthingKeys.SeparationLength),
            DownConductors = reader.Whole(EarthingKeys.DownConductors),
            ThroughSolid = reader.YesNo(EarthingKeys.ThroughSolid),
            DataCable = (DataCableSurge)(reader.Choice(EarthingKeys.DataCable) + 1),
        };
        earthing = Rods(reader, earthing);
        reader.Done();
        return earthing;
    }

    private static EarthingFit Rods(MappingReader earthing, EarthingFit bound)
    {
        if (earthing.Find(EarthingKeys.Rods) is not { } node
            || MappingReader.Open(earthing.Binding, node, earthing.PathOf(EarthingKeys.Rods), EarthingKeys.RodShape) is not { } reader)
        {
            return bound;
        }

        bound = bound with
        {
            Rods = reader.Whole(EarthingKeys.RodCount) ?? 1,
            RodLengthMetres = reader.Exact(EarthingKeys.RodLength),
            RodDiameterMetres = reader.Exact(EarthingKeys.RodDiameter),
            RodSpacingMetres = reader.Exact(EarthingKeys.RodSpacing),
        };
        reader.Done();
        return bound;
    }
}
