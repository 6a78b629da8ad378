using FleetTrend.Cli.Keys;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>Lists keys.</summary>
internal sealed class KeysListCommand : AsyncCommand<KeysSettings>
{
    /// <inheritdoc/>
    public override Task<int> ExecuteAsync(CommandContext context, KeysSettings settings, CancellationToken cancellationToken) =>
        KeyDatabase.UseAsync(context.Remaining.Raw, keys => keys.ListAsync(settings.Json, cancellationToken), cancellationToken);
}
