namespace Mastwright.Station;

/// <summary>What a judgement lacks, in the order in which it was asked for.</summary>
internal sealed class MissingKeys
{
    private readonly List<string> _names = [];

    /// <summary>Whether anything is missing.</summary>
    internal bool Any => _names.Count > 0;

    /// <summary>The names in a sentence: "class, rod-height".</summary>
    internal string Listed => string.Join(", ", _names);

    /// <summary>Notes a name when it is missing.</summary>
    internal void Need(bool lacks, string name)
    {
        if (lacks)
        {
            _names.Add(name);
        }
    }
}
