using Npgsql;
using Xunit.Abstractions;

namespace FleetTrend.IntegrationTests;

/// <summary>The tests' own database server.</summary>
[Collection(SharedPostgres.Name)]
public sealed class PostgresFixtureTests(PostgresFixture postgres, ITestOutputHelper output)
{
    [Fact]
    public void The_server_is_of_the_kind_that_was_asked_for()
    {
        output.WriteLine($"PostgreSQL kind: {postgres.Kind}");

        Assert.Equal(PostgresFixture.Forced ?? postgres.Kind, postgres.Kind);
    }

    [Fact]
    public async Task Each_database_starts_as_a_copy_of_its_template_and_is_its_own()
    {
        await using var first = await CreateAsync();
        await using var second = await CreateAsync();

        await ExecuteAsync(first, "INSERT INTO hours VALUES (812.4)");

        Assert.Equal(2L, await ExecuteAsync(first, "SELECT count(*) FROM hours"));
        Assert.Equal(1L, await ExecuteAsync(second, "SELECT count(*) FROM hours"));
    }

    private Task<TestDatabase> CreateAsync() => postgres.CreateDatabaseAsync(
        "fixture test", async connectionString =>
        {
            await using var source = NpgsqlDataSource.Create(connectionString);
            await using var command = source.CreateCommand(
                "CREATE TABLE hours (hours numeric(9,1)); INSERT INTO hours VALUES (705.0)");
            await command.ExecuteNonQueryAsync();
        });

    private static async Task<object?> ExecuteAsync(TestDatabase database, string statement)
    {
        await using var command = database.DataSource.CreateCommand(statement);
        return await command.ExecuteScalarAsync();
    }
}
