using System.Net;
using System.Net.Sockets;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace FleetTrend.Hosting.LocalPostgres;

/// <summary>
/// A PostgreSQL that the product runs for itself, for a shop without a database server. It listens on the loopback
/// address only, asks for a generated password, and writes durably (fsync on).
/// <para>Several processes may use one data folder at a time: the first starts the server, the last stops it. The
/// server outlives a product that is killed, and the next start takes it over.</para>
/// </summary>
public sealed class LocalPostgresServer : IAsyncDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan StopTimeout = TimeSpan.FromSeconds(60);
    private const int PortAttempts = 5;

    private readonly ServerFolder serverFolder;
    private readonly ServerAccount serverAccount;
    private readonly PostgresBinaries serverBinaries;
    private readonly TimeSpan startTimeout;
    private readonly ILogger logger;
    private FileStream? users;

    private LocalPostgresServer(
        ServerFolder folder, ServerAccount account, PostgresBinaries binaries, TimeSpan startTimeout, ILogger logger)
    {
        serverFolder = folder;
        serverAccount = account;
        serverBinaries = binaries;
        this.startTimeout = startTimeout;
        this.logger = logger;
    }

    /// <summary>Npgsql connection string of the database <c>fleettrend</c>. Holds the password: never log it.</summary>
    public string ConnectionString { get; private set; } = "";

    /// <summary>The TCP port on 127.0.0.1. It may differ after each start.</summary>
    public int Port { get; private set; }

    /// <summary>Process id of the server.</summary>
    public int ProcessId { get; private set; }

    /// <summary>Where the cluster, its password and its log are: <c>postgres</c> in the data folder, or a folder under
    /// /var/lib/fleettrend when we are root and the data folder is closed to the server's account.</summary>
    public string Folder => serverFolder.Path;

    /// <summary>Major version of the server's programs, e.g. 17.</summary>
    public int MajorVersion => serverBinaries.Major;

    /// <summary>Starts the server of a data folder, or joins it when it runs already. Makes the cluster and the
    /// database when they do not exist.</summary>
    /// <exception cref="LocalPostgresException">No server programs, no right to the folder, or the server does not
    /// start; the message says what to do.</exception>
    public static async Task<LocalPostgresServer> StartAsync(
        LocalPostgresOptions options, ILogger logger, CancellationToken ct)
    {
        if (!OperatingSystem.IsLinux())
        {
            throw new LocalPostgresException(
                "The local PostgreSQL is for Linux. Give a running server in FLEETTREND_DATABASE.");
        }

        var folder = await ServerFolder.OpenAsync(options.DataFolder, ct);
        await using var starting = await FolderLock.TakeAsync(folder.StartLock, options.StartTimeout, ct);
        var account = await ServerAccount.ForAsync(folder.Cluster, ct);
        var major = folder.HasCluster ? LocalCluster.ReadMajor(folder) : (int?)null;
        var binaries = await PostgresBinaries.FindAsync(options.BinaryFolders, major, ct);
        if (!folder.HasCluster)
        {
            HostingLog.MakingCluster(logger, binaries.Major, folder.Path);
            await LocalCluster.MakeAsync(folder, account, binaries, ct);
        }

        var server = new LocalPostgresServer(folder, account, binaries, options.StartTimeout, logger);
        await server.JoinOrStartAsync(ct);
        return server;
    }

    /// <summary>Leaves the server, and stops it when no other process uses it.</summary>
    public async ValueTask DisposeAsync()
    {
        if (users is null)
            return;
        await using var stopping = await FolderLock.TakeAsync(serverFolder.StartLock, StopTimeout, CancellationToken.None);
        await users.DisposeAsync();
        users = null;
        await using var alone = FolderLock.TryTake(serverFolder.UsersLock);
        if (alone is null)
        {
            HostingLog.LeavingServer(logger, serverFolder.Path);
            return;
        }

        var stop = await ServerCommand.RunAsync(
            serverAccount, serverBinaries.Path("pg_ctl"),
            ["stop", "-D", serverFolder.Cluster, "-m", "fast", "-w", "-t", $"{StopTimeout.TotalSeconds:0}"],
            CancellationToken.None);
        if (stop.ExitCode == 0)
            HostingLog.ServerStopped(logger, serverFolder.Path);
        else
            HostingLog.ServerNotStopped(logger, serverFolder.Path, stop.Output);
    }

    private async Task JoinOrStartAsync(CancellationToken ct)
    {
        var running = await FindRunningAsync(ct);
        var joined = running is not null;
        running ??= await StartServerAsync(ct);
        Port = running.Port;
        ProcessId = running.ProcessId;
        if (joined)
            HostingLog.ServerJoined(logger, ProcessId, Port);
        else
            HostingLog.ServerStarted(logger, serverBinaries.Major, ProcessId, Port, serverFolder.Path);

        users = FolderLock.Share(serverFolder.UsersLock);
        try
        {
            ConnectionString = await LocalCluster.EnsureDatabaseAsync(serverFolder, Port, ct);
        }
        catch (NpgsqlException e)
        {
            await users.DisposeAsync();
            users = null;
            throw new LocalPostgresException(
                $"The local PostgreSQL runs (port {Port}) but refuses the product: {e.Message} Its log is "
                + $"'{serverFolder.LogFile}'.", e);
        }
    }

    /// <summary>The server that serves our cluster and accepts connections, or null when there is none. One that is
    /// just starting or stopping is waited for.</summary>
    private async Task<PostmasterFile?> FindRunningAsync(CancellationToken ct)
    {
        var end = TimeProvider.System.GetUtcNow() + startTimeout;
        while (true)
        {
            var file = PostmasterFile.Read(serverFolder.Cluster);
            if (file is null)
                return null;
            if (!file.IsServing(serverFolder.Cluster))
            {
                if (file.IsSomeProcess)
                    PostmasterFile.Disown(serverFolder.Cluster);
                return null;
            }
            if (file.IsReady)
                return file;
            if (TimeProvider.System.GetUtcNow() > end)
            {
                throw new LocalPostgresException(
                    $"The local PostgreSQL (process {file.ProcessId}) has been '{file.Status}' for "
                    + $"{startTimeout.TotalSeconds:0} s. Its log is '{serverFolder.LogFile}'.");
            }
            await Task.Delay(Pause, ct);
        }
    }

    private async Task<PostmasterFile> StartServerAsync(CancellationToken ct)
    {
        CommandResult result = new(0, "");
        for (var attempt = 1; attempt <= PortAttempts; attempt++)
        {
            var port = FreePort();
            result = await ServerCommand.RunAsync(
                serverAccount, serverBinaries.Path("pg_ctl"),
                ["start", "-D", serverFolder.Cluster, "-l", serverFolder.LogFile, "-o", $"-p {port}", "-w",
                    "-t", $"{startTimeout.TotalSeconds:0}"],
                ct);
            if (result.ExitCode == 0 && PostmasterFile.Read(serverFolder.Cluster) is { IsReady: true } file)
                return file;
            if (!PortWasTaken())
                break;
        }
        throw new LocalPostgresException(
            $"The local PostgreSQL in '{serverFolder.Path}' does not start. {result.Output}{Environment.NewLine}"
            + string.Join(Environment.NewLine, LastLogLines(8)));
    }

    /// <summary>Between finding a free port and the server's bind another process may take it.</summary>
    private bool PortWasTaken() =>
        LastLogLines(8).Any(l => l.Contains("could not bind", StringComparison.Ordinal)
            && l.Contains("127.0.0.1", StringComparison.Ordinal));

    private List<string> LastLogLines(int count) =>
        File.Exists(serverFolder.LogFile) ? [.. File.ReadLines(serverFolder.LogFile).TakeLast(count)] : [];

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
