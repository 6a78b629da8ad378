using System.Diagnostics;
using System.Globalization;

namespace FleetTrend.IntakeBenchmark;

/// <summary>The API in a process of its own, so that its memory and its processor time are its own.</summary>
internal sealed class ServerProcess : IAsyncDisposable
{
    private readonly Process _process;

    private ServerProcess(Process process, Uri address)
    {
        _process = process;
        Address = address;
    }

    /// <summary>Where gRPC answers.</summary>
    public Uri Address { get; }

    /// <summary>Memory that the process holds now, in MiB (Linux: VmRSS).</summary>
    public double ResidentMebibytes
    {
        get
        {
            var line = File.ReadLines($"/proc/{_process.Id}/status").First(l => l.StartsWith("VmRSS:", StringComparison.Ordinal));
            return double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) / 1024;
        }
    }

    /// <summary>Starts this program again as the server.</summary>
    public static async Task<ServerProcess> StartAsync(string connectionString)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!, [BenchmarkServer.Verb])
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            Environment = { [BenchmarkServer.DatabaseVariable] = connectionString },
        };
        var process = Process.Start(start)!;
        var address = await process.StandardOutput.ReadLineAsync()
            ?? throw new InvalidOperationException("The server ended before it said where it listens.");
        return new ServerProcess(process, new Uri(address));
    }

    public async ValueTask DisposeAsync()
    {
        _process.StandardInput.Close();
        await _process.WaitForExitAsync();
        _process.Dispose();
    }
}
