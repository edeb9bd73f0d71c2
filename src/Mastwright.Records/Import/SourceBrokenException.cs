namespace Mastwright.Records.Import;

/// <summary>A source cannot be read on: a piece is longer than any row may be, or is not of its form. The message says where.</summary>
internal sealed class SourceBrokenException : NotSupportedException
{
    public SourceBrokenException()
    {
    }

    public SourceBrokenException(string message)
        : base(message)
    {
    }

    public SourceBrokenException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
