using System.Numerics;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;

namespace Heaveline.Cluster;

/// <summary>
/// The code of a study: whoever has it may help, nobody else. It is read from one terminal and typed at another; from it both ends make the same key,
/// by which they know one another (decision 18).
/// </summary>
public static class StudyCode
{
    // Without letters and digits that are taken for one another.
    private const string Letters = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";
    private const int Group = 4;
    private const int Groups = 3;

    /// <summary>
    /// PBKDF2 with HMAC-SHA-256 (RFC 8018, 5.2), as often as OWASP's Password Storage Cheat Sheet (2023) asks for: each guess costs so much.
    /// </summary>
    internal const int Rounds = 600_000;


    // 128 bits more than the order has, so that no key is likelier than another (FIPS 186-5, A.2.1).
    private const int Drawn = 48;
    private const int Coordinate = 32;
    private static readonly byte[] Salt = Encoding.ASCII.GetBytes("heaveline study code 1");

    // The order of the group of P-256 (SP 800-186, 3.2.1.3).
    private static readonly BigInteger Order = new(
        Convert.FromHexString("FFFFFFFF00000000FFFFFFFFFFFFFFFFBCE6FAADA7179E84F3B9CAC2FC632551"), isUnsigned: true, isBigEndian: true);

    /// <summary>A new code of twelve signs in three groups: 31¹², about 8·10¹⁷ of them.</summary>
    public static string Fresh() => string.Join('-', Enumerable.Range(0, Groups).Select(_ => RandomNumberGenerator.GetString(Letters, Group)));

    /// <summary>The letters and digits of a code, in capitals: nothing else of it matters.</summary>
    internal static string Plain(string code) => string.Concat(code.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant();

    /// <summary>A code of sixteen signs that comes of bytes drawn elsewhere: 31¹⁶, about 7·10²³ of them.</summary>
    internal static string Of(ReadOnlySpan<byte> drawn)
    {
        var rest = new BigInteger(drawn, isUnsigned: true, isBigEndian: true);
        var signs = new char[Group * (Groups + 1)];
        for (var k = 0; k < signs.Length; k++)
        {
            rest = BigInteger.DivRem(rest, Letters.Length, out var sign);
            signs[k] = Letters[(int)sign];
        }

        return string.Join('-', signs.Chunk(Group).Select(group => new string(group)));
    }

    /// <summary>A certificate whose key comes of the code, and the name of the cluster; case, spaces and dashes of the code do not matter.</summary>
    /// <param name="code">The code.</param>
    /// <param name="now">The time.</param>
    internal static (X509Certificate2 Certificate, string Cluster) Keys(string code, DateTimeOffset now)
    {
        var plain = Plain(code);
        var drawn = Rfc2898DeriveBytes.Pbkdf2(plain, Salt, Rounds, HashAlgorithmName.SHA256, Drawn + Coordinate);
        var secret = (new BigInteger(drawn.AsSpan(0, Drawn), isUnsigned: true, isBigEndian: true) % (Order - 1)) + 1;
        var bytes = secret.ToByteArray(isUnsigned: true, isBigEndian: true);
        var own = new byte[Coordinate];
        bytes.CopyTo(own, Coordinate - bytes.Length);
        var cluster = Convert.ToHexStringLower(drawn.AsSpan(Drawn, 8));
        using var key = ECDsa.Create(new ECParameters { Curve = ECCurve.NamedCurves.nistP256, D = own });
        foreach (var secretBytes in new[] { drawn, bytes, own })
        {
            CryptographicOperations.ZeroMemory(secretBytes);
        }

        var request = new CertificateRequest("CN=Heaveline study", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension(
            [new Oid("1.3.6.1.5.5.7.3.1", "Server authentication"), new Oid("1.3.6.1.5.5.7.3.2", "Client authentication")], critical: false));
        // Clocks may differ: it is the key that counts.
        var made = request.CreateSelfSigned(now.AddYears(-1), now.AddYears(1));
        return (Usable(made), cluster);
    }

    /// <summary>Whether a certificate has the key of another.</summary>
    internal static bool IsSame(X509Certificate2? one, X509Certificate2 other) =>
        one is not null
        && CryptographicOperations.FixedTimeEquals(one.PublicKey.ExportSubjectPublicKeyInfo(), other.PublicKey.ExportSubjectPublicKeyInfo());

    // Windows serves only with a key that has been imported.
    private static X509Certificate2 Usable(X509Certificate2 made)
    {
        if (!OperatingSystem.IsWindows())
        {
            return made;
        }

        using (made)
        {
            return X509CertificateLoader.LoadPkcs12(made.Export(X509ContentType.Pkcs12), null);
        }
    }
}
