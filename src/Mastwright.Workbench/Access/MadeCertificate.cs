using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Mastwright.Workbench.Hosting;

namespace Mastwright.Workbench.Access;

/// <summary>The certificate that the server shows: the keeper's own, or one made here and kept, so that a browser is asked once only.</summary>
internal static class MadeCertificate
{
    private const string FileName = "certificate.pfx";
    private const int ValidDays = 825;
    private const int RenewDays = 30;

    /// <summary>The certificate; null with what is wrong when it cannot be used.</summary>
    internal static X509Certificate2? Find(WorkbenchOptions options, string folder, DateTimeOffset now, out string problem)
    {
        problem = "";
        if (options.CertificatePath is not { } path)
        {
            return Made(options, Path.Combine(folder, FileName), now);
        }

        try
        {
            X509Certificate2 own = Path.GetExtension(path).ToLowerInvariant() is ".pfx" or ".p12"
                ? X509CertificateLoader.LoadPkcs12FromFile(path, null)
                : Usable(X509Certificate2.CreateFromPemFile(path, options.CertificateKeyPath));
            if (own.HasPrivateKey)
            {
                return own;
            }

            problem = $"{path}: holds no private key; name its file with --certificate-key";
        }
        catch (Exception fault) when (fault is CryptographicException or IOException or UnauthorizedAccessException)
        {
            problem = $"{path}: is no certificate that can be used: {fault.Message}";
        }

        return null;
    }

    private static X509Certificate2 Made(WorkbenchOptions options, string path, DateTimeOffset now)
    {
        if (File.Exists(path) && Kept(path) is { } kept && kept.NotAfter > now.UtcDateTime.AddDays(RenewDays) && Names(kept).SetEquals(Wanted(options)))
        {
            return kept;
        }

        using ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new("CN=Mastwright workbench", key, HashAlgorithmName.SHA256);
        SubjectAlternativeNameBuilder names = new();
        foreach (string name in Wanted(options))
        {
            if (IPAddress.TryParse(name, out IPAddress? address))
            {
                names.AddIpAddress(address);
            }
            else
            {
                names.AddDnsName(name);
            }
        }

        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new("1.3.6.1.5.5.7.3.1")], critical: false));
        using X509Certificate2 made = request.CreateSelfSigned(now.AddDays(-1), now.AddDays(ValidDays));
        KeptFolder.Write(path, made.Export(X509ContentType.Pkcs12));
        return Kept(path)!;
    }

    /// <summary>What the certificate is for: the address listened on, or every name of this machine where that is "any".</summary>
    private static HashSet<string> Wanted(WorkbenchOptions options)
    {
        HashSet<string> names = new(StringComparer.OrdinalIgnoreCase) { "localhost", "127.0.0.1" };
        names.UnionWith(options.HostNames);
        names.Add(Dns.GetHostName());
        if (!options.Address.Equals(IPAddress.Any) && !options.Address.Equals(IPAddress.IPv6Any))
        {
            names.Add(options.Address.ToString());
        }

        return names;
    }

    private static HashSet<string> Names(X509Certificate2 certificate)
    {
        X509SubjectAlternativeNameExtension? names = certificate.Extensions.OfType<X509SubjectAlternativeNameExtension>().FirstOrDefault();
        return names is null
            ? []
            : new(names.EnumerateDnsNames().Concat(names.EnumerateIPAddresses().Select(address => address.ToString())), StringComparer.OrdinalIgnoreCase);
    }

    private static X509Certificate2? Kept(string path)
    {
        try
        {
            return X509CertificateLoader.LoadPkcs12FromFile(path, null);
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    /// <summary>A key read from PEM is fit for TLS on every system only after a round through PKCS #12.</summary>
    private static X509Certificate2 Usable(X509Certificate2 certificate)
    {
        using (certificate)
        {
            return certificate.HasPrivateKey
                ? X509CertificateLoader.LoadPkcs12(certificate.Export(X509ContentType.Pkcs12), null)
                : X509CertificateLoader.LoadCertificate(certificate.RawData);
        }
    }
}
