namespace Mastwright.Findings;

/// <summary>What a finding comes to. The default is <see cref="Unknown"/>.</summary>
public enum Verdict
{
    /// <summary>An input is missing or too vague to say; the finding says which.</summary>
    Unknown,

    /// <summary>The limit is kept with the wanted margin.</summary>
    Ok,

    /// <summary>The limit is kept, with less than the wanted margin.</summary>
    Tight,

    /// <summary>The limit is not kept.</summary>
    Fails,
}
