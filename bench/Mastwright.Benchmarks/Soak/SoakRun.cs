using System.Text.Json.Nodes;

namespace Mastwright.Benchmarks.Soak;

/// <summary>Runs the campaigns, each for its share of the time, and writes what came of them.</summary>
internal static class SoakRun
{
    /// <summary>Runs to the end, whatever is found.</summary>
    /// <returns>Whether nothing failed.</returns>
    internal static bool Run(SoakSettings settings)
    {
        Directory.CreateDirectory(settings.Scratch);
        Campaign[] campaigns =
        [
            .. PlanCampaigns.All(settings.Scratch),
            .. GroundCampaigns.All(settings.Scratch),
            .. ExchangeCampaigns.All(),
            .. PathCampaigns.All(),
            .. PlaceCampaigns.All(),
            .. JobCampaigns.All(settings.Scratch),
            .. RecordCampaigns.All(settings.Scratch),
            .. ProofCampaigns.All(),
        ];
        Campaign[] wanted = [.. campaigns.Where(campaign => settings.Campaign is null || campaign.Name == settings.Campaign)];
        if (wanted.Length == 0)
        {
            Console.Error.WriteLine($"There is no campaign '{settings.Campaign}'; there are {string.Join(", ", campaigns.Select(campaign => campaign.Name))}.");
            return false;
        }

        List<CampaignRun> runs = [];
        foreach (Campaign campaign in wanted)
        {
            CampaignRun run = new(campaign, settings);
            run.Run(settings.Minutes * 60 / wanted.Length);
            runs.Add(run);
        }

        bool isOk = runs.TrueForAll(run => run.Failure is null);
        if (settings.Results is not null)
        {
            string one = settings.Campaign is null ? "" : $"{settings.Campaign}-";
            ResultFile.Write(Path.Combine(settings.Results, $"soak-{one}{Machine.Date()}.json"), new()
            {
                ["version"] = 1,
                ["date"] = Machine.Date(),
                ["machine"] = Machine.ToJson(settings.Commit),
                ["ok"] = isOk,
                ["cases"] = runs.Sum(run => (long)run.Cases),
                ["seconds"] = Math.Round(runs.Sum(run => run.Seconds)),
                ["campaigns"] = new JsonArray([.. runs.Select(run => (JsonNode)run.ToJson())]),
            });
        }

        return isOk;
    }
}
