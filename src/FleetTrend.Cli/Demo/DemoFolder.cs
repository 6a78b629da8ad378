using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using Microsoft.Extensions.Logging;

namespace FleetTrend.Cli.Demo;

/// <summary>The data folder of the demo, held by one demo at a time.</summary>
internal sealed class DemoFolder : IDisposable
{
    private readonly FileStream held;

    private DemoFolder(FileStream held) => this.held = held;

    /// <summary>Takes the folder; the operating system gives it back when the process ends, however it ends.</summary>
    /// <exception cref="DemoRefusedException">Another demo runs on it.</exception>
    public static DemoFolder Enter(string path)
    {
        Directory.CreateDirectory(path);
        try
        {
            return new DemoFolder(new FileStream(Path.Combine(path, "demo.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException)
        {
            throw new DemoRefusedException($"Another demo runs on {path}. Stop it, or set {SettingNames.DataFolder} to another folder.");
        }
    }

    /// <summary>Drops what an earlier demo left in the database and in the mailbox folder.</summary>
    public static async Task EmptyAsync(HostSettings settings, CancellationToken ct)
    {
        await using var database = await HostDatabase.OpenAsync(settings, LoggerFactory.Create(_ => { }), ct);
        await using var command = database.DataSource.CreateCommand(
            """
            DO $$
            DECLARE name text;
            BEGIN
                FOR name IN SELECT nspname FROM pg_namespace
                            WHERE nspname NOT LIKE 'pg\_%' AND nspname <> 'information_schema'
                LOOP
                    EXECUTE format('DROP SCHEMA %I CASCADE', name);
                END LOOP;
                CREATE SCHEMA public;
            END $$
            """);
        await command.ExecuteNonQueryAsync(ct);
        if (Directory.Exists(settings.Mail.Folder))
        {
            Directory.Delete(settings.Mail.Folder, recursive: true);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => held.Dispose();
}
