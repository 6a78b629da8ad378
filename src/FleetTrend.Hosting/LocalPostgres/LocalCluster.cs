using System.Globalization;
using System.Security.Cryptography;
using Npgsql;

namespace FleetTrend.Hosting.LocalPostgres;

/// <summary>Makes the cluster and the database in it.</summary>
internal static class LocalCluster
{
    private const string Name = "fleettrend"; // of the database and of the role that owns it
    private const string Superuser = "postgres";

    /// <summary>In order of preference: C.UTF-8 knows upper and lower case beyond ASCII, C exists everywhere.</summary>
    private static readonly string[] Locales = ["C.UTF-8", "C"];

    private const string Settings =
        """

        # Written by FleetTrend when it made this cluster.
        listen_addresses = '127.0.0.1'
        unix_socket_directories = ''
        max_connections = 200
        fsync = on
        synchronous_commit = on
        full_page_writes = on
        shared_buffers = '256MB'
        max_wal_size = '4GB'
        checkpoint_timeout = '15min'
        timezone = 'UTC'
        log_timezone = 'UTC'

        """;

    /// <summary>Major version of the cluster in the folder.</summary>
    /// <exception cref="LocalPostgresException">The folder does not belong to us.</exception>
    public static int ReadMajor(ServerFolder folder)
    {
        try
        {
            return int.Parse(
                File.ReadAllText(Path.Combine(folder.Cluster, "PG_VERSION")).AsSpan().Trim(),
                CultureInfo.InvariantCulture);
        }
        catch (UnauthorizedAccessException e)
        {
            throw new LocalPostgresException(
                $"The cluster '{folder.Cluster}' belongs to another user. Start the product as that user or set "
                + "another data folder in FLEETTREND_DATA.", e);
        }
    }

    /// <summary>Makes an empty cluster: UTF-8, checksums, passwords by SCRAM, loopback only.</summary>
    /// <exception cref="LocalPostgresException">initdb failed; its words are in the message.</exception>
    public static async Task MakeAsync(
        ServerFolder folder, ServerAccount account, PostgresBinaries binaries, CancellationToken ct)
    {
        if (Directory.Exists(folder.Cluster))
        {
            throw new LocalPostgresException(
                $"'{folder.Cluster}' exists but holds no readable PostgreSQL cluster. Start the product as the user "
                + "who made it, or set another data folder in FLEETTREND_DATA.");
        }

        WriteSecret(folder.PasswordFile, RandomNumberGenerator.GetHexString(32, lowercase: true));
        var result = new CommandResult(1, "");
        foreach (var locale in Locales)
        {
            result = await RunInitdbAsync(folder, account, binaries, locale, ct);
            if (result.ExitCode == 0)
                break;
        }
        if (result.ExitCode != 0)
            throw new LocalPostgresException($"No cluster could be made in '{folder.Path}': {result.Output}");

        await File.AppendAllTextAsync(Path.Combine(folder.NewCluster, "postgresql.conf"), Settings, ct);
        Directory.Move(folder.NewCluster, folder.Cluster);
    }

    /// <summary>Makes the role and the database when they do not exist; returns the connection string.</summary>
    /// <exception cref="NpgsqlException">The server refuses.</exception>
    public static async Task<string> EnsureDatabaseAsync(ServerFolder folder, int port, CancellationToken ct)
    {
        var password = ReadPassword(folder);
        var target = new NpgsqlConnectionStringBuilder
        {
            Host = "127.0.0.1",
            Port = port,
            Database = "postgres",
            Username = Superuser,
            Password = password,
            Pooling = false,
            Timeout = 30,
        };
        await using (var connection = new NpgsqlConnection(target.ConnectionString))
        {
            await connection.OpenAsync(ct);
            if (!await ExistsAsync(connection, "SELECT 1 FROM pg_roles WHERE rolname = $1", ct))
            {
                // The password is hexadecimal, so it needs no escaping; a DDL statement takes no parameters.
                await ExecuteAsync(connection, $"CREATE ROLE {Name} LOGIN CREATEDB PASSWORD '{password}'", ct);
            }
            if (!await ExistsAsync(connection, "SELECT 1 FROM pg_database WHERE datname = $1", ct))
                await ExecuteAsync(connection, $"CREATE DATABASE {Name} OWNER {Name}", ct);
        }

        target.Database = Name;
        target.Username = Name;
        target.Pooling = true;
        return target.ConnectionString;
    }

    private static async Task<CommandResult> RunInitdbAsync(
        ServerFolder folder, ServerAccount account, PostgresBinaries binaries, string locale, CancellationToken ct)
    {
        // The server's account may neither read our password file nor write into our folder: it gets an empty folder
        // of its own and a copy of the password in it for as long as initdb runs.
        if (Directory.Exists(folder.NewCluster))
            Directory.Delete(folder.NewCluster, recursive: true);
        Directory.CreateDirectory(folder.NewCluster);
        var passwordCopy = folder.NewCluster + ".password";
        WriteSecret(passwordCopy, ReadPassword(folder));
        try
        {
            await account.TakeOwnershipAsync(folder.NewCluster, ct);
            await account.TakeOwnershipAsync(passwordCopy, ct);
            return await ServerCommand.RunAsync(
                account, binaries.Path("initdb"),
                ["-D", folder.NewCluster, "--username", Superuser, "--pwfile", passwordCopy,
                    "--auth-host=scram-sha-256", "--auth-local=scram-sha-256",
                    "--encoding=UTF8", "--locale", locale, "--data-checksums"],
                ct);
        }
        finally
        {
            File.Delete(passwordCopy);
        }
    }

    private static string ReadPassword(ServerFolder folder)
    {
        try
        {
            return File.ReadAllText(folder.PasswordFile).Trim();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new LocalPostgresException(
                $"The password of the local PostgreSQL cannot be read from '{folder.PasswordFile}': {e.Message}", e);
        }
    }


    private static void WriteSecret(string path, string text)
    {
        File.Delete(path);
        using var file = new FileStream(path, new FileStreamOptions
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.Write,
            UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
        });
        using var writer = new StreamWriter(file);
        writer.Write(text);
    }

    private static async Task<bool> ExistsAsync(NpgsqlConnection connection, string query, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(query, connection);
        command.Parameters.AddWithValue(Name);
        return await command.ExecuteScalarAsync(ct) is not null;
    }

    private static async Task ExecuteAsync(NpgsqlConnection connection, string statement, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(statement, connection);
        await command.ExecuteNonQueryAsync(ct);
    }
}
