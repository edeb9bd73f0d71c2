using Microsoft.JSInterop;

namespace Mastwright.Workbench.Components;

/// <summary>Changes of the plan that go through the browser, and so through the HTTP API.</summary>
internal static class PlanScript
{
    /// <summary>Whether the change stands in the plan. Where the page is closed meanwhile nobody is left to be told: then true.</summary>
    internal static async Task<bool> Plan(this IJSRuntime script, string function, params object?[] arguments)
    {
        try
        {
            IJSObjectReference module = await script.InvokeAsync<IJSObjectReference>("import", "./workbench/client/undo.js").ConfigureAwait(true);
            await using (module.ConfigureAwait(true))
            {
                return await module.InvokeAsync<bool>(function, arguments).ConfigureAwait(true);
            }
        }
        catch (Exception fault) when (fault is JSDisconnectedException or TaskCanceledException)
        {
            return true;
        }
    }
}
