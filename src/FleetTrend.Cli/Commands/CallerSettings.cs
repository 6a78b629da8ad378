using System.ComponentModel;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>As whom a command talks to a server, and whom it trusts.</summary>
internal abstract class CallerSettings : CommandSettings
{
    /// <summary>Environment variable with the API key. A key as an argument would stand in process lists and shell histories.</summary>
    public const string KeyVariable = "FLEETTREND_KEY";

    /// <summary>File with the key.</summary>
    [CommandOption("--key-file <FILE>")]
    [Description($"File with the API key; without it the environment variable {KeyVariable} counts.")]
    public string? KeyFile { get; init; }

    /// <summary>Certificates to trust.</summary>
    [CommandOption("--root-certificate <FILE>")]
    [Description("PEM file with the root certificates to trust instead of the machine's.")]
    public string? RootCertificate { get; init; }

    /// <summary>Send the key without TLS to another machine.</summary>
    [CommandOption("--plain-text")]
    [Description("Send the key to another machine without TLS: whoever is on the way can read it and push in its name.")]
    public bool PlainText { get; init; }

    /// <summary>The key as found; null where there is none.</summary>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be read.</exception>
    public string? ReadKey() => KeyFile is { } file
        ? File.ReadAllText(file).Trim()
        : Environment.GetEnvironmentVariable(KeyVariable) is { Length: > 0 } key ? key.Trim() : null;

    /// <summary>Whether a text is an address that a channel can be opened to.</summary>
    protected static bool IsAddress(string text) => Uri.TryCreate(text, UriKind.Absolute, out var address) && address.Scheme is "http" or "https";
}
