using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using FleetTrend.Hosting.Configuration;

namespace FleetTrend.PostgresBenchmarks.Processes;

/// <summary>The API or the worker as shipped, in a process of its own, so that memory and processor time are its own.</summary>
internal sealed class ProductProcess : IAsyncDisposable
{
    private const int KeptLines = 20;
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(100);

    private readonly Process running;
    private readonly ConcurrentQueue<string> lastLines = new();

    private ProductProcess(Process process, Uri grpcUrl, Uri httpUrl)
    {
        running = process;
        GrpcUrl = grpcUrl;
        HttpUrl = httpUrl;
    }

    /// <summary>Where the API's gRPC answers.</summary>
    public Uri GrpcUrl { get; }

    /// <summary>Where pages answer; of a worker only its health.</summary>
    public Uri HttpUrl { get; }

    /// <summary>Where its files go.</summary>
    public required string DataFolder { get; init; }

    /// <summary>Processor time used so far, of all its threads.</summary>
    public TimeSpan ProcessorTime
    {
        get
        {
            running.Refresh();
            return running.TotalProcessorTime;
        }
    }

    /// <summary>Memory that the process holds now, in megabytes (Linux: VmRSS).</summary>
    public double ResidentMegabytes => Status("VmRSS:");

    /// <summary>The most memory that the process has held at once, in megabytes (Linux: VmHWM).</summary>
    public double PeakMegabytes => Status("VmHWM:");

    public static Task<ProductProcess> StartApiAsync(string connectionString, string folder) =>
        StartAsync("FleetTrend.Api", connectionString, folder);

    /// <param name="connectionString">Its database.</param>
    /// <param name="folder">Where its files go.</param>
    /// <param name="processors">How many processors it takes itself to have; null for those of the machine.</param>
    public static Task<ProductProcess> StartWorkerAsync(string connectionString, string folder, int? processors) =>
        StartAsync("FleetTrend.Worker", connectionString, folder, processors);

    /// <summary>Ends it as an operating system would: at once.</summary>
    public async ValueTask DisposeAsync()
    {
        if (!running.HasExited)
            running.Kill();
        await running.WaitForExitAsync();
        running.Dispose();
    }

    private static async Task<ProductProcess> StartAsync(string project, string connectionString, string folder, int? processors = null)
    {
        var isWorker = project == "FleetTrend.Worker";
        string grpc = $"127.0.0.1:{FreePort()}", http = $"127.0.0.1:{FreePort()}";
        var configuration = new DirectoryInfo(AppContext.BaseDirectory).Name;
        var program = Path.GetFullPath(
            Path.Combine(AppContext.BaseDirectory, "..", "..", project, configuration, $"{project}.dll"));
        var dataFolder = Path.Combine(folder, project);
        var start = new ProcessStartInfo("dotnet", [program])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment =
            {
                [SettingNames.Database] = connectionString,
                [SettingNames.DataFolder] = dataFolder,
                [SettingNames.GrpcAddress] = grpc,
                [isWorker ? SettingNames.WorkerAddress : SettingNames.HttpAddress] = http,
                [SettingNames.CallsPerSecond] = "1000000",
                [SettingNames.CallsAtOnce] = "10000",
                ["Logging__LogLevel__Default"] = "Warning",
            },
        };
        if (processors is { } count)
            start.Environment["DOTNET_PROCESSOR_COUNT"] = count.ToString(CultureInfo.InvariantCulture);
        var product = new ProductProcess(
            new Process { StartInfo = start }, new Uri($"http://{grpc}"), new Uri($"http://{http}"))
        { DataFolder = dataFolder };
        product.running.OutputDataReceived += product.Keep;
        product.running.ErrorDataReceived += product.Keep;
        product.running.Start();
        product.running.BeginOutputReadLine();
        product.running.BeginErrorReadLine();
        await product.UntilReadyAsync(project);
        return product;
    }

    private async Task UntilReadyAsync(string project)
    {
        using var http = new HttpClient { BaseAddress = HttpUrl };
        for (var clock = Stopwatch.StartNew(); !await AnswersAsync(http); await Task.Delay(BetweenLooks))
        {
            if (running.HasExited || clock.Elapsed > Patience)
                throw new InvalidOperationException($"{project} does not become ready.\n{string.Join('\n', lastLines)}");
        }
    }

    private static async Task<bool> AnswersAsync(HttpClient http)
    {
        try
        {
            using var answer = await http.GetAsync(new Uri("/health/ready", UriKind.Relative));
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private double Status(string name)
    {
        var lines = File.ReadLines($"/proc/{running.Id}/status");
        var words = lines.First(l => l.StartsWith(name, StringComparison.Ordinal))
            .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        return double.Parse(words[1], CultureInfo.InvariantCulture) * 1_024 / 1e6;
    }

    private void Keep(object sender, DataReceivedEventArgs line)
    {
        if (line.Data is null)
            return;
        lastLines.Enqueue(line.Data);
        if (lastLines.Count > KeptLines)
            lastLines.TryDequeue(out _);
    }

    /// <summary>A port that was free a moment ago.</summary>
    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
