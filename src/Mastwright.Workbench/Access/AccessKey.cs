using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Mastwright.Workbench.Hosting;

namespace Mastwright.Workbench.Access;

/// <summary>The key that opens the pages from another machine. Only its hash is kept; the key itself is shown once, when it is made.</summary>
internal sealed class AccessKey
{
    private const string FileName = "access-key";
    private const string Form = "pbkdf2-sha256";
    private const int Rounds = 210_000;
    private const int SaltBytes = 16;
    private const int HashBytes = 32;
    private const int KeyBytes = 20;

    private readonly byte[] salt;
    private readonly byte[] hash;
    private readonly int rounds;

    private AccessKey(byte[] salt, byte[] hash, int rounds) => (this.salt, this.hash, this.rounds) = (salt, hash, rounds);

    /// <summary>Names this key: a cookie that was given for another one opens nothing.</summary>
    internal string Stamp => Convert.ToHexStringLower(SHA256.HashData(hash))[..16];

    /// <summary>The kept key; null when there is none or its file is damaged.</summary>
    internal static AccessKey? Read(string folder)
    {
        string path = Path.Combine(folder, FileName);
        if (!File.Exists(path))
        {
            return null;
        }

        string[] parts = File.ReadAllText(path).Trim().Split(' ');
        try
        {
            return parts is [Form, var rounds, var salt, var hash] && int.TryParse(rounds, NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count > 0
                ? new(Convert.FromHexString(salt), Convert.FromHexString(hash), count)
                : null;
        }
        catch (FormatException)
        {
            return null;
        }
    }

    /// <summary>Makes a key, keeps its hash and gives the key to show.</summary>
    internal static AccessKey Make(string folder, out string shown)
    {
        shown = Words(RandomNumberGenerator.GetBytes(KeyBytes));
        byte[] fresh = RandomNumberGenerator.GetBytes(SaltBytes);
        AccessKey made = new(fresh, Hash(shown, fresh, Rounds), Rounds);
        KeptFolder.Write(
            Path.Combine(folder, FileName),
            Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{Form} {Rounds} {Convert.ToHexStringLower(fresh)} {Convert.ToHexStringLower(made.hash)}\n")));
        return made;
    }

    /// <summary>Whether this is the key; takes as long for a wrong one.</summary>
    internal bool IsOpenedBy(string given) => CryptographicOperations.FixedTimeEquals(Hash(Plain(given), salt, rounds), hash);

    private static byte[] Hash(string key, byte[] salt, int rounds) =>
        Rfc2898DeriveBytes.Pbkdf2(Encoding.UTF8.GetBytes(Plain(key)), salt, rounds, HashAlgorithmName.SHA256, HashBytes);

    /// <summary>Capitals, spaces and dashes make no difference: the key is typed from a screen.</summary>
    private static string Plain(string key) => string.Concat(key.Where(char.IsAsciiLetterOrDigit)).ToLowerInvariant();

    /// <summary>Letters and digits that are not mistaken for one another, in groups of four.</summary>
    private static string Words(ReadOnlySpan<byte> bytes)
    {
        const string letters = "abcdefghjkmnpqrstvwxyz0123456789";
        StringBuilder text = new();
        for (int i = 0; i < bytes.Length; i++)
        {
            text.Append(i > 0 && i % 4 == 0 ? "-" : "").Append(letters[bytes[i] % letters.Length]);
        }

        return text.ToString();
    }
}
