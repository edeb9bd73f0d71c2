namespace Mastwright.Propagation;

/// <summary>What stands around an antenna, for the terminal clutter of ITU-R P.2108.</summary>
public enum TerminalSurroundings
{
    /// <summary>Water or sea.</summary>
    Water,

    /// <summary>Open or rural.</summary>
    Open,

    /// <summary>Suburban.</summary>
    Suburban,

    /// <summary>Urban.</summary>
    Urban,

    /// <summary>Trees or forest.</summary>
    Woodland,

    /// <summary>Dense urban.</summary>
    DenseUrban,
}

/// <summary>One of the two ends of a path.</summary>
public enum PathEnd
{
    /// <summary>The first point.</summary>
    Transmitter,

    /// <summary>The last point.</summary>
    Receiver,
}
