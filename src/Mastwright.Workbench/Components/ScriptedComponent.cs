using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Mastwright.Workbench.Components;

/// <summary>A component with a script of its own in the browser. Whoever leaves the page while the script comes in, or closes it, is no fault.</summary>
public abstract class ScriptedComponent : ComponentBase, IAsyncDisposable
{
    private bool isGone;
    private IJSObjectReference? module;
    private IDisposable? listener;

    [Inject]
    internal IJSRuntime Browser { get; set; } = null!;

    /// <summary>What the script gave to speak to it by; null before it is there.</summary>
    protected IJSObjectReference? Script { get; private set; }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        isGone = true;
        await Quietly(Leave).ConfigureAwait(false);
        listener?.Dispose();
        GC.SuppressFinalize(this);
    }

    /// <inheritdoc/>
    protected sealed override Task OnAfterRenderAsync(bool firstRender) => isGone ? Task.CompletedTask : Quietly(() => ShowAsync(firstRender));

    /// <summary>Starts the script after the first drawing, and tells it of later ones.</summary>
    protected abstract Task ShowAsync(bool isFirst);

    /// <summary>Brings a module in and calls a function of it; what that gives has a <c>dispose</c>.</summary>
    protected async Task Start(string moduleName, string function, params object?[] arguments)
    {
        module = await Browser.InvokeAsync<IJSObjectReference>("import", $"./workbench/client/{moduleName}.js").ConfigureAwait(true);
        Script = await module.InvokeAsync<IJSObjectReference>(function, arguments).ConfigureAwait(true);
        if (isGone)
        {
            // Whoever left meanwhile found nothing to let go of.
            await Leave().ConfigureAwait(true);
        }
    }

    /// <summary>The component as the script calls it.</summary>
    protected DotNetObjectReference<T> Listener<T>(T self)
        where T : class
    {
        DotNetObjectReference<T> made = DotNetObjectReference.Create(self);
        listener = made;
        return made;
    }

    private async Task Leave()
    {
        if (Script is not null)
        {
            await Script.InvokeVoidAsync("dispose").ConfigureAwait(true);
            await Script.DisposeAsync().ConfigureAwait(true);
        }

        if (module is not null)
        {
            await module.DisposeAsync().ConfigureAwait(true);
        }
    }

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
