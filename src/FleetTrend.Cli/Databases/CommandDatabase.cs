using System.Data.Common;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.LocalPostgres;
using FleetTrend.Results;
using FleetTrend.Store;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace FleetTrend.Cli.Databases;

/// <summary>The database that the servers use, opened for a command.</summary>
internal static class CommandDatabase
{
    /// <summary>Opens it, brings its schema up to date and does the work; what goes wrong is said on <paramref name="error"/>.</summary>
    /// <param name="arguments">Settings as <c>--NAME=value</c>; they come before those of the environment.</param>
    /// <param name="work">The command, with what reads the store and computes.</param>
    /// <param name="error">What is wrong goes here.</param>
    /// <param name="ct">Cancels.</param>
    public static async Task<int> UseAsync(
        IReadOnlyList<string> arguments, Func<IServiceProvider, Task<int>> work, TextWriter error, CancellationToken ct)
    {
        try
        {
            var settings = HostSettings.Read(new ConfigurationBuilder().AddEnvironmentVariables().AddCommandLine([.. arguments]).Build());
            using var loggers = LoggerFactory.Create(_ => { });
            await using var database = await HostDatabase.OpenAsync(settings, loggers, ct);
            await using var services = new ServiceCollection()
                .AddSingleton(database.DataSource).AddSingleton(loggers).AddLogging().AddFleetTrendStore().AddFleetTrendResults().BuildServiceProvider();
            await StoreSchema.MigrateAsync(services, ct);
            return await work(services);
        }
        catch (Exception refusal) when (refusal is HostSettingsException or LocalPostgresException)
        {
            await error.WriteLineAsync(refusal.Message);
            return ExitCode.BadInput;
        }
        catch (DbException unreachable)
        {
            await error.WriteLineAsync($"The database does not answer: {unreachable.Message}");
            return ExitCode.Failed;
        }
    }
}
