namespace Mastwright.Records.Import;

/// <summary>One string for each address, however many rows name it; a source with more addresses than fit makes new ones.</summary>
internal sealed class AddressBook
{
    private const int Most = 65_536;

    private readonly Dictionary<string, string> known = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string>.AlternateLookup<ReadOnlySpan<char>> bySpan;

    internal AddressBook() => bySpan = known.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The address as a string; null where the text is empty.</summary>
    internal string? Of(ReadOnlySpan<char> text)
    {
        if (text.IsEmpty)
        {
            return null;
        }

        if (bySpan.TryGetValue(text, out string? same))
        {
            return same;
        }

        string address = text.ToString();
        if (known.Count < Most)
        {
            known.Add(address, address);
        }

        return address;
    }
}
