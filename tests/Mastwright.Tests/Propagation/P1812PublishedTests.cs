using System.Globalization;
using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

/// <summary>The published validation set of ITU-R P.1812, every profile and every intermediate.</summary>
public sealed class P1812PublishedTests
{
    /// <summary>Every printed number has ten figures: half a unit in the last place is below 1e-9 of the value.</summary>
    /// <remarks>dB for losses and field strength; relative for the rest.</remarks>
    private const double Tolerance = 1e-6;

    public static TheoryData<string> Cases
    {
        get
        {
            TheoryData<string> cases = [];
            string folder = ReferenceFolder();
            if (Directory.Exists(folder))
            {
                cases.AddRange(Directory.EnumerateFiles(folder, "*.csv").Select(file => Path.GetFileNameWithoutExtension(file)!).Order(StringComparer.Ordinal));
            }

            // Without the folder one case remains, and says why it is skipped.
            if (cases.Count == 0)
            {
                cases.Add("b2iseac_0");
            }

            return cases;
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void Every_printed_number_is_met(string name)
    {
        PublishedPath path = PublishedPath.Read(name);
        P1812Result result = P1812.Evaluate(path.Profile, path.Input);
        Dictionary<string, double> found = result.Named().ToDictionary(entry => entry.Name, entry => entry.Value, StringComparer.Ordinal);
        List<string> missed = [];
        int compared = 0;
        foreach ((string label, string equation, double printed) in path.Printed)
        {
            string key = (label, equation) switch
            {
                ("hst", "Eq (85)") => "hst_n",
                ("hsr", "Eq (86)") => "hsr_n",
                ("htc", "Table 5") => "hts",
                ("hrc", "Table 5") => "hrs",
                _ => label,
            };
            if (key == "Ep of the transmitter")
            {
                continue;
            }

            double value = found[key];
            double allowed = key[0] is 'L' or 'E' || printed == 0 ? Tolerance : Tolerance * Math.Abs(printed);
            compared++;
            if (!(Math.Abs(value - printed) <= allowed))
            {
                missed.Add(string.Create(CultureInfo.InvariantCulture, $"{key}: {value:R} instead of {printed:R}"));
            }
        }

        Assert.Empty(missed);
        Assert.Equal(50, compared);
    }

    [Theory, MemberData(nameof(Cases))]
    public void The_loss_alone_is_the_loss_of_the_full_result(string name)
    {
        PublishedPath path = PublishedPath.Read(name);
        Assert.Equal(P1812.Evaluate(path.Profile, path.Input).LbDb, P1812.LossDb(path.Profile, path.Input));
    }

    private static string ReferenceFolder()
    {
        string root = Environment.GetEnvironmentVariable("MASTWRIGHT_REFERENCE") is { Length: > 0 } given
            ? given
            : Path.Combine(TestPlaces.Repository, "..", "shared", "reference");
        return Path.Combine(root, "itu-p1812", "results");
    }
}
