using Mastwright.Geodesy;
using Mastwright.Plans;

namespace Mastwright.Storage.Plans;

/// <summary>Binds a neighbour.</summary>
internal static class NeighbourBinder
{
    /// <summary>The neighbour; null when it is no mapping or has no position.</summary>
    internal static Neighbour? Bind(PlanBinding binding, PlanNode node, string path, string key)
    {
        if (MappingReader.Open(binding, node, path, NeighbourKeys.Shape) is not { } reader)
        {
            return null;
        }

        LocatedPoint? position = reader.Position(SiteKeys.Position);
        Neighbour neighbour = new()
        {
            Key = key,
            Formerly = SiteBinder.Formerly(reader),
            Addresses = AddressBinder.Bind(reader),
            Name = reader.Text(SiteKeys.Name, key),
            Own = reader.YesNo(NeighbourKeys.Own, false),
            Position = position ?? default,
            GroundHeightMetres = reader.Quantity(SiteKeys.GroundHeight),
            Surroundings = SiteBinder.Surroundings(reader),
            Height = AntennaBinder.Height(reader, NeighbourKeys.Height),
            GainDbi = reader.Quantity(NeighbourKeys.Gain),
            PowerDbm = reader.Quantity(NeighbourKeys.Power),
            NoiseFigureDb = reader.Quantity(NeighbourKeys.NoiseFigure),
            Polarisation = AntennaBinder.Polarised(reader),
            SendsEverySeconds = reader.Exact(NeighbourKeys.SendsEvery),
        };
        reader.Done();
        return position is null ? null : neighbour;
    }
}
