using Mastwright.Findings;

namespace Mastwright.Station.BoxClimate;

/// <summary>Whether water gets into a box: IP codes against the place, where cables and connectors are.</summary>
internal static class BoxWaterFindings
{
    internal static IEnumerable<Finding> Of(BoxInput input)
    {
        BoxFit box = input.Box;
        MissingKeys missing = new();
        BoxPlaceRow? place = box.Place.Length == 0 ? null : input.Catalogue.Box.Places.Find(box.Place);
        missing.Need(box.Place.Length == 0, "what the place does to it (exposure)");
        missing.Need(box.Code is null, "its IP code (ip)");
        missing.Need(box.Entries == BoxFacing.NotSaid, "where cables come in (entries)");
        missing.Need(box.Entries == BoxFacing.Side && box.DripLoops is null, "whether they hang in a loop before (drip-loops)");
        missing.Need(box.Connectors == BoxFacing.NotSaid, "which way its connectors face (connectors)");
        if (box.Place.Length > 0 && place is null)
        {
            yield return BoxReading.NotListed(input.Path, "exposure", box.Place, input.Catalogue.Box.Places);
        }

        if (place is not null)
        {
            if (box.Code is not null)
            {
                yield return Ingress(input.Path, "The box", box.Code, place);
            }

            foreach (BoxPart part in box.Parts.Where(part => part.Code is not null))
            {
                yield return Ingress(part.PlanPath, part.Name, part.Code!, place);
            }
        }

        if (box.Entries != BoxFacing.NotSaid && !(box.Entries == BoxFacing.Side && box.DripLoops is null))
        {
            yield return Entry("box-entries", input, "entries", box.Entries, box.Entries == BoxFacing.Side && box.DripLoops == true);
        }

        if (box.Connectors != BoxFacing.NotSaid)
        {
            yield return Entry("box-connectors", input, "connectors", box.Connectors, isTolerable: false);
        }

        if (missing.Any)
        {
            yield return Finding.Unknown("box-water-unknown", input.Path, "water in the box", ("missing", missing.Listed));
        }
    }

    private static Finding Ingress(string path, string name, IngressCode code, BoxPlaceRow place) => new()
    {
        Code = "box-ingress",
        Subject = path,
        Verdict = code.Covers(place.Needed) ? Verdict.Ok : Verdict.Fails,
        Quantity = "IP code",
        Source = "IEC 60529; " + place.Source,
        Details = FindingDetails.Of(("name", name), ("code", code.Text), ("meaning", place.Meaning), ("needed", place.Needed.Text)),
    };

    private static Finding Entry(string code, BoxInput input, string key, BoxFacing facing, bool isTolerable) => new()
    {
        Code = code,
        Subject = StationDefaults.Join(input.Path, key),
        Verdict = facing == BoxFacing.Down || isTolerable ? Verdict.Ok : facing == BoxFacing.Side ? Verdict.Tight : Verdict.Fails,
        Source = "common practice",
        Details = FindingDetails.Of(
            ("where", facing switch { BoxFacing.Down => "from below", BoxFacing.Side => "at its side", _ => "from above" }),
            ("way", facing switch { BoxFacing.Down => "down", BoxFacing.Side => "to the side", _ => "up" }),
            ("loops", input.Box.DripLoops switch { true => ", with a loop before", false => ", without a loop before", _ => "" })),
    };
}
