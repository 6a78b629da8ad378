using System.ComponentModel;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>What the commands about keys share.</summary>
internal class KeysSettings : CommandSettings
{
    /// <summary>Print JSON.</summary>
    [CommandOption("--json")]
    [Description("Print one JSON document instead of a table.")]
    public bool Json { get; init; }
}
