using System.Text;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store.Keys;
using Grpc.Core;
using Microsoft.Extensions.Logging;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>No line of the log holds a key, whatever is done with it and however much is logged.</summary>
[Collection(SharedPostgres.Name)]
public sealed class SecretTests(PostgresFixture postgres)
{
    [Fact]
    public async Task No_log_line_holds_a_key()
    {
        using var log = new LineLog();
        var secrets = new List<string>();
        await using (var server = await ApiServer.StartAsync(postgres, configure: builder =>
        {
            builder.Logging.SetMinimumLevel(LogLevel.Trace);
            builder.Logging.AddFilter(null, LogLevel.Trace);
            builder.Logging.AddProvider(log);
        }))
        {
            await ShopCards.RegisterAsync(server);
            secrets.Add(server.Key);
            var overGrpc = await server.Access.CreateKeyAsync(new CreateKeyRequest { Name = "one", Source = ShopCards.Source, Scopes = { Scope.RecordsWrite } });
            secrets.Add(overGrpc.KeyText);
            using var content = new StringContent("""{"name": "two", "scopes": ["SCOPE_TRENDS_READ"]}""", Encoding.UTF8, "application/json");
            using var overJson = await server.Http.PostAsync("v1/keys", content);
            secrets.Add((string)System.Text.Json.Nodes.JsonNode.Parse(await overJson.Content.ReadAsStringAsync())!["keyText"]!);
            secrets.Add(KeyText.Create().Reveal());
            await server.Access.RevokeKeyAsync(new RevokeKeyRequest { KeyId = overGrpc.Key.KeyId });
            foreach (var key in secrets.ToList())
                await UseAsync(server, key);
        }

        Assert.True(log.Lines.Count > 200, $"{log.Lines.Count} lines");
        foreach (var secret in secrets.Select(key => key.Split('_')[2]))
            Assert.DoesNotContain(log.Lines, line => line.Contains(secret, StringComparison.OrdinalIgnoreCase));
    }

    private static async Task UseAsync(ApiServer server, string key)
    {
        var channel = server.ChannelWith(key);
        using var http = server.HttpWith(key);
        using (await http.GetAsync("v1/keys:own"))
        using (await http.GetAsync("v1/flags"))
        using (await http.GetAsync("nowhere"))
        {
        }

        await IgnoreRefusalAsync(async () => await new AccessService.AccessServiceClient(channel).GetOwnKeyAsync(new GetOwnKeyRequest()));
        await IgnoreRefusalAsync(async () => await new IntakeService.IntakeServiceClient(channel).PushRecordAsync(
            new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A01") }));
        await IgnoreRefusalAsync(async () =>
        {
            using var stream = new IntakeService.IntakeServiceClient(channel).StreamRecords();
            await stream.RequestStream.CompleteAsync();
            await stream.ResponseStream.MoveNext(CancellationToken.None);
        });
    }

    private static async Task IgnoreRefusalAsync(Func<Task> call)
    {
        try
        {
            await call();
        }
        catch (RpcException)
        {
            // What is refused is logged, and that is what this test looks at.
        }
    }
}
