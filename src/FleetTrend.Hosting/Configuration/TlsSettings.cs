using System.Security.Cryptography.X509Certificates;

namespace FleetTrend.Hosting.Configuration;

/// <summary>The certificate that the API shows.</summary>
public sealed record TlsSettings
{
    /// <summary>PEM file with the certificate and those that lead to its root, or a PFX file (name ending in .pfx or .p12).</summary>
    public required string CertificateFile { get; init; }

    /// <summary>PEM file with the private key; null where it is in <see cref="CertificateFile"/>.</summary>
    public string? KeyFile { get; init; }

    /// <summary>Password of the key or of the PFX file; null for none. Secret.</summary>
    public string? Password { get; init; }

    /// <summary>Without the password.</summary>
    public override string ToString() => $"TLS with {CertificateFile}";

    /// <summary>Reads the files.</summary>
    /// <exception cref="IOException">A file is not there.</exception>
    /// <exception cref="UnauthorizedAccessException">A file may not be read.</exception>
    /// <exception cref="System.Security.Cryptography.CryptographicException">A file holds no such thing, or the password is wrong.</exception>
    internal TlsCertificate Load()
    {
        var extension = Path.GetExtension(CertificateFile).ToUpperInvariant();
        if (extension is ".PFX" or ".P12")
        {
            var all = X509CertificateLoader.LoadPkcs12CollectionFromFile(CertificateFile, Password);
            var own = all.FirstOrDefault(c => c.HasPrivateKey)
                ?? throw new System.Security.Cryptography.CryptographicException("It holds no private key.");
            all.Remove(own);
            return new TlsCertificate(own, all);
        }

        var certificate = Password is null
            ? X509Certificate2.CreateFromPemFile(CertificateFile, KeyFile)
            : X509Certificate2.CreateFromEncryptedPemFile(CertificateFile, Password, KeyFile);
        var chain = new X509Certificate2Collection();
        chain.ImportFromPemFile(CertificateFile);
        chain.RemoveAt(0);
        return new TlsCertificate(certificate, chain);
    }
}
