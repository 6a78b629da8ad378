using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Health;
using FleetTrend.Hosting.LocalPostgres;
using FleetTrend.Hosting.Logging;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.Configuration;

namespace FleetTrend.Hosting;

/// <summary>A host as a process: from settings to its end. What an operator can fix is said in words on standard error, with an exit code.</summary>
public static class HostProcess
{
    /// <summary>Reads the settings, opens the database, builds the host and runs it until it is asked to stop.</summary>
    /// <param name="args">Command line: settings as <c>--NAME=value</c>; they come before those of the environment.</param>
    /// <param name="listen">Where the host listens.</param>
    /// <param name="build">Builds the host.</param>
    /// <param name="prepare">What comes between building and listening.</param>
    /// <returns>One of <see cref="HostExitCode"/>.</returns>
    public static Task<int> RunAsync(
        string[] args,
        Action<IWebHostBuilder, HostSettings> listen,
        Func<HostSettings, HostDatabase, WebApplication> build,
        Func<WebApplication, CancellationToken, Task> prepare) =>
        EndingInWordsAsync(Console.Error, async () =>
        {
            var settings = HostSettings.Read(new ConfigurationBuilder().AddEnvironmentVariables().AddCommandLine(args).Build());
            using var loggers = ProcessLog.Open(settings);
            await using var database = await HostDatabase.OpenAsync(settings, loggers, CancellationToken.None);
            await DatabaseWait.UntilAnsweredAsync(settings, database, host => listen(host, settings), loggers, CancellationToken.None);
            await using var app = build(settings, database);
            await prepare(app, CancellationToken.None);
            await app.RunAsync();
            return HostExitCode.Stopped;
        });

    /// <summary>Runs, and turns what an operator can fix into a sentence and an exit code.</summary>
    /// <param name="error">Where the sentence goes.</param>
    /// <param name="run">What to run; its result is the exit code.</param>
    public static async Task<int> EndingInWordsAsync(TextWriter error, Func<Task<int>> run)
    {
        try
        {
            return await run();
        }
        catch (HostSettingsException refused)
        {
            await error.WriteLineAsync($"Settings that cannot be used:{Environment.NewLine}{refused.Message}");
            return HostExitCode.SettingsRefused;
        }
        catch (IOException busy) when (busy.InnerException is AddressInUseException)
        {
            await error.WriteLineAsync(
                $"{busy.Message} Stop what listens there, or choose another address: {SettingNames.HttpAddress}, {SettingNames.GrpcAddress}, "
                + $"{SettingNames.LocalAddress} of the API, {SettingNames.WorkerAddress} of the worker.");
            return HostExitCode.SettingsRefused;
        }
        catch (Exception failure) when (failure is DatabaseNotReachedException or LocalPostgresException)
        {
            await error.WriteLineAsync(failure.Message);
            return HostExitCode.DatabaseNotReached;
        }
        catch (OperationCanceledException)
        {
            return HostExitCode.Stopped; // asked to stop while it waited for the database
        }
    }
}
