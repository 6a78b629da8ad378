using System.ComponentModel;
using FleetTrend.Cli.Serve;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using Microsoft.Extensions.Configuration;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>Runs API, pages and worker in one process, for a small shop.</summary>
[Description("Runs API, pages and worker together.")]
internal sealed class ServeCommand : AsyncCommand<ServeCommand.Settings>
{
    /// <summary>Settings come from the environment or as <c>--NAME=value</c> after <c>--</c>.</summary>
    internal sealed class Settings : CommandSettings;

    /// <inheritdoc/>
    public override Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken) =>
        HostProcess.EndingInWordsAsync(Console.Error, async () =>
        {
            string[] arguments = [.. context.Remaining.Raw];
            var hostSettings = HostSettings.Read(new ConfigurationBuilder().AddEnvironmentVariables().AddCommandLine(arguments).Build());
            await using var hosts = await BothHosts.StartAsync(hostSettings, arguments, cancellationToken);
            await hosts.WaitAsync(cancellationToken);
            return HostExitCode.Stopped;
        });
}
