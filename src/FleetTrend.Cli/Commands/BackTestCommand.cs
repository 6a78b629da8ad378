using FleetTrend.Cli.Databases;
using FleetTrend.Results.Observing;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Parameters;
using Microsoft.Extensions.DependencyInjection;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>fleettrend backtest.</summary>
internal sealed class BackTestCommand : AsyncCommand<BackTestSettings>
{
    /// <inheritdoc/>
    public override Task<int> ExecuteAsync(CommandContext context, BackTestSettings settings, CancellationToken cancellationToken) => CommandDatabase.UseAsync(
        context.Remaining.Raw,
        services => new BackTestRun(
            services.GetRequiredService<Knowledge>(), services.GetRequiredService<TypeGroupReader>(), services.GetRequiredService<ParameterStore>(),
            Console.Out, Console.Error).RunAsync(settings, cancellationToken),
        Console.Error, cancellationToken);
}
