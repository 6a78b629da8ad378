using System.Security.Cryptography;
using System.Text;

namespace FleetTrend.Hosting.LocalPostgres;

/// <summary>The folder of one local server: cluster, password, locks. Open to be passed through by the server's
/// account; what is secret in it is closed.</summary>
internal sealed record ServerFolder(string Path)
{
    private const UnixFileMode PassThrough =
        UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute
        | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute;

    public string Cluster => System.IO.Path.Combine(Path, "cluster");

    /// <summary>Where initdb works; renamed to <see cref="Cluster"/> when complete, so that a half-made cluster is
    /// never taken for a whole one.</summary>
    public string NewCluster => System.IO.Path.Combine(Path, "cluster.new");

    public string PasswordFile => System.IO.Path.Combine(Path, "password");
    public string StartLock => System.IO.Path.Combine(Path, "start.lock");
    public string UsersLock => System.IO.Path.Combine(Path, "users.lock");
    public string LogFile => System.IO.Path.Combine(Cluster, "server.log");

    public bool HasCluster => File.Exists(System.IO.Path.Combine(Cluster, "PG_VERSION"));

    /// <summary>Chooses and creates the folder below <paramref name="dataFolder"/>. When we are root and a parent is
    /// closed to other accounts (a clone in /root), a folder of its own under /var/lib/fleettrend serves instead:
    /// the parents' rights are not ours to change.</summary>
    /// <exception cref="LocalPostgresException">The folder cannot be created or used by this user.</exception>
    public static async Task<ServerFolder> OpenAsync(string dataFolder, CancellationToken ct)
    {
        var full = System.IO.Path.GetFullPath(dataFolder);
        var folder = Create(System.IO.Path.Combine(full, "postgres"));
        var account = await ServerAccount.ForAsync(folder.Cluster, ct);
        if (account == ServerAccount.Self || await CanReachAsync(account, folder, ct))
            return folder;

        var name = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(full)))[..12];
        return Create($"/var/lib/fleettrend/{name}");
    }

    private static ServerFolder Create(string path)
    {
        try
        {
            if (!Directory.Exists(path))
            {
                Directory.CreateDirectory(path);
                File.SetUnixFileMode(path, PassThrough);
            }
            return new ServerFolder(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new LocalPostgresException($"The data folder '{path}' cannot be created: {e.Message}", e);
        }
    }

    private static async Task<bool> CanReachAsync(ServerAccount account, ServerFolder folder, CancellationToken ct) =>
        (await ServerCommand.RunAsync(account, "test", ["-x", folder.Path], ct)).ExitCode == 0;
}
