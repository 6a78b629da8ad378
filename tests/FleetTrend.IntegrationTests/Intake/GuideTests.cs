using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using FleetTrend.Contracts.V1;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>What protos/README.md shows works as it stands there.</summary>
[Collection(SharedPostgres.Name)]
public sealed class GuideTests(PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly string Guide = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "guide", "README.md"));

    private ApiServer _server = null!;

    public async Task InitializeAsync() => _server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await _server.DisposeAsync();

    [Fact]
    public async Task Every_curl_command_is_accepted()
    {
        var commands = Regex.Matches(
            Guide, @"^curl -sS -H ""authorization: Bearer \$KEY"" http://127\.0\.0\.1:5080(?<path>/\S+) --json '(?<body>.*?)'$",
            RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.NonBacktracking);
        Assert.Equal(4, commands.Count);
        foreach (Match command in commands)
        {
            using var content = new StringContent(command.Groups["body"].Value, Encoding.UTF8, "application/json");
            using var response = await _server.Http.PostAsync(command.Groups["path"].Value, content);
            var body = await response.Content.ReadAsStringAsync();
            Assert.True(response.StatusCode == HttpStatusCode.OK && !body.Contains("REFUSED"), body);
        }
    }

    [Fact]
    public async Task The_client_pushes_and_pushes_again()
    {
        await ShopCards.RegisterAsync(_server);
        var client = new ShopClient(_server.Intake);
        Record[] records = [ShopCards.Aircraft("ZZ-A01"), ShopCards.Finding("card 1"), ShopCards.Finding("card 2", hours: -1)];

        var first = await client.PushAsync(records, CancellationToken.None);
        var second = await client.PushAsync(records, CancellationToken.None);

        Assert.Equal([RecordState.Accepted, RecordState.Accepted, RecordState.Refused], first.Select(o => o.State));
        Assert.Equal([RecordState.Unchanged, RecordState.Unchanged, RecordState.Refused], second.Select(o => o.State));
        Assert.Contains("[NUMBER_OUT_OF_RANGE]", ShopClient.Explain(first[2]));
        Assert.Equal(ShopClient.Explain(first[1]), ShopClient.Explain(second[1]));
    }

    [Fact]
    public void The_client_in_the_guide_is_the_one_that_runs_here() =>
        Assert.Contains(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "guide", "ShopClient.cs")).TrimEnd(), Guide);
}
