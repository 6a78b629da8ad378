using System.ComponentModel;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>What a new key is to be.</summary>
internal sealed class KeysCreateSettings : KeysSettings
{
    /// <summary>For people.</summary>
    [CommandArgument(0, "<NAME>")]
    [Description("Who or what will use it, 1 to 60 characters.")]
    public string Name { get; init; } = "";

    /// <summary>Scopes.</summary>
    [CommandOption("--scope <SCOPE>")]
    [Description("What it allows: records-write, trends-read, answer or administer; give the option once for each.")]
    public string[] Scopes { get; init; } = [];

    /// <summary>The source.</summary>
    [CommandOption("--source <SOURCE>")]
    [Description("The source whose records it may push; records-write needs one. One that is not registered yet is registered.")]
    public string? Source { get; init; }
}
