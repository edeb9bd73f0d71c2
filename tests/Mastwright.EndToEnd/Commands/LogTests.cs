using System.Text.Json;
using Mastwright.Tests.EndToEnd.Shapes;

namespace Mastwright.Tests.EndToEnd.Commands;

public sealed class LogTests
{
    [Fact]
    public void Entries_are_written_and_shown_in_order_of_time_with_what_settings_changed()
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder);
        folder.Write("settings.txt", "power: 14\nhops: 3\n");
        Add(folder, "west", "more power", "--kind", "settings", "--at", "2026-07-02T12:00+02:00", "--attach", folder.Write("new/settings.txt", "power: 20\nhops: 3\n"));
        Add(folder, "west", "as delivered", "--kind", "settings", "--at", "2026-07-01T12:00Z", "--attach", "settings.txt");

        string text = ProgramRun.Of(folder.Path, "log", "show", "plan.yaml", "--store", "s.sqlite", "--files", "out").EndsWith(0).Output;
        Assert.Contains("         - power: 14\n         + power: 20\n", text, StringComparison.Ordinal);
        Assert.Equal("power: 14\nhops: 3\n", File.ReadAllText(folder.File("out/2-1-settings.txt")));

        string json = ProgramRun.Of(folder.Path, "log", "show", "plan.yaml", "west", "--store", "s.sqlite", "--json").EndsWith(0).Output;
        JsonShapesTests.HasShape(json, "log-1");
        using JsonDocument document = JsonDocument.Parse(json);
        Assert.Equal(["2026-07-01T12:00:00Z", "2026-07-02T10:00:00Z"], document.RootElement.GetProperty("entries").EnumerateArray().Select(entry => entry.GetProperty("time").GetString()));
        Assert.Equal("Two hills", document.RootElement.GetProperty("network").GetString());
    }

    [Fact]
    public void Bad_input_is_refused_with_its_place()
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder);
        Refused(folder, ["add", "plan.yaml", "east", "x", "--kind", "fault"], "'east' is no site", "west");
        Refused(folder, ["add", "plan.yaml", "west", "x", "--kind", "fit-out"], "west/pole");
        Refused(folder, ["add", "plan.yaml", "west", "x", "--kind", "fault", "--at", "2026-07-01T12:00"], "--at", "zone");
        Refused(folder, ["show", "plan.yaml"], "s.sqlite", "no such store");
        Assert.False(File.Exists(folder.File("s.sqlite")));
    }

    private static void Add(TemporaryFolder folder, params string[] arguments) =>
        ProgramRun.Of(folder.Path, ["log", "add", "plan.yaml", .. arguments, "--store", "s.sqlite"]).EndsWith(0);

    private static void Refused(TemporaryFolder folder, string[] arguments, params string[] parts) =>
        ProgramRun.Of(folder.Path, ["log", .. arguments, "--store", "s.sqlite"]).IsRefusedWith(parts);
}
