using System.Data.Common;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.LocalPostgres;
using FleetTrend.Store;
using FleetTrend.Store.Keys;
using FleetTrend.Store.Sources;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace FleetTrend.Cli.Keys;

/// <summary>The database that the servers use, opened for a command about keys.</summary>
internal static class KeyDatabase
{
    /// <summary>Opens it, brings its schema up to date and does the work; what goes wrong is said on standard error.</summary>
    /// <param name="arguments">Settings as <c>--NAME=value</c>; they come before those of the environment.</param>
    /// <param name="work">The command.</param>
    /// <param name="ct">Cancels.</param>
    public static async Task<int> UseAsync(IReadOnlyList<string> arguments, Func<KeyConsole, Task<int>> work, CancellationToken ct)
    {
        try
        {
            var settings = HostSettings.Read(new ConfigurationBuilder().AddEnvironmentVariables().AddCommandLine([.. arguments]).Build());
            using var loggers = LoggerFactory.Create(_ => { });
            await using var database = await HostDatabase.OpenAsync(settings, loggers, ct);
            await using var services = new ServiceCollection().AddSingleton(database.DataSource).AddFleetTrendStore().BuildServiceProvider();
            await StoreSchema.MigrateAsync(services, ct);
            return await work(new KeyConsole(
                services.GetRequiredService<KeyStore>(), services.GetRequiredService<SourceStore>(), Console.Out, Console.Error));
        }
        catch (Exception refusal) when (refusal is HostSettingsException or LocalPostgresException)
        {
            await Console.Error.WriteLineAsync(refusal.Message);
            return ExitCode.BadInput;
        }
        catch (DbException unreachable)
        {
            await Console.Error.WriteLineAsync($"The database does not answer: {unreachable.Message}");
            return ExitCode.Failed;
        }
    }
}
