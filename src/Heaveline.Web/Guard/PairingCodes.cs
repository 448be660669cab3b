using System.Security.Cryptography;

namespace Heaveline.Web.Guard;

/// <summary>Codes that are read from a terminal and typed on a phone.</summary>
public static class PairingCodes
{
    // Without letters and digits that are taken for one another.
    private const string Letters = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";

    /// <summary>A new code of eight signs in two groups: 31⁸, about 8·10¹¹ of them.</summary>
    public static string Fresh() => $"{RandomNumberGenerator.GetString(Letters, 4)}-{RandomNumberGenerator.GetString(Letters, 4)}";

    /// <summary>Whether what was typed is the code; case, spaces and the dash do not matter.</summary>
    public static bool Matches(string? typed, string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        return CryptographicOperations.FixedTimeEquals(Bytes(typed ?? ""), Bytes(code));
    }

    private static byte[] Bytes(string words) =>
        SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(string.Concat(words.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant()));
}
