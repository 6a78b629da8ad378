namespace FleetTrend.Hosting.Configuration;

/// <summary>The mail server that weekly reports go to.</summary>
public sealed record SmtpSettings
{
    /// <summary>Host name or address.</summary>
    public required string Host { get; init; }

    /// <summary>TCP port, 1 to 65535.</summary>
    public int Port { get; init; } = 587;

    /// <summary>How the connection is protected.</summary>
    public SmtpSecurity Security { get; init; }

    /// <summary>User to sign in as; null signs in as nobody.</summary>
    public string? User { get; init; }

    /// <summary>Password of <see cref="User"/>. Secret.</summary>
    public string? Password { get; init; }

    /// <summary>Without the password.</summary>
    public override string ToString() => $"{Host}:{Port} ({Security})";
}
