using System.ComponentModel;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>Which key to revoke.</summary>
internal sealed class KeysRevokeSettings : KeysSettings
{
    /// <summary>The key.</summary>
    [CommandArgument(0, "<ID>")]
    [Description("Identifier of the key, as 'keys list' shows it.")]
    public string Id { get; init; } = "";
}
