using DotNet.Testcontainers.Configurations;
using FleetTrend.Hosting.LocalPostgres;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using Testcontainers.PostgreSql;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace FleetTrend.IntegrationTests;

/// <summary>
/// A real PostgreSQL for the tests of this assembly. In this order: a container where a container engine answers,
/// server programs on this machine, a running server given in FLEETTREND_TEST_DATABASE.
/// FLEETTREND_TEST_POSTGRES (container, local, given) forces one: when that one is not to be had, the tests fail.
/// FLEETTREND_TEST_POSTGRES_IMAGE names another image than <see cref="PublicImage"/>.
/// </summary>
public sealed class PostgresFixture(IMessageSink messages) : IAsyncLifetime
{
    public const string PublicImage = "postgres:17-alpine";

    private static int databases; // of all fixtures: they may share a server that was given

    private readonly Dictionary<string, TestDatabase> templates = new(StringComparer.Ordinal);
    private string connectionString = "";
    private PostgreSqlContainer? container;
    private LocalPostgresServer? local;
    private DirectoryInfo? localFolder;

    public PostgresKind Kind { get; private set; }

    /// <summary>What was asked for in FLEETTREND_TEST_POSTGRES; null is "whatever is there".</summary>
    public static PostgresKind? Forced => Variable("FLEETTREND_TEST_POSTGRES") is { } text
        ? Enum.Parse<PostgresKind>(text, ignoreCase: true)
        : null;

    public async Task InitializeAsync()
    {
        var failures = new List<Exception>();
        foreach (var kind in Forced is { } forced ? [forced] : Enum.GetValues<PostgresKind>())
        {
            try
            {
                connectionString = await StartAsync(kind);
                Kind = kind;
                Say($"Integration tests run on PostgreSQL: {kind} ({await VersionAsync()})");
                return;
            }
            catch (Exception e) // whatever the reason: the next kind may work, and all reasons are in the failure
            {
                Say($"PostgreSQL is not to be had as {kind}: {e.Message}");
                failures.Add(e);
            }
        }
        throw new AggregateException("No PostgreSQL for the integration tests.", failures);
    }

    public async Task DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        foreach (var template in templates.Values)
            await template.DisposeAsync();
        if (container is not null)
            await container.DisposeAsync();
        if (local is not null)
            await local.DisposeAsync();
        localFolder?.Delete(recursive: true);
    }

    /// <summary>An empty database.</summary>
    public Task<TestDatabase> CreateDatabaseAsync() => CreateAsync("template0");

    /// <summary>A database that <paramref name="prepare"/> has filled (migrations, for one). It runs once per
    /// <paramref name="template"/> and assembly, with a connection string; every database is a copy of the result.</summary>
    public async Task<TestDatabase> CreateDatabaseAsync(string template, Func<string, Task> prepare)
    {
        if (!templates.TryGetValue(template, out var source))
        {
            source = await CreateDatabaseAsync();
            await prepare(source.ConnectionString);
            NpgsqlConnection.ClearAllPools(); // a database with open connections cannot be copied
            templates.Add(template, source);
        }
        return await CreateAsync(source.Name);
    }

    internal async Task ExecuteAsync(string statement)
    {
        await using var connection = new NpgsqlConnection(ConnectionStringOf("postgres", pooling: false));
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(statement, connection);
        await command.ExecuteNonQueryAsync();
    }

    private async Task<TestDatabase> CreateAsync(string template)
    {
        var name = $"fleettrend_test_{Environment.ProcessId}_{Interlocked.Increment(ref databases)}";
        await ExecuteAsync($"CREATE DATABASE {name} TEMPLATE {template}");
        return new TestDatabase(this, name, ConnectionStringOf(name, pooling: true));
    }

    private Task<string> StartAsync(PostgresKind kind) => kind switch
    {
        PostgresKind.Container => StartContainerAsync(),
        PostgresKind.Local => StartLocalAsync(),
        PostgresKind.Given => Task.FromResult(Variable("FLEETTREND_TEST_DATABASE")
            ?? throw new InvalidOperationException("FLEETTREND_TEST_DATABASE is not set.")),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of PostgreSQL."),
    };

    private async Task<string> StartContainerAsync()
    {
        if (TestcontainersSettings.OS.DockerEndpointAuthConfig is null)
        {
            throw new InvalidOperationException(
                "No container engine answers (one older than Docker 25 does only with DOCKER_API_VERSION set).");
        }
        var image = Variable("FLEETTREND_TEST_POSTGRES_IMAGE") ?? PublicImage;
        container = new PostgreSqlBuilder(image).Build();
        await container.StartAsync();
        return container.GetConnectionString();
    }

    private async Task<string> StartLocalAsync()
    {
        localFolder = Directory.CreateTempSubdirectory("fleettrend-test-");
        File.SetUnixFileMode(localFolder.FullName, (UnixFileMode)0b111_101_101); // the server has another account
        local = await LocalPostgresServer.StartAsync(
            new LocalPostgresOptions { DataFolder = localFolder.FullName }, NullLogger.Instance, default);
        return local.ConnectionString;
    }

    private async Task<string> VersionAsync()
    {
        await using var connection = new NpgsqlConnection(ConnectionStringOf("postgres", pooling: false));
        await connection.OpenAsync();
        return connection.PostgreSqlVersion.ToString();
    }

    private string ConnectionStringOf(string database, bool pooling) =>
        new NpgsqlConnectionStringBuilder(connectionString)
        {
            Database = database,
            Pooling = pooling,
            IncludeErrorDetail = true,
        }.ConnectionString;

    private void Say(string text) => messages.OnMessage(new DiagnosticMessage(text));

    private static string? Variable(string name) =>
        Environment.GetEnvironmentVariable(name) is { Length: > 0 } text ? text : null;
}
