using FleetTrend.Cli.Keys;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>Makes a key.</summary>
internal sealed class KeysCreateCommand : AsyncCommand<KeysCreateSettings>
{
    /// <inheritdoc/>
    public override Task<int> ExecuteAsync(CommandContext context, KeysCreateSettings settings, CancellationToken cancellationToken) =>
        KeyDatabase.UseAsync(context.Remaining.Raw, keys =>
            keys.CreateAsync(settings.Name, settings.Source, settings.Scopes, settings.Json, cancellationToken), cancellationToken);
}
