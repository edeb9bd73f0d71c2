using System.Reflection;
using System.Text.RegularExpressions;

namespace Mastwright.Tests;

/// <summary>The arrows of the house: which project and which folder may know which.</summary>
public sealed partial class ArchitectureTests
{
    /// <summary>For each folder of the engineering, the folders it may use (itself always).</summary>
    private static readonly Dictionary<string, string[]> MayUse = new(StringComparer.Ordinal)
    {
        ["Quantities"] = [],
        ["Jobs"] = [],
        ["Findings"] = ["Quantities"],
        ["Geodesy"] = ["Quantities", "Findings"],
        ["Ground"] = ["Quantities", "Findings", "Geodesy"],
        ["Propagation"] = ["Quantities", "Findings", "Geodesy", "Ground"],
        ["Station"] = ["Quantities", "Findings"],
        ["Evidence"] = ["Quantities", "Findings"],
        ["Agreement"] = ["Quantities", "Findings", "Network", "Evidence"],
        ["Network"] = ["Quantities", "Findings", "Geodesy", "Ground", "Propagation", "Station", "Jobs"],
        ["Plans"] = ["Quantities", "Findings", "Geodesy", "Ground", "Propagation", "Station", "Network", "Evidence", "Agreement", "Jobs"],
    };

    [Fact]
    public void Folders_of_the_engineering_depend_in_one_direction()
    {
        string root = Path.Combine(TestPlaces.Repository, "src", "Mastwright");
        List<string> broken = [];
        foreach (string file in Directory.EnumerateFiles(root, "*.cs", SearchOption.AllDirectories))
        {
            string relative = Path.GetRelativePath(root, file);
            string folder = relative.Split(Path.DirectorySeparatorChar)[0];
            if (folder is "obj" or "bin")
            {
                continue;
            }

            Assert.True(MayUse.ContainsKey(folder), $"{relative}: the folder '{folder}' is not in the list of rooms.");
            foreach (Match use in RoomName().Matches(File.ReadAllText(file)))
            {
                string other = use.Groups["room"].Value;
                if (MayUse.ContainsKey(other) && other != folder && !MayUse[folder].Contains(other, StringComparer.Ordinal))
                {
                    broken.Add($"{relative} uses {other}");
                }
            }
        }

        Assert.Empty(broken);
    }

    [Fact]
    public void The_engineering_refers_only_to_the_runtime()
    {
        string[] foreign = [.. Assembly.Load("Mastwright").GetReferencedAssemblies()
            .Select(reference => reference.Name!)
            .Where(name => !name.StartsWith("System.", StringComparison.Ordinal) && name is not ("netstandard" or "mscorlib"))];
        Assert.Empty(foreign);
    }

    [Fact]
    public void The_engineering_opens_no_file_and_asks_no_clock()
    {
        string root = Path.Combine(TestPlaces.Repository, "src", "Mastwright");
        string[] guilty = [.. Directory.EnumerateFiles(root, "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Where(file => Outside().IsMatch(File.ReadAllText(file)))];
        Assert.Empty(guilty);
    }

    [Fact]
    public void Every_struct_of_the_engineering_is_readonly()
    {
        string[] mutable = [.. Assembly.Load("Mastwright").GetExportedTypes()
            .Where(type => type is { IsValueType: true, IsEnum: false })
            .Where(type => !type.CustomAttributes.Any(attribute => attribute.AttributeType.Name == "IsReadOnlyAttribute"))
            .Select(type => type.FullName!)];
        Assert.Empty(mutable);
    }

    [Fact]
    public void Projects_depend_in_one_direction()
    {
        Assert.Empty(ProjectReferences("Mastwright"));
        Assert.Equal(["Mastwright"], ProjectReferences("Mastwright.Storage"));
        Assert.Equal(["Mastwright"], ProjectReferences("Mastwright.Records"));
        Assert.Equal(["Mastwright"], ProjectReferences("Mastwright.Pictures"));
        Assert.Equal(["Mastwright", "Mastwright.Pictures", "Mastwright.Records", "Mastwright.Storage"], ProjectReferences("Mastwright.Reports"));
        Assert.Equal(["Mastwright", "Mastwright.Pictures", "Mastwright.Records", "Mastwright.Reports", "Mastwright.Storage"], ProjectReferences("Mastwright.Workbench"));
        Assert.Equal(["Mastwright", "Mastwright.Pictures", "Mastwright.Records", "Mastwright.Reports", "Mastwright.Storage", "Mastwright.Workbench"], ProjectReferences("Mastwright.Cli"));
    }

    private static string[] ProjectReferences(string project)
    {
        string text = File.ReadAllText(Path.Combine(TestPlaces.Repository, "src", project, project + ".csproj"));
        return [.. ProjectReference().Matches(text).Select(match => match.Groups["project"].Value).Order(StringComparer.Ordinal)];
    }

    [GeneratedRegex(@"\bMastwright\.(?<room>[A-Z][A-Za-z]+)", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex RoomName();

    [GeneratedRegex(@"\b(File|Directory|FileStream|Socket|HttpClient|Console)\.|\bDateTime(Offset)?\.(Utc)?Now\b|\bnew Random\(\)|\bTask\.Run\b", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Outside();

    [GeneratedRegex(@"<ProjectReference Include=""[^""]*/(?<project>[A-Za-z.]+)\.csproj""", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex ProjectReference();
}
