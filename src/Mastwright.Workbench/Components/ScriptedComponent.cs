using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Mastwright.Workbench.Components;

/// <summary>A component with a script of its own in the browser. Whoever leaves the page while the script comes in, or closes it, is no fault.</summary>
public abstract class ScriptedComponent : ComponentBase, IAsyncDisposable
{
    private bool isGone;

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        isGone = true;
        await Quietly(LeaveAsync).ConfigureAwait(false);
        GC.SuppressFinalize(this);
    }

    /// <inheritdoc/>
    protected sealed override Task OnAfterRenderAsync(bool firstRender) => isGone ? Task.CompletedTask : Quietly(() => ShowAsync(firstRender));

    /// <summary>Starts the script after the first drawing, and tells it of later ones.</summary>
    protected abstract Task ShowAsync(bool isFirst);

    /// <summary>Lets go of the script.</summary>
    protected abstract Task LeaveAsync();

    private async Task Quietly(Func<Task> work)
    {
        try
        {
            await work().ConfigureAwait(true);
        }
        catch (Exception fault) when (fault is JSDisconnectedException or TaskCanceledException || (isGone && fault is JSException or ObjectDisposedException))
        {
            // The page is gone, and the script with it.
        }
    }
}
