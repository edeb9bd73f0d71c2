namespace Mastwright.Jobs;

/// <summary>Who waits for a job: the most impatient goes first.</summary>
public enum JobPriority
{
    /// <summary>Somebody is dragging a station and looks at every frame.</summary>
    Drag,

    /// <summary>Somebody waits for an answer: the station was let go, or a command was given.</summary>
    Settle,

    /// <summary>Nobody waits: a search, an import, a list of stations.</summary>
    Search,
}
