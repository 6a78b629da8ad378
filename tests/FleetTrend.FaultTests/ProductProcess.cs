using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace FleetTrend.FaultTests;

/// <summary>The API or the worker as a process of its own, so that it can be killed as an operating system would.</summary>
internal sealed class ProductProcess : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private static readonly ConcurrentDictionary<int, bool> GivenPorts = new();

    private readonly Process running;
    private readonly StringBuilder output = new();

    private ProductProcess(Process process) => running = process;

    public string Output
    {
        get
        {
            lock (output)
            {
                return output.ToString();
            }
        }
    }

    /// <summary>What it printed so far, line by line.</summary>
    public IReadOnlyList<string> Lines => Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Starts a project's program with settings and waits until it says that it is ready.</summary>
    public static async Task<ProductProcess> StartAsync(string project, string readyUrl, IReadOnlyDictionary<string, string> settings)
    {
        var product = Start(project, settings);
        using var http = new HttpClient();
        await Eventually.TrueAsync(
            async () =>
            {
                Assert.False(product.running.HasExited, product.Output);
                return await AnswersAsync(http, readyUrl);
            },
            Patience,
            () => $"{project} is not ready.\n{product.Output}");
        return product;
    }

    /// <summary>Runs a project's program with settings until it ends by itself: its exit code and what it printed.</summary>
    public static async Task<(int Code, string Output)> RunAsync(string project, IReadOnlyDictionary<string, string> settings)
    {
        using var product = Start(project, settings);
        using var limit = new CancellationTokenSource(Patience);
        await product.running.WaitForExitAsync(limit.Token);
        return (product.running.ExitCode, product.Output);
    }

    /// <summary>A port that was free a moment ago, and that no other test was given.</summary>
    public static int FreePort()
    {
        while (true)
        {
            using var listener = new TcpListener(IPAddress.Loopback, 0);
            listener.Start();
            var port = ((IPEndPoint)listener.LocalEndpoint).Port;
            if (GivenPorts.TryAdd(port, true))
                return port;
        }
    }

    /// <summary>kill -9.</summary>
    public void Kill()
    {
        running.Kill();
        running.WaitForExit();
    }

    public void Dispose()
    {
        if (!running.HasExited)
        {
            Kill();
        }

        running.Dispose();
    }

    private static ProductProcess Start(string project, IReadOnlyDictionary<string, string> settings)
    {
        var configuration = new DirectoryInfo(AppContext.BaseDirectory).Name;
        var program = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "..", "..", project, configuration, $"{project}.dll"));
        var start = new ProcessStartInfo("dotnet", [program]) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        start.Environment["DOTNET_TieredPGO"] = "0"; // what it measures pays off in a process that lives longer
        foreach (var (name, value) in settings)
        {
            start.Environment[name] = value;
        }

        var product = new ProductProcess(new Process { StartInfo = start });
        product.running.OutputDataReceived += product.Keep;
        product.running.ErrorDataReceived += product.Keep;
        product.running.Start();
        product.running.BeginOutputReadLine();
        product.running.BeginErrorReadLine();
        return product;
    }

    private void Keep(object sender, DataReceivedEventArgs line)
    {
        if (line.Data is null) // the stream has ended
            return;
        lock (output)
        {
            output.Append(line.Data).Append('\n');
        }
    }

    private static async Task<bool> AnswersAsync(HttpClient http, string url)
    {
        try
        {
            using var answer = await http.GetAsync(new Uri(url));
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }
}
