using System.ComponentModel;
using System.Diagnostics;

namespace FleetTrend.Hosting.LocalPostgres;

/// <summary>Runs the server's own programs, as the account that owns the cluster.</summary>
internal static class ServerCommand
{
    /// <summary>Runs <paramref name="program"/> to its end. PG* variables of the caller are not passed on: they would
    /// point the programs at another server. On cancellation the program is killed.</summary>
    /// <exception cref="LocalPostgresException">The program cannot be started.</exception>
    public static async Task<CommandResult> RunAsync(
        ServerAccount account, string program, IReadOnlyList<string> arguments, CancellationToken ct)
    {
        var command = account.Wrap([program, .. arguments]);
        var start = new ProcessStartInfo(command[0], command.Skip(1))
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = "/", // the caller's folder may be closed to the server's account
        };
        foreach (var name in start.Environment.Keys.Where(IsClientVariable).ToList())
            start.Environment.Remove(name);
        start.Environment["LC_ALL"] = "C";

        using var process = Start(start);
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync(ct);
        var errors = process.StandardError.ReadToEndAsync(ct);
        try
        {
            await process.WaitForExitAsync(ct);
            return new CommandResult(process.ExitCode, (await output + await errors).Trim());
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw;
        }
    }

    private static bool IsClientVariable(string name) => name.StartsWith("PG", StringComparison.Ordinal);

    private static Process Start(ProcessStartInfo start)
    {
        try
        {
            return Process.Start(start) ?? throw new LocalPostgresException($"'{start.FileName}' did not start.");
        }
        catch (Win32Exception e)
        {
            throw new LocalPostgresException($"'{start.FileName}' could not be started: {e.Message}.", e);
        }
    }
}
