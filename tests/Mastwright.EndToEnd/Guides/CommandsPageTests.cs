using System.Collections.Concurrent;
using System.Text.RegularExpressions;

namespace Mastwright.Tests.EndToEnd.Guides;

/// <summary>docs/guide/commands.md names every command and every option that the program's help names.</summary>
public sealed partial class CommandsPageTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(TestPlaces.Repository, "docs", "guide", "commands.md"));

    /// <summary>The help of each command, asked for once.</summary>
    private static readonly ConcurrentDictionary<string, string> Asked = new(StringComparer.Ordinal);

    [Fact]
    public void The_page_names_every_command_and_option()
    {
        List<string> missing = [];
        int options = 0;
        Visit([], (command, help) =>
        {
            string title = string.Join(' ', command);
            string section = Section(title);
            if (command.Length > 0 && section.Length == 0)
            {
                missing.Add(title);
            }

            foreach (Match option in Options().Matches(help))
            {
                options++;
                if (!section.Contains($"`{option.Groups["name"].Value}", StringComparison.Ordinal) && option.Groups["name"].Value is not ("--help" or "--version"))
                {
                    missing.Add($"{title} {option.Groups["name"].Value}");
                }
            }
        });
        Assert.Empty(missing);
        Assert.True(options > 20);
    }

    [Fact]
    public void Help_fits_80_columns_and_uses_the_programs_name() => Visit([], (_, help) =>
    {
        Assert.DoesNotContain("Mastwright.Cli", help, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", help, StringComparison.Ordinal);
        Assert.All(help.Split('\n'), line => Assert.True(line.TrimEnd().EnumerateRunes().Count() <= 80, line));
    });

    private static void Visit(string[] command, Action<string[], string> visit)
    {
        string help = Asked.GetOrAdd(string.Join(' ', command), _ => ProgramRun.Of(AppContext.BaseDirectory, [.. command, "--help"]).EndsWith(0).Output);
        visit(command, help);
        int list = help.IndexOf("\nCommands:", StringComparison.Ordinal);
        if (list >= 0)
        {
            foreach (Match child in Commands().Matches(help[(list + 10)..]))
            {
                Visit([.. command, child.Groups["name"].Value], visit);
            }
        }
    }

    /// <summary>What the page says under the heading of a command, up to the next command.</summary>
    private static string Section(string title)
    {
        Match heading = Regex.Match(Page, $@"^##+ `{Regex.Escape(title)}`.*?$", RegexOptions.Multiline, TimeSpan.FromSeconds(5));
        if (!heading.Success)
        {
            return "";
        }

        int end = Page.IndexOf("\n## ", heading.Index + heading.Length, StringComparison.Ordinal);
        return end < 0 ? Page[heading.Index..] : Page[heading.Index..end];
    }

    [GeneratedRegex(@"^ +(-\S+, )*(?<name>--[a-z0-9-]+)", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Options();

    [GeneratedRegex(@"^  (?<name>[a-z]+)", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Commands();
}
