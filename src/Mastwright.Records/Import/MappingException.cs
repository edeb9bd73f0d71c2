namespace Mastwright.Records.Import;

/// <summary>A mapping file, or a source that it should fit, cannot be used. The message says where and what would be right.</summary>
public sealed class MappingException : Exception
{
    /// <summary>A fault without words.</summary>
    public MappingException()
    {
    }

    /// <summary>A fault in words for the person.</summary>
    public MappingException(string message)
        : base(message)
    {
    }

    /// <summary>A fault in words for the person, with what caused it.</summary>
    public MappingException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
