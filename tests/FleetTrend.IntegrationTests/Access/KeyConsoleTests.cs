using System.Text;
using System.Text.Json.Nodes;
using FleetTrend.Cli.Keys;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store.Keys;
using FleetTrend.Store.Sources;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>The commands about keys, on the database of a running server.</summary>
[Collection(SharedPostgres.Name)]
public sealed class KeyConsoleTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly StringBuilder output = new();
    private readonly StringBuilder error = new();
    private ApiServer server = null!;
    private KeyConsole console = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        console = new KeyConsole(
            server.Services.GetRequiredService<KeyStore>(), server.Services.GetRequiredService<SourceStore>(),
                new StringWriter(output), new StringWriter(error));
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task A_key_made_here_works_at_once_and_its_source_is_registered()
    {
        Assert.Equal(0, await console.CreateAsync("tablet [1]", "hangar-two", ["records-write", "trends-read"], json: false, default));

        var key = output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries)[^1].Trim();
        var own = await new AccessService.AccessServiceClient(server.ChannelWith(key)).GetOwnKeyAsync(new GetOwnKeyRequest());
        Assert.Equal(("tablet [1]", "hangar-two"), (own.Key.Name, own.Key.Source));
        Assert.Equal([Scope.RecordsWrite, Scope.TrendsRead], own.Key.Scopes);
        Assert.Contains("tablet [1]", output.ToString(), StringComparison.Ordinal);
        Assert.Contains("Registered the source hangar-two", output.ToString(), StringComparison.Ordinal);
        Assert.Empty(error.ToString());
    }

    [Fact]
    public async Task That_a_source_was_registered_is_said_and_only_then()
    {
        Assert.Equal(0, await console.CreateAsync("one", "hangar-two", ["records-write"], json: true, default));
        Assert.Equal("hangar-two", (string?)Json()["registeredSource"]);
        Assert.Equal(0, await console.CreateAsync("two", "hangar-two", ["records-write"], json: true, default));
        Assert.Null((string?)Json()["registeredSource"]);
        Assert.Equal(0, await console.CreateAsync("three", "hangar-two", ["records-write"], json: false, default));
        Assert.DoesNotContain("Registered", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Keys_are_listed_and_revoked_and_JSON_says_the_same()
    {
        Assert.Equal(0, await console.CreateAsync("director", null, ["trends-read"], json: true, default));
        var made = Json();
        var id = (string)made["key"]!["keyId"]!;
        Assert.StartsWith($"ftk_{id}_", (string)made["keyText"]!, StringComparison.Ordinal);
        Assert.Null(made["key"]!["revokeTime"]);

        Assert.Equal(0, await console.ListAsync(json: true, default));
        Assert.Contains(Json()["keys"]!.AsArray(), key => (string)key!["keyId"]! == id && (string)key["scopes"]![0]! == "trends-read");

        Assert.Equal(0, await console.RevokeAsync(id, json: true, default));
        Assert.NotNull((string?)Json()["key"]!["revokeTime"]);
        Assert.Equal(0, await console.ListAsync(json: false, default));
        Assert.Contains(id, output.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", null, "trends-read", "name")]
    [InlineData("x", null, "", "--scope")]
    [InlineData("x", null, "read", "--scope, value 'read'")]
    [InlineData("x", null, "records-write", "--source")]
    [InlineData("x", "Shop Cards", "records-write", "--source, value 'Shop Cards'")]
    public async Task What_makes_no_sense_is_said_and_makes_no_key(string name, string? source, string scope, string named)
    {
        Assert.Equal(2, await console.CreateAsync(name, source, scope.Length == 0 ? [] : [scope], json: false, default));

        Assert.StartsWith(named, error.ToString(), StringComparison.Ordinal);
        Assert.Empty(output.ToString());
        Assert.Single((await server.Access.ListKeysAsync(new ListKeysRequest())).Keys);
    }

    [Fact]
    public async Task A_whole_key_in_place_of_its_identifier_is_not_repeated()
    {
        var key = await server.CreateKeyAsync(ShopCards.Source, KeyScope.RecordsWrite);

        Assert.Equal(2, await console.RevokeAsync(key, json: false, default));

        Assert.Contains(key.Split('_')[1], error.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(key.Split('_')[2], error.ToString(), StringComparison.Ordinal);
    }

    private JsonNode Json()
    {
        var node = JsonNode.Parse(output.ToString())!;
        output.Clear();
        return node;
    }
}
