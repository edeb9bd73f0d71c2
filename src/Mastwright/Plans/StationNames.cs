namespace Mastwright.Plans;

/// <summary>Which station of a plan an address in the records stands for.</summary>
public sealed class StationNames
{
    private readonly Dictionary<string, List<(StationAddress Address, string Key)>> byAddress = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> names = new(StringComparer.Ordinal);

    /// <summary>The addresses of a plan.</summary>
    public StationNames(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        foreach (Site site in plan.Sites)
        {
            Add(site.Key, site.Name, [.. site.Formerly], [.. site.Addresses]);
        }

        foreach (Neighbour neighbour in plan.Neighbours)
        {
            Add(neighbour.Key, neighbour.Name, [.. neighbour.Formerly], [.. neighbour.Addresses]);
        }
    }

    /// <summary>The key of the station that had an address at a moment; null where the plan knows none.</summary>
    public string? KeyOf(string address, long timeMicroseconds)
    {
        ArgumentNullException.ThrowIfNull(address);
        foreach ((StationAddress one, string key) in byAddress.GetValueOrDefault(address) ?? [])
        {
            if (one.Holds(timeMicroseconds))
            {
                return key;
            }
        }

        return null;
    }

    /// <summary>Whether an address stands for the same station, or for none, at all times.</summary>
    public bool IsAlways(string address)
    {
        ArgumentNullException.ThrowIfNull(address);
        return !byAddress.TryGetValue(address, out List<(StationAddress Address, string Key)>? known) || known is [{ Address: { FromMicroseconds: null, ToMicroseconds: null } }];
    }

    /// <summary>The addresses that a station ever had.</summary>
    public IReadOnlyList<string> AddressesOf(string key) => [.. byAddress.Where(pair => pair.Value.Exists(one => one.Key == key)).Select(pair => pair.Key)];

    /// <summary>The name of a station by its key; what is no key of the plan stays as it is.</summary>
    public string NameOf(string key) => names.GetValueOrDefault(key, key);

    private void Add(string key, string name, string[] formerly, StationAddress[] addresses)
    {
        names[key] = name;
        foreach (StationAddress address in addresses.Concat(formerly.Prepend(key).Select(one => new StationAddress(one, null, null))))
        {
            if (!byAddress.TryGetValue(address.Address, out List<(StationAddress, string)>? known))
            {
                byAddress.Add(address.Address, known = []);
            }

            known.Add((address, key));
        }
    }
}
