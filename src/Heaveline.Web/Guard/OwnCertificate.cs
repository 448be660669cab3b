using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Heaveline.Web.Guard;

/// <summary>
/// A certificate made on the spot for encrypted pages, signed by nobody but itself and held in memory only: whoever opens them compares its
/// fingerprint with the one in the terminal [RFC 5280; ECDSA on P-256, FIPS 186-5].
/// </summary>
public static class OwnCertificate
{
    /// <summary>A new one, good for a year.</summary>
    /// <param name="address">The address that is listened at; that of all: every address of this machine stands in it.</param>
    /// <param name="now">The time.</param>
    public static X509Certificate2 Of(IPAddress address, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(address);
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Heaveline", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName("localhost");
        foreach (var one in Addresses(address).Distinct())
        {
            names.AddIpAddress(one);
        }

        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension(
            [new Oid("1.3.6.1.5.5.7.3.1", "Server authentication")], critical: false));
        // A clock at either end of the calendar makes a certificate too.
        var from = now > DateTimeOffset.MinValue.AddYears(1950) ? now.AddDays(-1.0) : now;
        var until = now < DateTimeOffset.MaxValue.AddYears(-2) ? now.AddYears(1) : DateTimeOffset.MaxValue;
        var made = request.CreateSelfSigned(from, until);
        if (!OperatingSystem.IsWindows())
        {
            return made;
        }

        // Windows serves only with a key that has been imported.
        using (made)
        {
            return X509CertificateLoader.LoadPkcs12(made.Export(X509ContentType.Pkcs12), null);
        }
    }

    /// <summary>The SHA-256 fingerprint as browsers show it: 32 pairs of hexadecimal digits, with colons between.</summary>
    public static string Fingerprint(X509Certificate2 certificate)
    {
        ArgumentNullException.ThrowIfNull(certificate);
        return string.Join(':', certificate.GetCertHash(HashAlgorithmName.SHA256).Select(b => b.ToString("X2", null)));
    }

    private static IEnumerable<IPAddress> Addresses(IPAddress address) =>
        new[] { IPAddress.Loopback, IPAddress.IPv6Loopback }.Concat(
            MachineAddress.IsAll(address) ? MachineAddress.All() : [address]);
}
