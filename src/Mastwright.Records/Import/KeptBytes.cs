using System.Text;

namespace Mastwright.Records.Import;

/// <summary>
/// Reads UTF-8 and keeps what is none: such a byte becomes U+FFFD and its two hexadecimal digits, so that a row in another encoding is told and
/// can be put right from the side file.
/// </summary>
internal sealed class KeptBytes : DecoderFallback
{
    internal static Encoding Utf8 { get; } = Encoding.GetEncoding("utf-8", EncoderFallback.ExceptionFallback, new KeptBytes());

    /// <inheritdoc/>
    public override int MaxCharCount => 12;

    /// <inheritdoc/>
    public override DecoderFallbackBuffer CreateFallbackBuffer() => new Buffer();

    private sealed class Buffer : DecoderFallbackBuffer
    {
        private string left = "";
        private int at;

        /// <inheritdoc/>
        public override int Remaining => left.Length - at;

        /// <inheritdoc/>
        public override bool Fallback(byte[] bytesUnknown, int index)
        {
            left = string.Concat(bytesUnknown.Select(one => "\uFFFD" + Convert.ToHexString([one])));
            at = 0;
            return left.Length > 0;
        }

        /// <inheritdoc/>
        public override char GetNextChar() => at < left.Length ? left[at++] : '\0';

        /// <inheritdoc/>
        public override bool MovePrevious()
        {
            if (at == 0)
            {
                return false;
            }

            at--;
            return true;
        }

        /// <inheritdoc/>
        public override void Reset()
        {
            left = "";
            at = 0;
        }
    }
}
