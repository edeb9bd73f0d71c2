using System.Globalization;
using System.Text;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Tests.Plans;

public class PlanBadInputTests
{
    [Fact]
    public void Random_bytes_are_an_answer()
    {
        using PlanFolderFixture folder = new();
        Gen.Byte.Array[0, 300].Sample(bytes => Answers(folder, bytes), iter: 2000, threads: 1);
    }

    [Fact]
    public void Random_yaml_punctuation_is_an_answer()
    {
        using PlanFolderFixture folder = new();
        Gen<string> piece = Gen.OneOf("a", "name", ": ", ":", "- ", "? ", "\n", "\n  ", "\n    ", "[", "]", "{", "}", ",", "'", "\"", "&a ", "*a", "!t ", "|", ">", "#", "%YAML 1.2\n", "---\n", "...\n", "\t", "~", "<<", "5 m", "\r", "\u2028", "\u0085", "\\x");
        piece.Array[0, 40].Sample(pieces => Answers(folder, Encoding.UTF8.GetBytes(string.Concat(pieces))), iter: 5000, threads: 1);
    }

    [Fact]
    public void A_mutated_plan_is_an_answer()
    {
        using PlanFolderFixture folder = new();
        byte[] sound = Encoding.UTF8.GetBytes(SamplePlans.Whole);
        Gen<(int, int, byte)> change = Gen.Select(Gen.Int[0, sound.Length - 1], Gen.Int[0, 3], Gen.Byte);
        change.Array[1, 6].Sample(
            changes =>
            {
                List<byte> bytes = [.. sound];
                foreach ((int at, int kind, byte value) in changes)
                {
                    int place = Math.Min(at, bytes.Count - 1);
                    switch (kind)
                    {
                        case 0:
                            bytes[place] = value;
                            break;
                        case 1:
                            bytes.RemoveAt(place);
                            break;
                        case 2:
                            bytes.Insert(place, value);
                            break;
                        default:
                            bytes.RemoveRange(place, Math.Min(value, bytes.Count - place));
                            break;
                    }

                    if (bytes.Count == 0)
                    {
                        return true;
                    }
                }

                return Answers(folder, [.. bytes]);
            },
            iter: 1000,
            threads: 1);
    }

    [Fact]
    public void A_plan_of_100_000_lines_reads()
    {
        StringBuilder text = new(SamplePlans.Smallest + "neighbours:\n");
        for (int i = 0; i < 25_000; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  n-{i}:\n    name: Number {i}\n    position: {40 + (i / 1000.0)}, {-18 + (i % 1000 / 100.0)}\n    height: 5 m\n");
        }

        using PlanFolderFixture folder = new();
        PlanDocument document = PlanFileTests.Good(folder.Read(text.ToString()));

        Assert.Equal(25_000, document.Plan.Neighbours.Length);
    }

    [Fact]
    public void A_plan_of_100_megabytes_is_refused_with_one_clear_error()
    {
        using PlanFolderFixture folder = new();
        using (FileStream stream = File.Create(folder.Plan))
        {
            stream.SetLength(100_000_000);
        }

        PlanProblem problem = Assert.Single(PlanFile.Read(folder.Plan).Problems);
        Assert.Equal("plan-too-large", problem.Code);
        Assert.Equal("plan-too-large", PlanText.Read(folder.Plan).Problem?.Code);
    }

    [Fact]
    public void A_file_without_a_length_is_read_to_its_end_or_its_bound()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        Assert.Equal(File.ReadAllBytes("/proc/version"), PlanSource.ReadBounded("x", "/proc/version", out _));
        Assert.Null(PlanSource.ReadBounded("x", "/dev/zero", out PlanProblem? problem));
        Assert.Equal("plan-too-large", problem?.Code);
    }

    [Theory]
    [InlineData("[", "plan-too-deep")]
    [InlineData("{a: ", "plan-too-deep")]
    [InlineData("- ", "plan-too-deep")]
    [InlineData("? ", "plan-")]
    [InlineData("!a ", "plan-")]
    [InlineData("a: b, ", "plan-")]
    [InlineData("\"", "plan-")]
    [InlineData("k: 'x", "plan-")]
    [InlineData("# c\n", "plan-")]
    [InlineData("&a ", "plan-")]
    public void A_long_run_of_one_thing_is_refused_quickly(string piece, string code)
    {
        string text = string.Concat(Enumerable.Repeat(piece, 1_000_000 / piece.Length));
        using PlanFolderFixture folder = new();

        System.Collections.Immutable.ImmutableArray<PlanProblem> problems = folder.Read(text).Problems;
        Assert.InRange(problems.Length, 1, 2);
        Assert.All(problems, problem => Assert.StartsWith(code, problem.Code, StringComparison.Ordinal));
    }

    [Fact]
    public void A_file_with_more_values_than_any_plan_is_refused()
    {
        using PlanFolderFixture folder = new();
        string text = "a: [" + string.Concat(Enumerable.Repeat("1,", 1_100_000)) + "1]";

        Assert.Equal("plan-too-large", Assert.Single(folder.Read(text).Problems).Code);
    }

    [Fact]
    public void Many_problems_are_answered_as_quickly_as_few()
    {
        using PlanFolderFixture folder = new();
        string text = SamplePlans.Smallest + string.Concat(Enumerable.Range(0, 100_000).Select(i => $"kex-{i}: 1\n"));

        Assert.Equal(101, folder.Read(text).Problems.Length);
    }

    [Theory]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x61, 0x00 }, "plan-encoding", 0)]
    [InlineData(new byte[] { 0x61, 0x0A, 0xE9, 0x0A }, "plan-encoding", 2)]
    [InlineData(new byte[] { 0x61, 0x0A, 0x00, 0x0A }, "plan-encoding", 2)]
    [InlineData(new byte[0], "plan-syntax", 1)]
    [InlineData(new byte[] { 0xEF, 0xBB, 0xBF }, "plan-syntax", 1)]
    public void Bytes_that_are_no_text_are_refused(byte[] bytes, string code, int line)
    {
        using PlanFolderFixture folder = new();
        File.WriteAllBytes(folder.Plan, bytes);

        PlanProblem problem = Assert.Single(PlanFile.Read(folder.Plan).Problems);
        Assert.Equal((code, line), (problem.Code, problem.Line));
    }

    [Fact]
    public void A_missing_plan_and_a_folder_are_answers()
    {
        using PlanFolderFixture folder = new();

        Assert.Contains("no such file", Assert.Single(PlanFile.Read(folder.Plan).Problems).Message, StringComparison.Ordinal);
        Assert.Contains("folder", Assert.Single(PlanFile.Read(folder.Folder).Problems).Message, StringComparison.Ordinal);
    }

    /// <summary>Reads the bytes as a plan: the answer is a document or at least one problem with its place.</summary>
    private static bool Answers(PlanFolderFixture folder, byte[] bytes)
    {
        PlanSource? source = PlanSource.FromBytes("plan.yaml", folder.Plan, bytes, out PlanProblem? refused);
        if (source is null)
        {
            return refused!.Message.Length > 0;
        }

        PlanReading reading = PlanFile.Bind(source, new());
        return reading.Document is null
            ? reading.Problems.Length > 0 && reading.Problems.All(problem => problem.Message.Length > 0 && !problem.ToString().Contains('\n', StringComparison.Ordinal))
            : reading.Problems.IsEmpty;
    }
}
