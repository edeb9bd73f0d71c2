namespace Mastwright.Storage.Plans;

/// <summary>The version of the format that a file says it is written in.</summary>
internal static class PlanVersion
{
    /// <summary>The version that this program reads.</summary>
    internal const int Current = 1;

    /// <summary>Checks the version key of a file that has one; that it has one is checked with its other keys.</summary>
    internal static void Check(MappingReader file)
    {
        if (file.Find(PlanKeys.Version) is not { } node || ScalarBinder.Text(file.Binding, node, PlanKeys.Version.Name, PlanKeys.Version.Value) is not { } text || text == "1")
        {
            return;
        }

        string message = int.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out int version) && version > Current
            ? $"The file is written in version {version} of the format, which is newer than this program."
            : "This is not a version of the format.";
        file.Binding.Add(node, PlanKeys.Version.Name, "plan-version", message, "1");
    }
}
