using System.Collections.Immutable;
using System.Reflection;
using System.Text;
using Mastwright.Station;

namespace Mastwright.Storage.Catalogue;

/// <summary>Reads the catalogue of line types, feed parts and modems: the rows that ship, and a user's own.</summary>
public static class StationCatalogueFile
{
    /// <summary>The most bytes that a catalogue file may hold.</summary>
    public const int MaximumBytes = 1024 * 1024;

    private static readonly string[] Names = ["line-types", "feed-parts", "modem", "radio-rules", "exposure", "supply", "loads", "cells", "wind", "tubes", "earthing", "box"];

    private static readonly Lazy<StationCatalogue> BuiltIn = new(ReadBuiltIn);

    /// <summary>The rows that ship with the program.</summary>
    public static StationCatalogue LoadBuiltIn() => BuiltIn.Value;

    /// <summary>Reads a user's own rows and lays them over a catalogue: a row of the same key replaces.</summary>
    /// <param name="path">The file: YAML with any of line-types, feed-parts, modems.</param>
    /// <param name="below">The catalogue to add to.</param>
    /// <param name="catalogue">The catalogue with the added rows; the one below when there is a fault.</param>
    /// <param name="faults">Everything that is wrong with the file; empty when nothing is.</param>
    /// <returns>Whether the file could be used.</returns>
    public static bool TryLoad(string path, StationCatalogue below, out StationCatalogue catalogue, out ImmutableArray<CatalogueFault> faults)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(below);
        catalogue = below;
        string text;
        try
        {
            FileInfo file = new(path);
            if (file.Length > MaximumBytes)
            {
                faults = [new(path, 0, "", $"the file is larger than {MaximumBytes / 1024} KiB; a catalogue is a short list")];
                return false;
            }

            text = File.ReadAllText(path, Encoding.UTF8);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            faults = [new(path, 0, "", "the file cannot be read: " + problem.Message)];
            return false;
        }

        if (!TryParse(text, path, out StationCatalogue rows, out faults))
        {
            return false;
        }

        catalogue = below.Overlay(rows);
        return true;
    }

    /// <summary>Reads catalogue rows from text.</summary>
    /// <param name="text">The YAML text.</param>
    /// <param name="name">Name of the file, for the faults.</param>
    /// <param name="catalogue">The rows alone; empty when there is a fault.</param>
    /// <param name="faults">Everything that is wrong; empty when nothing is.</param>
    public static bool TryParse(string text, string name, out StationCatalogue catalogue, out ImmutableArray<CatalogueFault> faults)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(name);
        CatalogueReader reader = new(name);
        StationCatalogue read = reader.Read(text);
        faults = [.. reader.Faults];
        catalogue = faults.IsEmpty ? read : StationCatalogue.Empty;
        return faults.IsEmpty;
    }

    private static StationCatalogue ReadBuiltIn()
    {
        StationCatalogue all = StationCatalogue.Empty;
        foreach (string name in Names)
        {
            string resource = $"catalogue/{name}.yaml";
            using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)
                ?? throw new InvalidOperationException($"The program was built without its resource '{resource}'.");
            using StreamReader reader = new(stream, Encoding.UTF8);
            if (!TryParse(reader.ReadToEnd(), resource, out StationCatalogue rows, out ImmutableArray<CatalogueFault> faults))
            {
                throw new InvalidOperationException(string.Join('\n', faults));
            }

            all = all.Overlay(rows);
        }

        return all;
    }
}
