using System.Globalization;

namespace Mastwright.Records.Import;

/// <summary>The lines of a text, one after the other, in memory that does not grow with a line that never ends.</summary>
/// <param name="text">The text.</param>
/// <param name="linesBefore">How many lines of it were read already.</param>
internal sealed class BoundedLines(TextReader text, long linesBefore = 0)
{
    /// <summary>The most characters of one line.</summary>
    internal const int Most = 1 << 20;

    private char[] buffer = new char[1 << 16];
    private int start, end, scanned;
    private bool atEnd;

    /// <summary>The number of the line last read, from 1.</summary>
    internal long Line { get; private set; } = linesBefore;

    /// <summary>The next line without its end; false where there is no more.</summary>
    /// <exception cref="SourceBrokenException">The line has more than <see cref="Most"/> characters.</exception>
    internal bool TryRead(out ReadOnlySpan<char> line)
    {
        while (true)
        {
            int length = buffer.AsSpan(scanned, end - scanned).IndexOf('\n') is >= 0 and int found ? scanned + found - start : -1;
            if (length >= 0 || (atEnd && end > start))
            {
                int taken = length >= 0 ? length : end - start;
                line = buffer.AsSpan(start, taken).TrimEnd('\r');
                start = scanned = start + taken + (length >= 0 ? 1 : 0);
                Line++;
                return true;
            }

            if (atEnd)
            {
                line = default;
                return false;
            }

            scanned = end;
            Fill();
        }
    }

    private void Fill()
    {
        if (end - start > Most)
        {
            throw new SourceBrokenException(string.Create(CultureInfo.InvariantCulture, $"line {Line + 1} has more than {Most} characters"));
        }

        if (start > 0)
        {
            buffer.AsSpan(start, end - start).CopyTo(buffer);
            (end, scanned, start) = (end - start, scanned - start, 0);
        }

        if (end == buffer.Length)
        {
            Array.Resize(ref buffer, buffer.Length * 2);
        }

        int read = text.Read(buffer.AsSpan(end));
        atEnd = read == 0;
        end += read;
    }
}
