using System.Collections.Immutable;
using Mastwright.Plans;
using Mastwright.Workbench.Desk;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Routing;

namespace Mastwright.Workbench.Components;

/// <summary>What every page has: the plan as it was read, and a state that is its address. It follows both.</summary>
public abstract class BenchPage : ComponentBase, IDisposable
{
    private bool isLeft;

    [Inject]
    internal PlanDesk Desk { get; set; } = null!;

    [Inject]
    internal NavigationManager Navigation { get; set; } = null!;

    /// <summary>The reading that the page shows, with the trial in it where one is made.</summary>
    protected PlanView View { get; private set; } = null!;

    /// <summary>What is shown; what the plan does not have is left out of it.</summary>
    protected BenchState State { get; private set; } = new();

    /// <summary>A verdict on everything of the plan; null when it cannot be used.</summary>
    protected PlanReport? Report { get; private set; }

    /// <summary>Name of the plan, or of its file when it cannot be read.</summary>
    protected string PlanName => View.Session?.Plan.Name ?? Desk.FileName;

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(isDisposing: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Lets go of what the page holds.</summary>
    protected virtual void Dispose(bool isDisposing)
    {
        isLeft = true;
        Desk.Changed -= ReadAgain;
        Navigation.LocationChanged -= Went;
    }

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        Desk.Changed += ReadAgain;
        Navigation.LocationChanged += Went;
        Take();
    }

    /// <summary>Told after plan and address were taken anew. Without a usable plan there is no session, and no report.</summary>
    protected virtual void Taken()
    {
    }

    /// <summary>Goes to another state, which is a step back in the browser's history.</summary>
    protected void Go(BenchState wanted) => Go(wanted, replace: false);

    /// <summary>Goes to another state.</summary>
    /// <remarks>A page that was left goes nowhere: what it had begun may end when the reader is on another one.</remarks>
    protected void Go(BenchState wanted, bool replace)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        if (!isLeft)
        {
            Navigation.NavigateTo(wanted.Address(), new NavigationOptions { ReplaceHistoryEntry = replace });
        }
    }

    private void Went(object? sender, LocationChangedEventArgs place)
    {
        // The way to another page is told to the one that is left, too.
        if (BenchState.Parse(new(Navigation.Uri)).Page == State.Page)
        {
            Take();
            _ = InvokeAsync(StateHasChanged);
        }
    }

    private void ReadAgain(object? sender, EventArgs nothing) => _ = InvokeAsync(() =>
    {
        Take();
        StateHasChanged();
    });

    /// <summary>Takes the plan and the address as they are now, and leaves out of the state what the plan does not have.</summary>
    private void Take()
    {
        View = Desk.Current;
        State = BenchState.Parse(new(Navigation.Uri));
        Report = null;
        if (View.Session is { } session)
        {
            Take(session.Plan);
        }

        Taken();
    }

    private void Take(Plan plan)
    {
        if (State.Trial is { } text)
        {
            if (Trial.Parse(text, plan, out _) is { } tried)
            {
                View = View.Trying(tried);
                plan = View.Session!.Plan;
            }
            else
            {
                State = State with { Trial = null };
            }
        }

        State = State with
        {
            Site = Known(plan, State.Site),
            To = State.To == State.Site ? null : Known(plan, State.To),
            FitOuts = State.FitOuts.Where(one => plan.Sites.Any(site => site.Key == one.Key && site.InUse != one.Value && site.FitOuts.Any(fitOut => fitOut.Key == one.Value)))
                .ToImmutableSortedDictionary(StringComparer.Ordinal),
        };
        Report = View.Report(State.FitOuts);
    }

    private static string? Known(Plan plan, string? key) => plan.Sites.Any(site => site.Key == key) || plan.Neighbours.Any(neighbour => neighbour.Key == key) ? key : null;
}
