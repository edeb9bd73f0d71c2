using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Tests.Plans;

/// <summary>A site that is added with the fit-out of another: what stood there stays, what is copied is the same words.</summary>
public class SiteCopyTests
{
    private const string Before = """
        # A plan with remarks.
        mastwright: 1
        sites:
          pier:
            name: Pier
            position: 46.4, -18.6
            fit-outs:
                shed:            # on the shed
                    antenna: {gain: 2 dBi, height: 4 m}   # low
                    # the cable
                    feed: [{connectors: 1}, {line: rg-58, length: 14 m}]
                    radio: {power: 14 dBm}   # as sold

                mast: {antenna: {gain: 5 dBi, height: 9 m}, radio: {power: 14 dBm}}
          # A remark behind the last site.
          hut: {name: Hut, position: "46.5, -18.6", fit-outs: {wall: {antenna: {gain: 2 dBi, height: 4 m}}}}

        # The end.
        """;

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    public void The_lines_of_the_fit_out_come_along_with_their_remarks(string newLine)
    {
        string before = Before.ReplaceLineEndings(newLine);
        string after = Insert(before, "pier", "shed", "trial").Text!.Text;
        string added = """
              trial:
                name: "Trial: one"
                position: 46.41000, -18.61000
                in-use: shed
                fit-outs:
                  shed:            # on the shed
                      antenna: {gain: 2 dBi, height: 4 m}   # low
                      # the cable
                      feed: [{connectors: 1}, {line: rg-58, length: 14 m}]
                      radio: {power: 14 dBm}   # as sold

            """.ReplaceLineEndings(newLine);
        int at = before.IndexOf("        # The end.".Trim(), StringComparison.Ordinal) - newLine.Length;
        Assert.Equal(before.Insert(at, added), after);
    }

    [Fact]
    public void A_fit_out_in_braces_is_copied_whole()
    {
        PlanText after = Insert(Before, "pier", "mast", "trial").Text!;
        Assert.Equal("9 m", after.Value("sites/trial/fit-outs/mast/antenna/height"));
        Assert.Equal("14 dBm", after.Value("sites/trial/fit-outs/mast/radio/power"));
        Assert.Equal("9 m", after.Value("sites/pier/fit-outs/mast/antenna/height"));
    }

    [Theory]
    [InlineData("pier", "roof", "trial", "no such fit-out")]
    [InlineData("pier", "shed", "hut", "cannot have this key")]
    [InlineData("pier", "shed", "Not A Key", "cannot have this key")]
    [InlineData("hut", "wall", "trial", "not written with one below the other")]
    public void What_cannot_be_copied_is_refused(string like, string fitOut, string key, string message)
    {
        PlanTextResult refused = Insert(Before, like, fitOut, key);
        Assert.Null(refused.Text);
        Assert.Contains(message, refused.Problem!.Message, StringComparison.Ordinal);
    }

    private static PlanTextResult Insert(string text, string like, string fitOut, string key) =>
        SiteCopy.Insert(PlanText.FromText("plan.yaml", text).Text!, like, fitOut, key, "Trial: one", "46.41000, -18.61000");
}
