using Mastwright.Storage.Ground;

namespace Mastwright.Storage.Tests.Ground;

/// <summary>Damaged files: each is read or refused with a complaint that names it; nothing else may come out.</summary>
internal static class Mutations
{
    /// <summary>Changes, cuts and doubles bytes of sound files, most often near the start where the headers are.</summary>
    internal static void NeverCrash(string path, IReadOnlyList<byte[]> sound, int iterations)
    {
        Gen<(int Sound, (double Place, byte Value)[] Changes, int Cut)> mutation = Gen.Select(
            Gen.Int[0, sound.Count - 1],
            Gen.Select(Gen.Double[0, 1], Gen.OneOf(Gen.Byte, Gen.Const<byte>(0), Gen.Const<byte>(255), Gen.Const<byte>(127))).Array[1, 8],
            Gen.Int[0, 20]);
        mutation.Sample(
            (one) =>
            {
                byte[] bytes = [.. sound[one.Sound]];
                foreach ((double place, byte value) in one.Changes)
                {
                    // Cubed: half of all changes fall into the first eighth.
                    bytes[(int)(place * place * place * (bytes.Length - 1))] = value;

                    // And as many into the last eighth, where directories of written files stand.
                    int fromEnd = (int)(place * place * place * (bytes.Length - 1));
                    bytes[^(1 + fromEnd)] = (byte)(bytes[^(1 + fromEnd)] ^ (one.Cut % 2 == 0 ? value : 0));
                }

                // A new file each time: some file systems wait for the disk when a file is cut to nothing and written again.
                File.Delete(path);
                File.WriteAllBytes(path, one.Cut == 1 ? bytes[..(bytes.Length / 2)] : bytes);
                TryRead(path);
            },
            iter: iterations,
            threads: 1);
    }

    internal static void RandomBytesAreRefused(string path, IReadOnlyList<byte[]> beginnings, int iterations = 400) =>
        Gen.Select(Gen.Int[0, beginnings.Count - 1], Gen.Byte.Array[0, 400]).Sample(
            (beginning, rest) =>
            {
                File.Delete(path);
                File.WriteAllBytes(path, [.. beginnings[beginning], .. rest]);
                GroundFileException fault = Assert.Throws<GroundFileException>(() => GroundFileFormat.OpenFile(path));
                Assert.Contains(Path.GetFileName(path), fault.Message, StringComparison.Ordinal);
            },
            iter: iterations,
            threads: 1);

    /// <summary>Reads all pieces of a file; whether it could be read.</summary>
    internal static bool TryRead(string path)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        try
        {
            GroundFile file = GroundFileFormat.OpenFile(path);
            int columns = Math.Min(file.PieceColumns, file.Frame.Columns);
            int rows = Math.Min(file.PieceRows, file.Frame.Rows);
            Assert.True((long)columns * rows <= GroundFile.MostSamplesAPiece * 4L, $"a piece of {columns} × {rows} samples");
            file.ReadHeights(0, 0, columns, rows);
            return true;
        }
        catch (GroundFileException fault)
        {
            Assert.Contains(Path.GetFileName(path), fault.Message, StringComparison.Ordinal);
            Assert.NotEmpty(fault.Found);
            return false;
        }
        finally
        {
            // A small file must not make us take memory by the gigabyte.
            long taken = GC.GetAllocatedBytesForCurrentThread() - before;
            Assert.True(taken < 600L << 20, $"{taken:N0} bytes were allocated for {path}");
        }
    }
}
