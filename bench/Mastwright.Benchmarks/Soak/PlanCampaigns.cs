using System.Collections.Immutable;
using System.Text;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Plans;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Demo;
using Mastwright.Storage.Plans;
using Mastwright.Storage.Tests.Plans;

namespace Mastwright.Benchmarks.Soak;

/// <summary>Plans: read, changed and assessed, however broken or absurd.</summary>
internal static class PlanCampaigns
{
    private static readonly string[] Punctuation =
    [
        "a", "name", ": ", ":", "- ", "? ", "\n", "\n  ", "\n    ", "[", "]", "{", "}", ",", "'", "\"", "&a ", "*a", "!t ", "!<", "|", ">", "|2-\n", ">+\n", "#", "%YAML 1.2\n",
        "%TAG ! !\n", "---\n", "...\n", "\t", "~", "<<", "5 m", "\r", "\u2028", "\u0085", "\\x", "\\U0011FFFF", "\ufeff", "é", "😀", "\0",
    ];

    /// <summary>Values, right and wrong. None holds a brace or "NaN", by which a broken sentence is told.</summary>
    private static readonly string[] Words =
    [
        "", "~", "nan", "nan dB", "-1", "0", "1e999 m", "1e308 dB", "-1e308 dBm", "0 m", "1e-300 m", "5", "5 kg", "5 m", "-5 dB", "0 ± 0 m", "5 ± 1e30 km", "9…1 dBi", "99.9 %", "100 %", "0 %", "1e9 Hz", "3 Hz",
        "6 GHz", "[1, 2]", "(a: b)", "yes", "no", "EU", "46.4, -18.7", "90, 0", "-90, 180 ± 5 km", "JN58td", "IN06", "33UUP1234567890", "32N 400000 5000000", "../../etc/passwd", "/dev/zero", "plan.yaml",
        "parts.yaml", "12", "7", "4/5", "4/9", "500 kHz", "255 B", "100000 B", "rg-58", "horizontal", "circular", "yagi", "collinear-array", "roof", "sea-level", "10°", "361°", "-90°", "999 ppm", "40 °C", "-300 °C",
        "18 dB at radio", "1 at antenna", "1.0001 at radio", "30000 km", "1 mm", "0.8 wavelengths", "surface", "bare-earth",
    ];

    private static readonly string[] Ways = ["5 m", "-3 dB", "6 ± 2 m", "😀", "null", "~", "true", "<<", "- x", "? y", "a: b", "a #b", "0…6 dBi", " x ", "---", "...", "%x", "[a]", "{a}", "'", "\"", "\\", "a,b", "@", "`", "&a", "*a", "!t", "|", ">", ":", "#", "a:", "-"];

    internal static IEnumerable<Campaign> All(string scratch)
    {
        string folder = Path.Combine(scratch, "plan");
        Directory.CreateDirectory(folder);
        string demo = Encoding.UTF8.GetString(SkerrinDemo.Shipped("plan.yaml").AsSpan());
        string parts = Encoding.UTF8.GetString(SkerrinDemo.Shipped("parts.yaml").AsSpan());
        File.WriteAllText(Path.Combine(folder, "parts.yaml"), parts);
        string[] sound = [demo, SamplePlans.Whole, StarterPlan.Text("Skerrin"), demo.ReplaceLineEndings("\r\n")];
        yield return new("plan-reader", random => Reader(random, sound, folder));
        yield return new("plan-text", random => Text(random, sound));
        yield return new("plan-assessed", random => Assessed(random, sound, folder));
    }

    private static SoakCase Reader(Random random, string[] sound, string folder)
    {
        string text = sound[random.Next(sound.Length)];
        byte[] bytes = random.Next(6) switch
        {
            0 => Damage.Noise(random, [], 400),
            1 => Encoding.UTF8.GetBytes(string.Concat(Enumerable.Range(0, random.Next(60)).Select(_ => Punctuation[random.Next(Punctuation.Length)]))),
            2 => Encoding.UTF8.GetBytes(Damage.Lines(random, text, Punctuation)),
            3 => Encoding.UTF8.GetBytes(Damage.Lines(random, text, Words)),
            4 => Damage.Bytes(random, Encoding.UTF8.GetBytes(Damage.Lines(random, text, Words))),
            _ => Damage.Bytes(random, Encoding.UTF8.GetBytes(text)),
        };
        return new("plan.yaml", bytes, () => Read(bytes, folder));
    }

    /// <summary>The plan of some bytes; null when they are refused, which is said in one line a problem.</summary>
    private static PlanDocument? Read(byte[] bytes, string folder)
    {
        PlanSource? source = PlanSource.FromBytes("plan.yaml", Path.Combine(folder, "plan.yaml"), bytes, out PlanProblem? refused);
        if (source is null)
        {
            SoakFailureException.Require(refused is { Message.Length: > 0 }, "refused without a reason");
            return null;
        }

        PlanReading reading = PlanFile.Bind(source, new());
        SoakFailureException.Require(reading.Document is null != reading.Problems.IsEmpty, "neither a plan nor a problem, or both");
        foreach (PlanProblem problem in reading.Problems)
        {
            SoakFailureException.Require(problem.Message.Length > 0 && !problem.ToString().Contains('\n', StringComparison.Ordinal), $"not one line: {problem}");
        }

        return reading.Document;
    }

    /// <summary>One value is changed, and no byte but its own.</summary>
    private static SoakCase Text(Random random, string[] sound)
    {
        string text = sound[random.Next(sound.Length)];
        if (random.Next(2) == 0)
        {
            // Remarks, empty lines and a mark before the first key must all stay.
            text = "# 😀 ± first\n" + text.Replace("name:", random.Next(2) == 0 ? "name  :" : "\"name\":", StringComparison.Ordinal);
        }

        string value = random.Next(3) switch
        {
            0 => Ways[random.Next(Ways.Length)],
            1 => Ways[random.Next(Ways.Length)] + Ways[random.Next(Ways.Length)],
            _ => string.Concat(Enumerable.Range(0, random.Next(1, 20)).Select(_ => (char)random.Next(' ', '~' + 1))),
        };
        int pick = random.Next(100_000);
        return SoakCase.OfText("plan.yaml", text, () => CheckText(text, pick, value));
    }

    private static void CheckText(string text, int pick, string value)
    {
        PlanText before = PlanText.FromText("plan.yaml", text).Text ?? throw new SoakFailureException("a sound plan does not read");
        (string Path, PlanNode Node)[] all = [.. Scalars(before.Root, "")];
        (string path, PlanNode node) = all[pick % all.Length];
        PlanTextResult result = before.With(path, value);
        if (result.Text is not { } after)
        {
            bool isOrdinary = value.Length > 0 && value.AsSpan().IndexOfAnyExceptInRange(' ', '~') < 0;
            SoakFailureException.Require(!isOrdinary, $"{path}: '{value}' is refused: {result.Problem}");
            return;
        }

        ReadOnlySpan<char> tail = before.Text.AsSpan(node.End);
        bool isKept = after.Text.AsSpan().StartsWith(before.Text.AsSpan(0, node.Start), StringComparison.Ordinal) && after.Text.AsSpan().EndsWith(tail, StringComparison.Ordinal);
        SoakFailureException.Require(isKept && after.Text.Length >= node.Start + tail.Length, $"{path}: '{value}' changes more than its value");
        SoakFailureException.Require(after.Value(path) == value, $"{path}: '{value}' reads back as '{after.Value(path)}'");
    }

    private static IEnumerable<(string Path, PlanNode Node)> Scalars(PlanNode node, string path)
    {
        string lead = path.Length == 0 ? "" : path + "/";
        return node.Kind switch
        {
            PlanNodeKind.Scalar => [(path, node)],
            PlanNodeKind.Mapping => node.Entries.SelectMany(entry => Scalars(entry.Value, lead + entry.Key)),
            _ => node.Items.SelectMany((item, i) => Scalars(item, $"{lead}{i + 1}")),
        };
    }

    /// <summary>A plan that reads, with awkward values in it, is assessed to the end: every number a number, every sentence whole.</summary>
    private static SoakCase Assessed(Random random, string[] sound, string folder)
    {
        byte[] bytes = [];
        PlanDocument? document = null;
        for (int tries = 0; tries < 40 && document is null; tries++)
        {
            string text = sound[random.Next(sound.Length)];
            if (PlanText.FromText("plan.yaml", text).Text is { } plan)
            {
                for (int i = random.Next(1, 5); i > 0; i--)
                {
                    (string Path, PlanNode Node)[] all = [.. Scalars(plan.Root, "")];
                    plan = plan.With(all[random.Next(all.Length)].Path, Words[random.Next(Words.Length)]).Text ?? plan;
                }

                bytes = Encoding.UTF8.GetBytes(plan.Text);
                document = Read(bytes, folder);
            }
        }

        int relief = random.Next(3) * 200;
        return new("plan.yaml", bytes, () =>
        {
            if (document is not null)
            {
                Assess(document.Plan, relief);
            }
        });
    }

    private static void Assess(Plan plan, int reliefMetres)
    {
        GroundMosaic ground = Ground(reliefMetres);
        PlanReport report = new Assessment(plan, StationCatalogueFile.LoadBuiltIn(), (_, _) => ground).Run(ImmutableDictionary<string, string>.Empty);
        foreach (Finding finding in report.AllFindings)
        {
            string sentences = FindingSentences.Text(finding) + FindingSentences.Advice(finding);
            SoakFailureException.Require(!sentences.Contains('{', StringComparison.Ordinal) && !sentences.Contains("NaN", StringComparison.Ordinal), $"{finding.Code}: {sentences}");
        }

        foreach (LinkDirection direction in report.Links.SelectMany(link => (LinkDirection[])[link.Out, link.Back]))
        {
            bool isNumber = direction.MarginDb is not { } margin || (double.IsFinite(margin.Low) && double.IsFinite(margin.Median) && double.IsFinite(margin.High));
            SoakFailureException.Require(isNumber, $"the margin is no number: {direction}");
            double off = direction.Budget is { } budget ? budget.Total - budget.Lines.Sum(line => line.Value) : 0;
            SoakFailureException.Require(Math.Abs(off) <= 1e-9 * Math.Max(1, Math.Abs(direction.Budget?.Total ?? 1)), $"the ledger is off by {off}: {direction}");
        }
    }

    /// <summary>Coarse ground of the demo's square: flat or hilly.</summary>
    private static GroundMosaic Ground(int reliefMetres)
    {
        const int side = 121;
        GridFrame frame = GridFrame.Geographic(-19, 47, 1.0 / (side - 1), 1.0 / (side - 1), side, side, samplesAreAreas: false);
        float[] heights = new float[side * side];
        for (int i = 0; i < heights.Length; i++)
        {
            heights[i] = (float)(reliefMetres * (0.5 + (0.5 * Math.Sin(i * 0.37) * Math.Cos(i / side * 0.29))));
        }

        return GroundMosaic.Of([GroundWindow.FromHeights(frame, heights, "soak", "soak", HeightKind.BareEarth, "EGM96")]);
    }
}
