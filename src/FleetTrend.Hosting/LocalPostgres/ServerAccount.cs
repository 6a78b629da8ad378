namespace FleetTrend.Hosting.LocalPostgres;

/// <summary>The operating system account under which the server runs: our own, or a lesser one when we are root,
/// because PostgreSQL refuses to run as root.</summary>
/// <param name="Ids">"uid:gid" to change to; null keeps our own account.</param>
internal sealed record ServerAccount(string? Ids)
{
    /// <summary>The account of this process.</summary>
    public static ServerAccount Self { get; } = new((string?)null);

    /// <summary>The account for the cluster in <paramref name="clusterFolder"/>: its owner when it exists, else
    /// the system account <c>postgres</c>.</summary>
    /// <exception cref="LocalPostgresException">Root without an account to change to.</exception>
    public static async Task<ServerAccount> ForAsync(string clusterFolder, CancellationToken ct)
    {
        if (!Environment.IsPrivilegedProcess)
            return Self;
        if (Directory.Exists(clusterFolder))
        {
            var owner = await ServerCommand.RunAsync(Self, "stat", ["-c", "%u:%g", clusterFolder], ct);
            if (owner.ExitCode == 0 && !owner.Output.StartsWith("0:", StringComparison.Ordinal))
                return new ServerAccount(owner.Output);
        }

        var user = await ServerCommand.RunAsync(Self, "id", ["-u", "postgres"], ct);
        var group = await ServerCommand.RunAsync(Self, "id", ["-g", "postgres"], ct);
        return user.ExitCode == 0 && group.ExitCode == 0
            ? new ServerAccount($"{user.Output}:{group.Output}")
            : throw new LocalPostgresException(
                "PostgreSQL does not run as root, and there is no account 'postgres' to run it under. Create one "
                + "(useradd --system postgres), start the product as another user, or give a running server in "
                + "FLEETTREND_DATABASE.");
    }

    /// <summary>The command line that runs <paramref name="command"/> under this account.</summary>
    public IReadOnlyList<string> Wrap(IReadOnlyList<string> command)
    {
        if (Ids is null)
            return command;
        var ids = Ids.Split(':');
        return ["setpriv", "--reuid", ids[0], "--regid", ids[1], "--clear-groups", "--inh-caps=-all", .. command];
    }

    /// <summary>Gives a file or a whole folder to this account.</summary>
    /// <exception cref="LocalPostgresException">The file system refuses.</exception>
    public async Task TakeOwnershipAsync(string path, CancellationToken ct)
    {
        if (Ids is null)
            return;
        var result = await ServerCommand.RunAsync(Self, "chown", ["-R", Ids, path], ct);
        if (result.ExitCode != 0)
            throw new LocalPostgresException($"'{path}' cannot be given to the server's account: {result.Output}");
    }
}
