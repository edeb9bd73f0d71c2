using Mastwright.Station.Hazards;

namespace Mastwright.Storage.Plans;

/// <summary>Binds the hazards of a fit-out over those of its site.</summary>
internal static class HazardBinder
{
    /// <summary>The hazards; those of which nothing is known when there is no mapping.</summary>
    /// <param name="owner">The site or fit-out.</param>
    /// <param name="key">Its key for hazards.</param>
    /// <param name="below">The site's own hazards, whose keys stand in; null for none.</param>
    internal static SiteHazards? Bind(MappingReader owner, KeyShape key, PlanNode? below = null)
    {
        if (owner.Find(key) is not { } node || MappingReader.Open(owner.Binding, node, owner.PathOf(key), HazardKeys.Shape, below) is not { } reader)
        {
            return null;
        }

        SiteHazards hazards = new()
        {
            OverheadLineMetres = reader.Quantity(HazardKeys.OverheadLine),
            LocalClearanceMetres = reader.Exact(HazardKeys.LocalClearance),
            HandlingMetres = reader.Exact(HazardKeys.Handling),
            Access = (Access)(reader.Choice(HazardKeys.Access) + 1),
            WorkingHeightMetres = reader.Exact(HazardKeys.WorkingHeight),
            FallZone = (FallZone)(reader.Choice(HazardKeys.FallZone) + 1),
        };
        hazards = Consents(reader, hazards);
        reader.Done();
        return hazards;
    }

    private static SiteHazards Consents(MappingReader hazards, SiteHazards bound)
    {
        if (hazards.Find(HazardKeys.Consents) is not { } node
            || MappingReader.Open(hazards.Binding, node, hazards.PathOf(HazardKeys.Consents), HazardKeys.ConsentShape) is not { } reader)
        {
            return bound;
        }

        bound = bound with
        {
            Owner = (Consent)(reader.Choice(HazardKeys.Owner) + 1),
            Planning = (Consent)(reader.Choice(HazardKeys.Planning) + 1),
            Airfield = (Consent)(reader.Choice(HazardKeys.Airfield) + 1),
        };
        reader.Done();
        return bound;
    }
}
