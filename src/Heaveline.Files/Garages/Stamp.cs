using System.Security.Cryptography;
using System.Text;

namespace Heaveline.Files.Garages;

/// <summary>What tells one content of a file from another: two texts with the same stamp are the same.</summary>
/// <param name="Sha256">SHA-256 of the file's bytes, 64 hexadecimal digits in small letters.</param>
public readonly record struct Stamp(string Sha256)
{
    /// <summary>The stamp of a file's bytes.</summary>
    public static Stamp Of(ReadOnlySpan<byte> bytes) => new(Convert.ToHexStringLower(SHA256.HashData(bytes)));

    /// <summary>The stamp of a text as UTF-8; a byte order mark at its start counts.</summary>
    public static Stamp Of(string text) => Of(Encoding.UTF8.GetBytes(text));
}
