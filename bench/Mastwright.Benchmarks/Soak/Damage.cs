namespace Mastwright.Benchmarks.Soak;

/// <summary>Damages sound input.</summary>
internal static class Damage
{
    private static readonly byte[] Telling = [0, 1, 127, 128, 255, (byte)'\n', (byte)'"', (byte)'-', (byte)'9'];

    /// <summary>Changes, cuts out, doubles and inserts bytes; every other time near the start, where headers are.</summary>
    internal static byte[] Bytes(Random random, ReadOnlySpan<byte> sound)
    {
        List<byte> bytes = [.. sound];
        int changes = random.Next(1, 9);
        for (int i = 0; i < changes && bytes.Count > 0; i++)
        {
            double share = random.NextDouble();
            int at = (int)((random.Next(2) == 0 ? share : share * share * share) * bytes.Count);
            switch (random.Next(8))
            {
                case 0:
                    bytes.RemoveRange(at, Math.Min(random.Next(1, 40), bytes.Count - at));
                    break;
                case 1:
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(1, 40), bytes.Count - at)));
                    break;
                case 2:
                    bytes.Insert(at, (byte)random.Next(256));
                    break;
                case 3:
                    bytes.RemoveRange(at, random.Next(20) == 0 ? bytes.Count - at : 0);
                    break;
                case 4:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 5:
                    bytes[at] = Telling[random.Next(Telling.Length)];
                    break;
                case 6:
                    // Directories of some formats stand at the end.
                    bytes[^(1 + (int)(share * share * share * (bytes.Count - 1)))] = (byte)random.Next(256);
                    break;
                default:
                    bytes[at] = (byte)random.Next(256);
                    break;
            }
        }

        return [.. bytes];
    }

    /// <summary>Bytes that are nothing, with or without a true beginning.</summary>
    internal static byte[] Noise(Random random, ReadOnlySpan<byte> beginning, int most)
    {
        byte[] noise = new byte[random.Next(most)];
        random.NextBytes(noise);
        return [.. beginning, .. noise];
    }

    /// <summary>Swaps, doubles, drops and indents lines, and puts awkward words where values are.</summary>
    internal static string Lines(Random random, string sound, ReadOnlySpan<string> words)
    {
        List<string> lines = [.. sound.Split('\n')];
        int changes = random.Next(1, 6);
        for (int i = 0; i < changes; i++)
        {
            int at = random.Next(lines.Count);
            string line = lines[at];
            switch (random.Next(8))
            {
                case 0:
                    lines.Insert(at, lines[random.Next(lines.Count)]);
                    break;
                case 1 when lines.Count > 1:
                    lines.RemoveAt(at);
                    break;
                case 2:
                    lines[at] = new string(' ', random.Next(1, 4)) + line;
                    break;
                case 3:
                    lines[at] = line.Length > 2 ? line[2..] : "";
                    break;
                default:
                    int colon = line.IndexOf(':', StringComparison.Ordinal);
                    string word = words[random.Next(words.Length)];
                    lines[at] = colon >= 0 ? line[..(colon + 1)] + " " + word : line + word;
                    break;
            }
        }

        return string.Join('\n', lines);
    }
}
