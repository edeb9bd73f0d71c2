namespace Mastwright.Records.Store;

/// <summary>The store cannot be opened, read or written. The message says what, where and what would help.</summary>
public sealed class RecordStoreException : Exception
{
    /// <summary>A fault without words.</summary>
    public RecordStoreException()
    {
    }

    /// <summary>A fault in words for the person.</summary>
    public RecordStoreException(string message)
        : base(message)
    {
    }

    /// <summary>A fault in words for the person, with what caused it.</summary>
    public RecordStoreException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
