using System.Diagnostics;
using System.Globalization;

namespace FleetTrend.Hosting.Tests.LocalPostgres;

/// <summary>A child process that uses the local PostgreSQL of a data folder (Program.cs of this project).</summary>
internal sealed class ProductProcess : IDisposable
{
    private static readonly TimeSpan Limit = TimeSpan.FromMinutes(2);

    private readonly Process running;

    private ProductProcess(Process process, int serverProcessId, string connectionString)
    {
        running = process;
        ServerProcessId = serverProcessId;
        ConnectionString = connectionString;
    }

    public int ServerProcessId { get; }

    public string ConnectionString { get; }

    public static async Task<ProductProcess> StartAsync(string dataFolder)
    {
        var process = Process.Start(new ProcessStartInfo(
            "dotnet", [typeof(ProductProcess).Assembly.Location, dataFolder])
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var errors = process.StandardError.ReadToEndAsync();
        var line = await process.StandardOutput.ReadLineAsync().WaitAsync(Limit);
        if (line is null)
            throw new InvalidOperationException($"The child ended: {await errors}");
        var parts = line.Split(' ', 2);
        return new ProductProcess(process, int.Parse(parts[0], CultureInfo.InvariantCulture), parts[1]);
    }

    /// <summary>kill -9: nothing in the child gets a chance to tidy up.</summary>
    public async Task KillAsync()
    {
        running.Kill();
        await running.WaitForExitAsync().WaitAsync(Limit);
    }

    /// <summary>Lets the child end as a product does on SIGTERM.</summary>
    public async Task EndAsync()
    {
        running.StandardInput.Close();
        await running.WaitForExitAsync().WaitAsync(Limit);
        Assert.Equal(0, running.ExitCode);
    }

    public void Dispose()
    {
        if (!running.HasExited)
            running.Kill();
        running.Dispose();
    }
}
