using System.Buffers.Binary;
using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using Mastwright.Jobs;
using Mastwright.Storage.Jobs;

namespace Mastwright.Benchmarks.Soak;

/// <summary>Jobs in a program of their own that is killed at random moments, with files damaged in between: the answer is that of a job left alone.</summary>
internal static class JobCampaigns
{
    private const int MostKills = 6;

    internal static IEnumerable<Campaign> All(string scratch)
    {
        yield return new("killed-jobs", random => Killed(scratch, random));
    }

    /// <summary>The child: works off the job and leaves the hash of its results.</summary>
    internal static bool RunJob(string folder, int first, int chunks, int threads)
    {
        using JobRunner runner = new(new ResultStore(Path.Combine(folder, "store")), new() { Threads = threads });
        using JobResult result = runner.RunAsync(JobOf(first, chunks)).GetAwaiter().GetResult();
        File.WriteAllText(Path.Combine(folder, "answer"), Sum(Enumerable.Range(0, chunks).Select(index => result.Read(index))));
        return true;
    }

    private static SoakCase Killed(string scratch, Random random)
    {
        string folder = Path.Combine(scratch, "killed-job");
        int first = random.Next(1_000_000);
        int chunks = random.Next(1, 60);
        int threads = random.Next(1, 5);
        int[] waits = [.. Enumerable.Range(0, random.Next(1, MostKills)).Select(_ => random.Next(20, 500))];
        bool damages = random.Next(3) == 0;
        string line = FormattableString.Invariant($"{first} {chunks} {threads}, killed after {string.Join(", ", waits)} ms{(damages ? ", damaged" : "")}\n");
        return SoakCase.OfText("job.txt", line, () =>
        {
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder, recursive: true);
            }

            Directory.CreateDirectory(folder);
            foreach (int wait in waits)
            {
                using Process child = Start(folder, first, chunks, threads);
                if (!child.WaitForExit(wait))
                {
                    child.Kill();
                    child.WaitForExit();
                }

                if (damages)
                {
                    Damage(folder, random);
                }
            }

            File.Delete(Path.Combine(folder, "answer"));
            using Process last = Start(folder, first, chunks, threads);
            last.WaitForExit();
            SoakFailureException.Require(last.ExitCode == 0, FormattableString.Invariant($"the last run ended with {last.ExitCode}"));
            string expected = Sum(Enumerable.Range(first, chunks).Select(Result));
            string actual = File.ReadAllText(Path.Combine(folder, "answer"));
            SoakFailureException.Require(actual == expected, $"{actual} instead of {expected}");
            SoakFailureException.Require(new ResultStore(Path.Combine(folder, "store")).Unfinished().Count == 0, "a note of the job is left");
        });
    }

    private static Process Start(string folder, int first, int chunks, int threads) => Process.Start(
        Environment.ProcessPath!,
        ["killed-job", "--folder", folder, "--first", Text(first), "--chunks", Text(chunks), "--threads", Text(threads)]);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static void Damage(string folder, Random random)
    {
        string[] files = Directory.Exists(Path.Combine(folder, "store")) ? Directory.GetFiles(Path.Combine(folder, "store"), "*.result", SearchOption.AllDirectories) : [];
        if (files.Length == 0)
        {
            return;
        }

        using FileStream stream = new(files[random.Next(files.Length)], FileMode.Open, FileAccess.ReadWrite);
        if (random.Next(2) == 0)
        {
            stream.SetLength(random.NextInt64(stream.Length));
        }
        else
        {
            stream.Position = random.NextInt64(stream.Length);
            stream.WriteByte((byte)random.Next(256));
        }
    }

    private static Job JobOf(int first, int chunks) => new()
    {
        Name = "killed job",
        Chunks =
        [
            .. Enumerable.Range(first, chunks).Select(number =>
            {
                byte[] input = new byte[4];
                BinaryPrimitives.WriteInt32LittleEndian(input, number);
                return new Chunk(new("killed-job", 1), input, (bytes, _) => Result(BinaryPrimitives.ReadInt32LittleEndian(bytes.Span)));
            }),
        ],
    };

    /// <summary>Some milliseconds of hashing, up to 400 kB.</summary>
    private static byte[] Result(int number)
    {
        byte[] bytes = new byte[32 * (1 + (int)(number * 7919L % 12_500))];
        byte[] hash = SHA256.HashData(BitConverter.GetBytes(number));
        for (int i = 0; i < bytes.Length; i += hash.Length)
        {
            hash = SHA256.HashData(hash);
            hash.CopyTo(bytes, i);
        }

        return bytes;
    }

    private static string Sum(IEnumerable<byte[]> results)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (byte[] result in results)
        {
            hash.AppendData(result);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
