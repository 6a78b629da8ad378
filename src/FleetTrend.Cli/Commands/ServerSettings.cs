using System.ComponentModel;
using FleetTrend.Client;
using Spectre.Console;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>Which server a command talks to.</summary>
internal abstract class ServerSettings : CallerSettings
{
    /// <summary>The gRPC address.</summary>
    [CommandOption("--server <ADDRESS>")]
    [Description("Address of gRPC, https://HOST:PORT, or http://HOST:PORT without TLS.")]
    [DefaultValue("http://127.0.0.1:5081")]
    public string Server { get; init; } = "http://127.0.0.1:5081";

    /// <summary>Where and who, for a channel.</summary>
    /// <exception cref="IOException">The key file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The key file may not be read.</exception>
    public ConnectionOptions Connection() => new()
    {
        Address = new Uri(Server),
        Key = ReadKey(),
        RootCertificateFile = RootCertificate,
        AllowKeyWithoutTls = PlainText,
    };

    /// <inheritdoc/>
    public override ValidationResult Validate() => IsAddress(Server)
        ? ValidationResult.Success()
        : ValidationResult.Error($"--server: must be an address such as https://trends.example:5081; got \"{Server}\"");
}
