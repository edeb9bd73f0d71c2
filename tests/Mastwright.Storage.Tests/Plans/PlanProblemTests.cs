using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Tests.Plans;

public class PlanProblemTests
{
    /// <summary>What is broken in the whole plan, the code it gives, and words of the message that help.</summary>
    public static TheoryData<string, string, string, string> Breakages => new()
    {
        { "name: Net loft", "nmae: Net loft", "plan-unknown-key", "Did you mean 'name'?" },
        { "in-use: net-loft", "in_use: net-loft", "plan-unknown-key", "Did you mean 'in-use'?" },
        { "    formerly: old-ferry", "    gain: 3 dBi", "plan-unknown-key", "It is a key of: " },
        { "in-use: net-loft", "in-use: net-lott", "plan-unknown-name", "Did you mean 'net-loft'?" },
        { "part: collinear-8", "part: collinear-9", "plan-unknown-name", "Did you mean 'collinear-8'?" },
        { "part: loft-run", "part: loft-rum", "plan-unknown-name", "Did you mean 'loft-run'?" },
        { "ferry-house ~ creamery", "ferry-house ~ creamry", "plan-unknown-name", "Did you mean 'creamery'?" },
        { "ferry-house ~ creamery", "creamery ~ creamery", "plan-value", "two different stations" },
        { "ferry-house ~ creamery", "east-quay ~ creamery", "plan-duplicate-link", "listed already" },
        { "ferry-house ~ creamery", "ferry-house - creamery", "plan-value", "not a pair" },
        { "mastwright: 1 ", "mastwright: 2 ", "plan-version", "newer" },
        { "mastwright: 1 ", "mastwright: one ", "plan-version", "not a version" },
        { "name: Skerrin\n", "", "plan-missing-key", "needs the key 'name'" },
        { "region: EU", "region:", "plan-missing-value", "no value" },
        { "length: 2 m", "length: 2", "plan-value", "" },
        { "length: 2 m", "length: 2 dB", "plan-value", "" },
        { "length: 2 m", "length: -2 m", "plan-range", "outside" },
        { "length: 2 m", "length: 1e300 m", "plan-value", "out of range" },
        { "length: 2 m\n            temperature", "temperature", "plan-missing-key", "needs the key 'length'" },
        { "connectors: 2", "connectors: 2.5", "plan-value", "whole number" },
        { "connectors: 2", "conectors: 2", "plan-value", "Did you mean 'connectors'?" },
        { "- adapters: 1", "- adapters: 1\n            filter: 1 dB", "plan-value", "several things at once" },
        { "receive-gain: 15 dB, noise-figure: 1 dB, transmit-gain: 10 dB, ", "", "plan-missing-key", "neither way" },
        { "above: roof, roof: 6 m", "above: roof", "plan-missing-key", "'roof' is needed" },
        { "above: roof, roof: 6 m", "roof: 6 m", "plan-contradiction", "only with above: roof" },
        { "          datum: EGM96\n          polar", "          polar", "plan-missing-key", "'datum' is needed" },
        { "pattern: yagi", "pattern: table", "plan-missing-key", "'pattern-file' is needed" },
        { "pattern: yagi", "pattern: yagy", "plan-value", "Did you mean 'yagi'?" },
        { "return-loss: 18 dB at radio", "return-loss: 18 dB", "plan-value", "with its place" },
        { "return-loss: 18 dB at radio", "return-loss: 18 dB at radio\n        vswr: 1.3 at radio", "plan-contradiction", "same thing" },
        { "vswr: 1.5 at antenna", "vswr: 0.5 at antenna", "plan-value", "standing-wave" },
        { "length: 24 ± 1 m", "length: -24 m", "plan-range", "outside" },
        { "length: 24 ± 1 m", "length: 1 ± 2 m", "plan-range", "outside" },
        { "voltage: 53 V", "voltage: 200 V", "plan-range", "outside" },
        { "mains-adapter: 5 V", "mains-adapter: 230 V", "plan-range", "outside" },
        { "mains-adapter: 5 V, ", "mains-adaptor: 5 V, ", "plan-value", "Did you mean 'mains-adapter'?" },
        { "pairs: 2", "pairs: 3", "plan-value", "there and back" },
        { "rating: 12 W", "rating: 12 V", "plan-value", "a voltage; a power is wanted" },
        { "efficiency: 82 %", "efficiency: 820 %", "plan-range", "outside" },
        { "series: 1", "series: 0", "plan-value", "whole number" },
        { "capacity: 3350 mAh", "capacity: 0 mAh", "plan-range", "outside" },
        { "sleep-share: 10 %", "sleep-share: 90 %", "plan-contradiction", "more than 100 %" },
        { "[{mains-adapter: 5 V, power: 10 W}, {part: node-load}]", "[{part: node-load}]", "plan-contradiction", "begins with" },
        { "[{mains-adapter: 5 V, power: 10 W}, {part: node-load}]", "[{mains-adapter: 5 V}]", "plan-contradiction", "ends without a load" },
        { "[{injector: 24 V}, {board: , idle: 1 W, busy: 2 W}]", "[{injector: 24 V}, {board: , idle: 1 W, busy: 2 W}, {fuse: 1 A}]", "plan-contradiction", "behind a load" },
        { "node: [{part: node-load}]", "node: []", "plan-value", "A branch is a list" },
        { "node: [{part: node-load}]", "node: [{mains-adapter: 5 V}, {part: node-load}]", "plan-value", "does not say what it is" },
        { "node: [{part: node-load}]", "node: [{part: node-laod}]", "plan-unknown-name", "Did you mean 'node-load'?" },
        { "7: -7.5 dB", "4: -7.5 dB", "plan-key", "spreading factor" },
        { "spreading-factor: 10", "spreading-factor: 4", "plan-value", "whole number" },
        { "spreading-factor: 10\n", "bit-rate: 4.8 kbit/s\n", "plan-missing-key", "needs the key 'spreading-factor'" },
        { "coding-rate: 4/6", "coding-rate: 4/9", "plan-value", "coding rate" },
        { "payload: 40 B", "payload: 40.5 B", "plan-value", "whole bytes" },
        { "frequency: 869.525 MHz", "frequency: 869.525 ± 1 MHz", "plan-value", "no use here" },
        { "own-worst-hour: 12", "own-worst-hour: 3", "plan-range", "busiest hour has fewer packets" },
        { "least-delay: 0.2 s", "least-delay: 4 s", "plan-range", "least wait is longer than the most" },
        { "share: 80 %", "share: 120 %", "plan-range", "outside" },
        { "relayed: 20, relayed-worst-hour: 80", "relayed: -20", "plan-value", "not a number" },
        { "highest: 869.625 MHz", "highest: 869.425 MHz", "plan-range", "not above the lowest" },
        { "highest: 869.625 MHz", "highest: 869.5 MHz", "plan-contradiction", "outside the carriers" },
        { "channels: 8", "channels: 1", "plan-value", "whole number" },
        { "lowest: 869.425 MHz, ", "", "plan-missing-key", "needs the key 'lowest'" },
        { "six-decibel-bandwidth: 100 kHz", "six-decibel-bandwidth: 120 kHz", "plan-contradiction", "wider than the one that holds 99 %" },
        { "public: 6 m", "public: -6 m", "plan-range", "outside" },
        { "low-k: 0.8", "low-k: NaN", "plan-value", "not a number" },
        { "low-k: 0.8", "low-k: 1e9", "plan-value", "not a number" },
        { "time: 10 %", "time: 60 %", "plan-range", "outside" },
        { "  creamery:\n", "  Creamery:\n", "plan-key", "form" },
        { "formerly: old-ferry", "formerly: creamery", "plan-identity", "belongs to sites/creamery too" },
        { "  east-quay: {", "  creamery: {", "plan-identity", "belongs to sites/creamery too" },
        { "\"46.3871, -18.4410 ± 50 m\"", "46.3871, -18.4410 ± 50 m", "plan-unknown-key", "needs quotes" },
        { "position: 46.4012, -18.7421 ± 5 m", "position: 96.4, -18.7", "plan-value", "" },
        { "ground/*.hgt", "../ground/*.hgt", "plan-outside", "outside" },
        { "ground/*.hgt", "/ground/*.hgt", "plan-outside", "outside" },
        { "ground/*.hgt", "C:/ground/*.hgt", "plan-outside", "outside" },
        { "ground/*.hgt", "a/../../ground/*.hgt", "plan-outside", "outside" },
        { "ground/*.hgt", "ground\\\\*.hgt", "plan-outside", "Write '/'" },
        { "region: EU", "region: EU\nregion: EU", "plan-duplicate-key", "twice" },
        { "region: EU", "region: &eu EU", "plan-yaml-feature", "anchor" },
        { "region: EU", "region: *eu", "plan-yaml-feature", "alias" },
        { "region: EU", "region: !!str EU", "plan-yaml-feature", "tag" },
        { "region: EU", "region: |\n  EU", "plan-yaml-feature", "Block text" },
        { "region: EU", "<<: {region: EU}", "plan-yaml-feature", "merge key" },
        { "region: EU", "? [a]\n: b", "plan-syntax", "A key is one word" },
        { "region: EU", "region: EU\n---\nname: x", "plan-yaml-feature", "second document" },
        { "region: EU", "region: [EU", "plan-syntax", "not well-formed" },
        { "region: EU", "region: {a: b}", "plan-value", "one value belongs" },
        { "sites:\n", "sites: []\nsitez:\n", "plan-value", "Named entries" },
        { "links:\n  - ferry-house ~ creamery\n  - creamery ~ east-quay", "links: ferry-house ~ creamery", "plan-value", "A list belongs here" },
        { "    small-node: {name: Node", "    small-node: {gain: 1 dBi, name: Node", "plan-unknown-key", "no key of 'radio'" },
    };

    [Theory, MemberData(nameof(Breakages))]
    public void A_broken_plan_says_what_is_wrong_and_where(string sound, string broken, string code, string words)
    {
        string text = SamplePlans.Whole.Replace("\r", "", StringComparison.Ordinal);
        Assert.Contains(sound, text, StringComparison.Ordinal);
        int at = text.IndexOf(sound, StringComparison.Ordinal);
        using PlanFolderFixture folder = new();

        PlanReading reading = folder.Read(text.Remove(at, sound.Length).Insert(at, broken));

        Assert.Null(reading.Document);
        PlanProblem problem = Assert.Single(reading.Problems, problem => problem.Code == code && problem.Message.Contains(words, StringComparison.Ordinal));
        Assert.True(problem.Line > 0 && problem.Column > 0, problem.ToString());
        Assert.Equal(folder.Plan, problem.File);
    }

    [Fact]
    public void What_yaml_offers_and_a_plan_refuses_is_told_in_one_go_with_all_else()
    {
        const string Text = """
            mastwright: 1
            name: &n Skerrin
            region: *n
            region: EU
            modem: {frequency: 869.525 MHz, bandwidth: !!str 125 kHz, spreading-factor: 10, payload: 40 m}
            sites:
              a:
                position: *n
                <<: *n
                gain: 3 dBi
              b: *n
            neighbours:
              c: {position: "46.4, -18.7", height: 5 dB}
              c: {position: "46.5, -18.7", height: 6 m}
              d:
                name: |
                  Long
                position: 46.6, -18.7
                height: 5
            links:
              - a ~ c
              - a ~ b

            """;
        using PlanFolderFixture folder = new();

        Assert.Equal(
            [
                (2, "plan-yaml-feature"), (3, "plan-yaml-feature"), (4, "plan-duplicate-key"), (5, "plan-yaml-feature"), (5, "plan-value"), (8, "plan-yaml-feature"),
                (9, "plan-yaml-feature"), (10, "plan-unknown-key"), (11, "plan-yaml-feature"), (13, "plan-value"), (14, "plan-duplicate-key"), (16, "plan-yaml-feature"),
                (19, "plan-value"),
            ],
            folder.Read(Text).Problems.Select(problem => (problem.Line, problem.Code)));
    }

    /// <summary>What each key allows by itself, but no modem can be given: it must not reach the calculation.</summary>
    [Theory]
    [InlineData("bandwidth: 3 MHz, spreading-factor: 10", "bandwidth")]
    [InlineData("bandwidth: 125 kHz, spreading-factor: 10, preamble: 5", "preamble")]
    [InlineData("bandwidth: 125 kHz, spreading-factor: 10, preamble: 65536", "preamble")]
    [InlineData("bandwidth: 125 kHz, modulation: frequency-shift-keying, bit-rate: 50 kbit/s, preamble: 7", "preamble")]
    [InlineData("bandwidth: 125 kHz, modulation: frequency-shift-keying, bit-rate: 126 kbit/s", "bit-rate")]
    [InlineData("bandwidth: 125 kHz, modulation: frequency-shift-keying, bit-rate: 126 kbit/s, preamble: 6", "bit-rate preamble")]
    public void A_modem_setting_that_no_modem_can_be_given_is_refused_at_its_key(string setting, string keys)
    {
        using PlanFolderFixture folder = new();
        string line = $"modem: {{frequency: 869.525 MHz, payload: 40 B, {setting}}}";

        PlanReading reading = folder.Read("mastwright: 1\nname: Skerrin\n" + line + "\n");

        Assert.Equal(keys.Split(' ').Select(key => "modem/" + key), reading.Problems.Select(problem => problem.Path));
        Assert.All(reading.Problems, problem =>
        {
            string key = problem.Path["modem/".Length..] + ": ";
            Assert.Equal((folder.Plan, 3, line.IndexOf(key, StringComparison.Ordinal) + key.Length + 1), (problem.File, problem.Line, problem.Column));
        });
    }

    /// <summary>Whatever modem setting reads, the calculation takes.</summary>
    [Fact]
    public void A_modem_setting_that_reads_can_be_calculated_with()
    {
        using PlanFolderFixture folder = new();
        int read = 0;
        Gen.Select(Gen.OneOf("30 MHz", "869.525 MHz", "6 GHz"), Gen.OneOf("999 Hz", "1 kHz", "125 kHz", "2 MHz", "2.1 MHz"), Gen.Bool, Gen.Int[4, 13], Gen.OneOf(1, 5, 6, 7, 8, 65535, 65536, 524_280, 524_281), Gen.OneOf("0.5 bit/s", "1 bit/s", "125 kbit/s", "2 Mbit/s", "2.1 Mbit/s"), Gen.OneOf(0, 255, 256))
            .Sample(
                (frequency, bandwidth, chirp, factor, preamble, rate, payload) =>
                {
                    string kind = chirp ? $"spreading-factor: {factor}" : $"modulation: frequency-shift-keying, bit-rate: {rate}";
                    PlanReading reading = folder.Read($"mastwright: 1\nname: Skerrin\nmodem: {{frequency: {frequency}, bandwidth: {bandwidth}, {kind}, preamble: {preamble}, payload: {payload} B}}\n");
                    if (reading.Document is { } document)
                    {
                        read++;
                        Assert.True(Mastwright.Station.Radio.Airtime.Compute(document.Plan.Modem).TotalSeconds > 0);
                    }
                },
                iter: 500,
                threads: 1);
        Assert.True(read > 5, $"{read} of 500 plans read");
    }

    [Theory]
    [InlineData("%TAG !x! tag:example,2000:\n---\n", "plan-yaml-feature")]
    [InlineData("%YAML 3.0\n---\n", "plan-syntax")]
    [InlineData("\t", "plan-syntax")]
    [InlineData("- ", "plan-syntax")]
    public void A_beginning_that_no_plan_has_is_refused(string beginning, string code)
    {
        using PlanFolderFixture folder = new();

        Assert.Equal(code, Assert.Single(folder.Read(beginning + SamplePlans.Smallest).Problems).Code);
    }

    [Theory]
    [InlineData("%YAML 1.2\n---\n")]
    [InlineData("# a remark\n\n---\n")]
    public void A_plan_may_begin_as_yaml_documents_do(string beginning)
    {
        using PlanFolderFixture folder = new();

        PlanFileTests.Good(folder.Read(beginning + SamplePlans.Smallest));
    }

    [Fact]
    public void All_problems_are_told_in_one_go_and_in_order()
    {
        using PlanFolderFixture folder = new();
        PlanReading reading = folder.Read("""
            mastwright: 1
            nam: Skerrin
            modem: {frequency: 869, bandwidth: 125 kHz, spreading-factor: 13, payload: 40 B}
            sites:
              ferry-house:
                in-use: x
            """);

        Assert.Equal(
            ["1:1 plan-missing-key", "2:1 plan-unknown-key", "3:20 plan-value", "3:63 plan-value", "6:5 plan-missing-key", "6:13 plan-unknown-name"],
            reading.Problems.Select(problem => $"{problem.Line}:{problem.Column} {problem.Code}"));
        Assert.Equal("sites/ferry-house/in-use", reading.Problems[^1].Path);
        Assert.Equal("x", reading.Problems[^1].Found);
    }

    [Theory]
    [InlineData("NaN m")]
    [InlineData("Infinity m")]
    [InlineData("1e999 m")]
    [InlineData("5 ± NaN m")]
    [InlineData("5 ± -1 m")]
    [InlineData("9…3 m")]
    [InlineData("0x10 m")]
    [InlineData("1_000 m")]
    public void A_number_that_is_none_is_refused(string length)
    {
        using PlanFolderFixture folder = new();

        PlanProblem problem = Assert.Single(folder.Read(SamplePlans.Whole.Replace("length: 2 m", $"length: {length}", StringComparison.Ordinal)).Problems);
        Assert.Equal(length, problem.Found);
    }

    [Fact]
    public void A_problem_reads_as_one_line()
    {
        PlanProblem problem = new() { Code = "plan-value", File = "plan.yaml", Line = 3, Column = 7, Path = "sites/a/position", Found = "x", Wanted = "a position", Message = "This is no place." };

        Assert.Equal("plan.yaml:3:7: sites/a/position: This is no place. Found 'x'; wanted a position.", problem.ToString());
        Assert.Equal("plan.yaml:3:7: sites/a/position: 'x' is no place. Wanted a position.", (problem with { Message = "'x' is no place." }).ToString());
        Assert.Equal("plan.yaml: This is a folder.", new PlanProblem { Code = "plan-file", File = "plan.yaml", Message = "This is a folder." }.ToString());
    }

    [Fact]
    public void A_hundred_problems_are_told_and_the_rest_counted()
    {
        using PlanFolderFixture folder = new();
        PlanReading reading = folder.Read(SamplePlans.Smallest + string.Concat(Enumerable.Range(0, 250).Select(i => $"key-{i}: 1\n")));

        Assert.Equal(101, reading.Problems.Length);
        Assert.Contains("150 more", reading.Problems[^1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_stations_at_one_place_are_noted()
    {
        using PlanFolderFixture folder = new();
        PlanDocument document = PlanFileTests.Good(folder.Read(SamplePlans.Smallest + """
            sites:
              a: {position: "46.4, -180"}
              b: {position: "46.400005, 179.999999"}
              c: {position: "46.40002, 179.999999"}
            """));

        PlanProblem note = Assert.Single(document.Notes);
        Assert.Equal(("sites-at-one-place", "sites/b/position", 6), (note.Code, note.Path, note.Line));
    }

    [Fact]
    public void Stations_within_a_metre_are_found_as_by_trying_every_pair()
    {
        // Some metres around a place on the antimeridian, and around the pole, where longitudes crowd.
        Gen<(double North, double East)> near = Gen.Select(Gen.Double[-6, 6], Gen.Double[-6, 6]);
        using PlanFolderFixture folder = new();
        Gen.Select(Gen.OneOf(0.0, 60.0, 89.9999), near.Array[1, 12]).Sample(
            (latitude, places) =>
            {
                double metresPerDegree = 6_371_000 * Math.PI / 180;
                GeoPoint[] points = [.. places.Select(place => new GeoPoint(
                    Math.Round(Math.Min(90, latitude + (place.North / metresPerDegree)), 8),
                    Math.Round(180 + (place.East / (metresPerDegree * Math.Cos(double.DegreesToRadians(latitude)))), 8)))];
                string text = SamplePlans.Smallest + "sites:\n" + string.Concat(points.Select((point, i) => string.Create(CultureInfo.InvariantCulture, $"  s{i}: {{position: \"{point.LatitudeDegrees:0.########}, {point.LongitudeDegrees:0.########}\"}}\n")));

                List<GeoPoint> kept = [];
                int expected = 0;
                foreach (GeoPoint point in points)
                {
                    // Only clear cases are asked: a sphere and an ellipsoid differ by half a percent.
                    double[] metres = [.. kept.Select(other => Metres(point, other))];
                    if (metres.Any(metre => metre is > 0.98 and < 1.02))
                    {
                        return;
                    }

                    if (metres.Any(metre => metre <= 1))
                    {
                        expected++;
                    }
                    else
                    {
                        kept.Add(point);
                    }
                }

                Assert.Equal(expected, PlanFileTests.Good(folder.Read(text)).Notes.Length);
            },
            iter: 200,
            threads: 1);

        static double Metres(GeoPoint left, GeoPoint right) => Geodesic.Inverse(left, right).DistanceMetres;
    }
}
