using System.Text;

namespace Mastwright.Tests.Records;

/// <summary>A text and after it the same letter, a gigabyte of it; counts what was asked for.</summary>
internal sealed class EndlessText(string beginning) : Stream
{
    private const long Most = 1L << 30;

    private readonly byte[] first = Encoding.UTF8.GetBytes(beginning);
    private long at;

    /// <summary>How many bytes were read.</summary>
    internal long Given { get; private set; }

    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => false;

    public override long Length => Most;

    public override long Position { get => at; set => at = value; }

    public override int Read(byte[] buffer, int offset, int count)
    {
        int given = (int)Math.Min(count, Most - at);
        for (int one = 0; one < given; one++, at++)
        {
            buffer[offset + one] = at < first.Length ? first[at] : (byte)'7';
        }

        Given = Math.Max(Given, at);
        return given;
    }

    public override long Seek(long offset, SeekOrigin origin) => Position = offset + origin switch { SeekOrigin.Begin => 0, SeekOrigin.Current => at, _ => Most };

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override void Flush()
    {
    }
}
