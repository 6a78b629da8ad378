namespace FleetTrend.Hosting.Configuration;

/// <summary>How the connection to the mail server is protected.</summary>
public enum SmtpSecurity
{
    /// <summary>Plain connection, then STARTTLS, refused when the server does not offer it. The default.</summary>
    StartTls,

    /// <summary>TLS from the first byte (usually port 465).</summary>
    Tls,

    /// <summary>No protection: for a relay on the same machine only.</summary>
    None,
}
