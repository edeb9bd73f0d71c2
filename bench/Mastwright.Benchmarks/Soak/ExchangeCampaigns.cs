using System.Text;
using Mastwright.Propagation;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Plans;
using Mastwright.Storage.Plans.Exchange;
using Mastwright.Storage.Profiles;

namespace Mastwright.Benchmarks.Soak;

/// <summary>Files of others: places, profiles, parts lists.</summary>
internal static class ExchangeCampaigns
{
    private const string Profile = "distance_km,height_m,cover_m,zone\n0,12,0,coast\n0.1,13.5,0,coast\n0.2,0,0,sea\n0.35,40,15,inland\n# a remark\n0.5,38,0,inland\n";

    private const string Catalogue = """
        demodulation-loss: 1.0
        lines:
          own-10:
            name: own cable
            table: {100 MHz: 4.5, 900 MHz: 14.2}
        """;

    private static readonly string[] Words = ["", "NaN", "1e999", "-1", "0", "9".PadLeft(400, '9'), "sea", "\"", ",", "<a>", "&amp;", "null", "[]", "{}", "é", "1,5", "180", "-91", "\0"];

    internal static IEnumerable<Campaign> All()
    {
        PlanText plan = PlanText.FromText("plan.yaml", StarterPlan.Text("Skerrin")).Text!;
        string text = plan.Text;
        string path = Path.Combine(Path.GetTempPath(), "mastwright-soak-plan.yaml");
        File.WriteAllText(path, text);
        Mastwright.Plans.Plan stations = PlanFile.Read(path).Document?.Plan ?? throw new InvalidOperationException("The starter plan does not read.");
        File.Delete(path);
        foreach (PlaceFormat format in Enum.GetValues<PlaceFormat>())
        {
            string sound = SitesExport.Write(stations, format);
            yield return new("places-" + format.ToString().ToLowerInvariant(), random => Places(random, sound, format, text));
        }

        yield return new("profile-csv", random => OfProfile(random));
        yield return new("catalogue", random => OfCatalogue(random));
    }

    private static SoakCase Places(Random random, string sound, PlaceFormat format, string planText)
    {
        byte[] bytes = Some(random, sound);
        return new("places", bytes, () =>
        {
            PlaceReading reading = PlaceFile.Read("places", bytes, format);
            if (reading.Problems.IsEmpty)
            {
                SitesImportResult result = SitesImport.Insert(PlanText.FromText("plan.yaml", planText).Text!, reading.Places);
                SoakFailureException.Require(result.Text is not null, $"places that read cannot be added: {result.Problem}");
            }
        });
    }

    private static SoakCase OfProfile(Random random)
    {
        string text = Encoding.UTF8.GetString(Some(random, Profile));
        return SoakCase.OfText("profile.csv", text, () =>
        {
            bool isRead = ProfileCsv.TryParse(text, "profile.csv", out PathProfile? profile, out IReadOnlyList<string> problems);
            SoakFailureException.Require(isRead == profile is not null && isRead == (problems.Count == 0), "neither a profile nor a problem, or both");
        });
    }

    private static SoakCase OfCatalogue(Random random)
    {
        string text = Encoding.UTF8.GetString(Some(random, Catalogue));
        return SoakCase.OfText("catalogue.yaml", text, () =>
        {
            bool isRead = StationCatalogueFile.TryParse(text, "catalogue.yaml", out _, out System.Collections.Immutable.ImmutableArray<CatalogueFault> faults);
            SoakFailureException.Require(isRead == faults.IsEmpty, "neither a catalogue nor a fault, or both");
        });
    }

    private static byte[] Some(Random random, string sound) => random.Next(4) switch
    {
        0 => Damage.Noise(random, [], 300),
        1 => Encoding.UTF8.GetBytes(Damage.Lines(random, sound, Words)),
        2 => Damage.Bytes(random, Encoding.UTF8.GetBytes(Damage.Lines(random, sound, Words))),
        _ => Damage.Bytes(random, Encoding.UTF8.GetBytes(sound)),
    };
}
