using Microsoft.Playwright;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>The rules of accessible pages, axe-core's.</summary>
internal static class Axe
{
    private static readonly Lazy<Task<string>> Rules = new(() => File.ReadAllTextAsync(Path.Combine(TestPlaces.Repository, "eng", "axe", "node_modules", "axe-core", "axe.min.js")));

    /// <summary>What they find serious or critical on a page as it stands.</summary>
    internal static async Task<string[]> Grave(IPage page)
    {
        await page.EvaluateAsync(await Rules.Value.ConfigureAwait(false) + "; null").ConfigureAwait(false);
        return await page.EvaluateAsync<string[]>("""
            async () => (await axe.run(document, { resultTypes: ["violations"] })).violations
                .filter(one => one.impact === "serious" || one.impact === "critical")
                .flatMap(one => one.nodes.map(node => `${one.id}: ${one.help}: ${node.html.slice(0, 160)} ${node.any.map(check => check.message).join("; ").slice(0, 160)}`))
            """).ConfigureAwait(false);
    }
}
