using FleetTrend.Cli.Keys;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>Revokes a key.</summary>
internal sealed class KeysRevokeCommand : AsyncCommand<KeysRevokeSettings>
{
    /// <inheritdoc/>
    public override Task<int> ExecuteAsync(CommandContext context, KeysRevokeSettings settings, CancellationToken cancellationToken) =>
        KeyDatabase.UseAsync(context.Remaining.Raw, keys => keys.RevokeAsync(settings.Id, settings.Json, cancellationToken), cancellationToken);
}
