using System.Text.RegularExpressions;
using Mastwright.Findings;

namespace Mastwright.Tests.Findings;

/// <summary>The table of sentences against the source: no code without a sentence, no sentence without a code.</summary>
public sealed partial class FindingSentenceTableTests
{
    /// <summary>Source files in which findings are made, by name.</summary>
    private static Dictionary<string, string> Sources { get; } = Directory
        .EnumerateFiles(Path.Combine(TestPlaces.Repository, "src"), "*.cs", SearchOption.AllDirectories)
        .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
        .Where(file => Path.GetFileName(file) != "FindingSentenceTable.cs")
        .ToDictionary(file => file, File.ReadAllText, StringComparer.Ordinal)
        .Where(file => FindingType().IsMatch(file.Value))
        .ToDictionary(StringComparer.Ordinal);

    [Fact]
    public void Every_finding_that_the_source_makes_has_its_sentences()
    {
        string[] made = [.. Made().Distinct().Order(StringComparer.Ordinal)];

        // The scan sees the three ways in which codes are written, or it would prove nothing.
        Assert.Contains("antenna-under-ground", made);
        Assert.Contains("line-type-unknown", made);
        Assert.Contains("link-range", made);
        Assert.Contains("ground-void", made);
        Assert.Empty(made.Except(FindingSentences.Codes, StringComparer.Ordinal));
    }

    [Fact]
    public void No_sentence_stands_for_a_finding_that_nothing_makes() =>
        Assert.Empty(FindingSentences.Codes.Except(Made(), StringComparer.Ordinal));

    [Fact]
    public void Each_code_stands_once_and_in_the_form_of_codes()
    {
        Assert.Equal(FindingSentenceTable.Entries.Length, FindingSentenceTable.Entries.Select(entry => entry.Code).Distinct(StringComparer.Ordinal).Count());
        Assert.All(FindingSentenceTable.Entries, entry => Assert.Matches("^[a-z]+(-[a-z]+)*$", entry.Code));
        Assert.All(FindingSentenceTable.Entries, entry => Assert.NotEmpty(entry.Text));
    }

    /// <summary>Codes set in a finding, given to a method that makes one, or chosen into a variable named code.</summary>
    private static IEnumerable<string> Made()
    {
        HashSet<string> makers = [.. Sources.Values.SelectMany(text => Maker().Matches(text)).Select(match => match.Groups["name"].Value)];
        foreach (string text in Sources.Values)
        {
            IEnumerable<Match> calls = Call().Matches(text).Where(call => makers.Contains(call.Groups["name"].Value));
            IEnumerable<Match> written = GivenCode().Matches(text).SelectMany(given => Word().Matches(given.Value));
            foreach (Match match in calls.Concat(written))
            {
                yield return match.Groups["code"].Value;
            }
        }
    }

    [GeneratedRegex(@"\bFinding\b|\bFindings\.Add\b", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex FindingType();

    /// <summary>A method that takes a code first and gives a finding, or adds one.</summary>
    [GeneratedRegex(@"(\bFinding\??\s+(?<name>\w+)\(string code\b)|(\bvoid\s+(?<name>\w+)\(string code\b[^;]*?\bFindings?\b)", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Maker();

    [GeneratedRegex(@"\b(?<name>\w+)\(\s*""(?<code>[a-z]+(-[a-z]+)+)""", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Call();

    [GeneratedRegex(@"\b(Code|string code) = [^;,]+[;,]", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex GivenCode();

    [GeneratedRegex(@"""(?<code>[a-z]+(-[a-z]+)+)""", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Word();
}
