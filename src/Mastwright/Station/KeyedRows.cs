using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Mastwright.Station;

/// <summary>Rows of one section of the catalogue, found by their key in any case; of rows with the same key the last one counts.</summary>
/// <remarks>Immutable, so safe from many threads.</remarks>
/// <typeparam name="T">Kind of row.</typeparam>
public sealed class KeyedRows<T>
    where T : class
{
    private readonly Func<T, string> _key;
    private readonly FrozenDictionary<string, T> _byKey;

    /// <summary>Makes the section from rows.</summary>
    /// <param name="rows">The rows; a later one of the same key replaces an earlier one.</param>
    /// <param name="key">The key of a row.</param>
    public KeyedRows(IEnumerable<T> rows, Func<T, string> key)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(key);
        _key = key;
        Rows = [.. rows.GroupBy(key, StringComparer.OrdinalIgnoreCase).Select(group => group.Last()).OrderBy(key, StringComparer.OrdinalIgnoreCase)];
        _byKey = Rows.ToFrozenDictionary(key, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>The rows by rising key.</summary>
    public ImmutableArray<T> Rows { get; }

    /// <summary>The row of a key, in any case; null when there is none.</summary>
    public T? Find(string key) => _byKey.GetValueOrDefault(key);

    /// <summary>These rows with another's added; a row of the same key replaces.</summary>
    public KeyedRows<T> Overlay(KeyedRows<T> other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new([.. Rows, .. other.Rows], _key);
    }

    /// <summary>The keys, rising.</summary>
    public IEnumerable<string> Keys => Rows.Select(_key);

    /// <summary>The keys in a sentence: "steel-48.3x3.2, steel-60.3x3.2".</summary>
    public string Listed() => string.Join(", ", Keys);
}
