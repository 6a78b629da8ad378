using FleetTrend.Api;
using FleetTrend.Api.Access;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>What a new installation begins with.</summary>
[Collection(SharedPostgres.Name)]
public sealed class FirstKeyTests(PostgresFixture postgres) : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fleettrend-key-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task An_empty_installation_gets_one_key_in_a_file_of_its_owner_and_the_log_says_where()
    {
        using var log = new LineLog();
        await using var server = await StartAsync(log);
        await using (var command = server.Database.DataSource.CreateCommand("delete from api_keys")) // that of the test
            await command.ExecuteNonQueryAsync();
        var file = FirstKey.PathIn(server.Services.GetRequiredService<HostSettings>());
        await File.WriteAllTextAsync(file, "of a database that is gone");

        await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => ApiHost.PrepareAsync(server.App, default)));
        var text = (await File.ReadAllTextAsync(file)).TrimEnd();
        await ApiHost.PrepareAsync(server.App, default);

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        Assert.Equal(text, (await File.ReadAllTextAsync(file)).TrimEnd());
        var access = new AccessService.AccessServiceClient(server.ChannelWith(text));
        var only = Assert.Single((await access.ListKeysAsync(new ListKeysRequest())).Keys);
        Assert.Equal([Scope.Administer], only.Scopes);
        Assert.Contains(file, Assert.Single(log.Lines, line => line.Contains(" 3205:", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.DoesNotContain(log.Lines, line => line.Contains(text.Split('_')[2], StringComparison.Ordinal));
    }

    [Fact]
    public async Task Where_the_file_cannot_be_written_there_is_no_key_that_nobody_knows()
    {
        await using var server = await StartAsync(null);
        await using (var command = server.Database.DataSource.CreateCommand("delete from api_keys"))
            await command.ExecuteNonQueryAsync();
        Directory.CreateDirectory(FirstKey.PathIn(server.Services.GetRequiredService<HostSettings>()));

        var failure = await Assert.ThrowsAsync<IOException>(() => ApiHost.PrepareAsync(server.App, default));

        Assert.Contains(SettingNames.DataFolder, failure.Message, StringComparison.Ordinal);
        await using var count = server.Database.DataSource.CreateCommand("select count(*) from api_keys");
        Assert.Equal(0L, await count.ExecuteScalarAsync());
    }

    private Task<ApiServer> StartAsync(LineLog? log) => ApiServer.StartAsync(
        postgres, settings => settings with { DataFolder = folder.FullName },
        builder =>
        {
            if (log is not null)
                builder.Logging.AddProvider(log);
        });
}
