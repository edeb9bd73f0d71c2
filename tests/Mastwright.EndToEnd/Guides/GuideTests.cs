using System.Collections.Immutable;
using System.Runtime.Versioning;
using System.Text.RegularExpressions;
using Mastwright.Records.Import;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Plans;

namespace Mastwright.Tests.EndToEnd.Guides;

/// <summary>What the pages tell the reader to type works, and what they show is what comes out.</summary>
[SupportedOSPlatform("linux")]
public sealed partial class GuideTests(SkerrinRun skerrin)
{
    private static readonly string Docs = Path.Combine(TestPlaces.Repository, "docs");

    [Fact]
    public void Every_command_of_the_first_link_page_does_what_the_page_says() => Follow("first-link.md");

    /// <summary>Left to the full run: it starts the program some thirty times.</summary>
    [Fact, Trait("needs", "system")]
    public void Every_command_of_the_commands_page_does_what_the_page_says() => Follow("commands.md");

    /// <summary>Every plan, parts, catalogue and mapping file that a page shows in YAML reads without a problem; so does a piece of a plan, or of a fit-out when it is set in.</summary>
    [Fact]
    public void Every_plan_in_the_pages_reads_without_a_problem()
    {
        int plans = 0;
        foreach (string page in Directory.EnumerateFiles(Docs, "*.md", SearchOption.AllDirectories).Append(Path.Combine(TestPlaces.Repository, "README.md")))
        {
            string parts = "";
            foreach (MarkdownBlock block in MarkdownBlock.Of(page).Where(one => string.Equals(one.Language, "yaml", StringComparison.Ordinal)))
            {
                string text = block.Text;
                plans++;
                if (text.StartsWith("format:", StringComparison.Ordinal))
                {
                    Assert.True(StationCatalogueFile.TryParse(text, page, out _, out ImmutableArray<CatalogueFault> faults), $"{page}:{block.Line}: {string.Join('\n', faults)}");
                    continue;
                }

                if (text.StartsWith("records:", StringComparison.Ordinal))
                {
                    // Throws, with the place, when it is no mapping.
                    RecordMapping.Parse(text, $"{page}:{block.Line}");
                    continue;
                }

                using TemporaryFolder folder = new();
                if (text.Contains("\nparts:", StringComparison.Ordinal))
                {
                    parts = text;
                    text = Around("antenna: {gain: 2 dBi, height: 5 m}");
                }
                else if (text.Split('\n', StringSplitOptions.RemoveEmptyEntries).All(line => line.StartsWith('#')))
                {
                    text += SmallPlan.Text;
                }
                else if (!text.StartsWith("mastwright:", StringComparison.Ordinal) && !text.StartsWith(' '))
                {
                    text = Around("antenna: {gain: 2 dBi, height: 5 m}") + text;
                }
                else if (text.StartsWith(' '))
                {
                    text = Around(text.Trim());
                }

                folder.Write("parts.yaml", parts.Length > 0 ? parts : "mastwright: 1\nparts: {}\n");
                PlanReading reading = PlanFile.Read(folder.Write("plan.yaml", text), new());
                Assert.True(reading.Problems.IsEmpty, $"{page}:{block.Line}: {string.Join('\n', reading.Problems)}");
            }
        }

        Assert.True(plans >= 3, $"{plans} plans in the pages");
    }

    [Fact]
    public void The_two_commands_of_the_readme_are_there()
    {
        MarkdownBlock block = MarkdownBlock.Of(Path.Combine(TestPlaces.Repository, "README.md"))[0];
        Assert.Equal("./mastwright demo\n./test\n", block.Text);
        Assert.All((string[])["mastwright", "test"], name => Assert.True(File.GetUnixFileMode(Path.Combine(TestPlaces.Repository, name)).HasFlag(UnixFileMode.UserExecute)));
        Assert.Contains("Links: ", skerrin.Demo.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_link_between_pages_leads_somewhere()
    {
        List<string> broken = [];
        foreach (string page in Directory.EnumerateFiles(Docs, "*.md", SearchOption.AllDirectories)
            .Concat(Directory.EnumerateFiles(TestPlaces.Repository, "*.md")))
        {
            foreach (string target in Links().Matches(File.ReadAllText(page)).Select(match => match.Groups["target"].Value))
            {
                if (!Path.Exists(Path.Combine(Path.GetDirectoryName(page)!, target)))
                {
                    broken.Add($"{Path.GetRelativePath(TestPlaces.Repository, page)}: {target}");
                }
            }
        }

        Assert.Empty(broken);
    }

    /// <summary>Types what the page says, from an empty folder.</summary>
    private void Follow(string page)
    {
        using TemporaryFolder folder = new();
        BorrowGround(folder);
        folder.Write("mastwright", $"#!/bin/sh\nexec {ProgramRun.ShellCommand} \"$@\"\n");
        File.SetUnixFileMode(folder.File("mastwright"), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        int commands = 0;
        string output = "";
        foreach (MarkdownBlock block in MarkdownBlock.Of(Path.Combine(Docs, "guide", page)))
        {
            if (block.Remark.StartsWith("file ", StringComparison.Ordinal))
            {
                folder.Write(block.Remark[5..], block.Text);
            }
            else if (string.Equals(block.Language, "sh", StringComparison.Ordinal) && !block.Remark.StartsWith("not run", StringComparison.Ordinal))
            {
                output = "";
                foreach ((string command, int code) in block.Commands())
                {
                    commands++;
                    ProgramRun run = ProgramRun.Start("sh", folder.Path, null, "-c", command);
                    Assert.True(code == run.ExitCode, $"{page}:{block.Line}: {command}\nexit code {run.ExitCode} instead of {code}\n{run.Error}\n{run.Output}");
                    output += run.Output + run.Error;
                }
            }
            else if (string.Equals(block.Remark, "shown", StringComparison.Ordinal))
            {
                ShownIn(output, block, page);
            }
        }

        Assert.True(commands > 5, $"{page} has {commands} commands");
    }

    /// <summary>Puts the demo's ground where the demo would make it: it is made once for all tests.</summary>
    private void BorrowGround(TemporaryFolder folder)
    {
        foreach (string file in Directory.EnumerateFiles(Path.Combine(skerrin.Folder, "ground"), "*", SearchOption.AllDirectories))
        {
            string target = folder.File(Path.Combine("skerrin-demo", Path.GetRelativePath(skerrin.Folder, file)));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }

    /// <summary>Every line of the block stands in the output, in that order; "…" stands for lines left out.</summary>
    private static void ShownIn(string output, MarkdownBlock block, string page)
    {
        string[] written = [.. output.Split('\n').Select(Plain)];
        int at = 0;
        foreach (string line in block.Text.Split('\n').Select(Plain).Where(line => line.Length > 0 && line != "…"))
        {
            at = Array.IndexOf(written, line, at);
            Assert.True(at >= 0, $"{page}:{block.Line}: '{line}' is not in the output, or not in that order:\n{output}");
        }
    }

    [GeneratedRegex(@"\]\((?<target>[^)#:\s]+)(#[^)]*)?\)", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Links();

    /// <summary>A line without the spaces that only set it out.</summary>
    private static string Plain(string line) => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));

    private static string Around(string fitOut) => $"""
        mastwright: 1
        name: Around
        include: parts.yaml
        modem: {"{"}frequency: 868 MHz, bandwidth: 125 kHz, spreading-factor: 10, payload: 40 B{"}"}
        sites:
          ferry-house:
            position: 46.40, -18.70
            fit-outs:
              pole:
                {fitOut}

        """;
}
