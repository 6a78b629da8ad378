using System.ComponentModel;
using FleetTrend.Cli.Demo;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.LocalPostgres;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Logging;
using Spectre.Console;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>The main job on a synthetic fleet: push, compute, report, and compare what was planted with what was found.</summary>
[Description("Runs the main job on a synthetic fleet.")]
internal sealed class DemoCommand : AsyncCommand<DemoCommand.Settings>
{
    /// <summary>Options of the demo.</summary>
    internal sealed class Settings : CommandSettings
    {
        /// <summary>Stop everything at the end instead of leaving the pages up.</summary>
        [CommandOption("--once")]
        [Description("Stop everything and exit after printing planted against found.")]
        public bool Once { get; init; }

        /// <summary>Seed of the synthetic fleet.</summary>
        [CommandOption("--seed")]
        [Description("Seed of the synthetic fleet.")]
        [DefaultValue(20)]
        public int Seed { get; init; }
    }

    /// <inheritdoc/>
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        try
        {
            return await DemoRun.RunAsync(DemoSettings(), settings.Seed, settings.Once, cancellationToken);
        }
        catch (Exception refusal) when (refusal is HostSettingsException or LocalPostgresException or DemoRefusedException)
        {
            AnsiConsole.MarkupLineInterpolated($"[red]{refusal.Message}[/]");
            return ExitCode.BadInput;
        }
    }

    /// <summary>The demo has a data folder, and so a database, of its own: it is emptied at each start.</summary>
    private static HostSettings DemoSettings()
    {
        var given = HostSettings.Read(new ConfigurationBuilder().AddEnvironmentVariables().Build());
        if (given.Database is not null)
        {
            throw new DemoRefusedException(
                $"{SettingNames.Database} is set. The demo empties its database, so it only runs on one of its own: unset it and start again.");
        }

        if (given.Tls is not null || !given.GrpcAddress.IsLoopback || !given.HttpAddress.IsLoopback)
        {
            throw new DemoRefusedException(
                $"The demo speaks plain text on this machine only: unset {SettingNames.TlsCertificate}, {SettingNames.GrpcAddress} and "
                + $"{SettingNames.HttpAddress}, or name loopback addresses, and start again.");
        }

        var folder = Path.Combine(given.DataFolder, "demo");
        return given with
        {
            DataFolder = folder,
            DemoDirector = true,
            LogLevel = LogLevel.Warning,
            Notice = "Synthetic data: an invented school, invented aircraft, invented findings. Evidence of nothing.",
            Mail = given.Mail with { Folder = Path.Combine(folder, "mail") },
            Schedule = given.Schedule with { RefreshDelay = TimeSpan.FromSeconds(5), LeastBetweenRefreshes = TimeSpan.Zero },
        };
    }
}
