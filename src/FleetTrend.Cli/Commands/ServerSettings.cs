using System.ComponentModel;
using FleetTrend.Client;
using Spectre.Console;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>Which server a command talks to, and as whom.</summary>
internal abstract class ServerSettings : CommandSettings
{
    /// <summary>Environment variable with the API key. A key as an argument would stand in process lists and shell histories.</summary>
    public const string KeyVariable = "FLEETTREND_KEY";

    /// <summary>The gRPC address.</summary>
    [CommandOption("--server <ADDRESS>")]
    [Description("Address of gRPC, https://HOST:PORT, or http://HOST:PORT without TLS.")]
    [DefaultValue("http://127.0.0.1:5081")]
    public string Server { get; init; } = "http://127.0.0.1:5081";

    /// <summary>File with the key.</summary>
    [CommandOption("--key-file <FILE>")]
    [Description($"File with the API key; without it the environment variable {KeyVariable} counts.")]
    public string? KeyFile { get; init; }

    /// <summary>Certificates to trust.</summary>
    [CommandOption("--root-certificate <FILE>")]
    [Description("PEM file with the root certificates to trust instead of the machine's.")]
    public string? RootCertificate { get; init; }

    /// <summary>The key as found; null where there is none.</summary>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be read.</exception>
    public string? ReadKey() => KeyFile is { } file
        ? File.ReadAllText(file).Trim()
        : Environment.GetEnvironmentVariable(KeyVariable) is { Length: > 0 } key ? key.Trim() : null;

    /// <summary>Where and who, for a channel.</summary>
    /// <exception cref="IOException">The key file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The key file may not be read.</exception>
    public ConnectionOptions Connection() => new() { Address = new Uri(Server), Key = ReadKey(), RootCertificateFile = RootCertificate };

    /// <inheritdoc/>
    public override ValidationResult Validate() =>
        Uri.TryCreate(Server, UriKind.Absolute, out var address) && address.Scheme is "http" or "https"
            ? ValidationResult.Success()
            : ValidationResult.Error($"--server, value '{Server}': must be an address such as https://trends.example:5081");
}
