using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store.Keys;
using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>A key from its making to its end.</summary>
[Collection(SharedPostgres.Name)]
public sealed class KeyTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task A_key_is_shown_once_and_stored_as_a_hash()
    {
        var made = await CreateAsync("tablet", ShopCards.Source, Scope.RecordsWrite, Scope.TrendsRead);

        Assert.Matches("^ftk_[a-z2-7]{12}_[a-z2-7]{52}$", made.KeyText); // 12 and 52 characters of RFC 4648's base 32: 60 and 256 bits
        Assert.Equal(made.Key.KeyId, made.KeyText.Split('_')[1]);
        var secret = made.KeyText.Split('_')[2];
        await using var command = server.Database.DataSource.CreateCommand(
            "select count(*) filter (where k::text like '%' || @secret || '%'), count(*) filter (where secret_hash = sha256(@secret::bytea)) from api_keys k");
        command.Parameters.AddWithValue("secret", secret);
        await using var counts = await command.ExecuteReaderAsync();
        Assert.True(await counts.ReadAsync());
        Assert.Equal((0L, 1L), (counts.GetInt64(0), counts.GetInt64(1))); // the hash is PostgreSQL's own SHA-256 of the secret
        var listed = Assert.Single((await server.Access.ListKeysAsync(new ListKeysRequest())).Keys, key => key.KeyId == made.Key.KeyId);
        Assert.Equal(made.Key, listed);
        Assert.DoesNotContain(secret, listed.ToString());
    }

    [Fact]
    public async Task A_key_can_ask_what_it_is_and_leaves_the_time_of_its_last_use()
    {
        var made = await CreateAsync("tablet", ShopCards.Source, Scope.RecordsWrite);
        Assert.Null(made.Key.LastUsedTime);

        var own = await new AccessService.AccessServiceClient(server.ChannelWith(made.KeyText)).GetOwnKeyAsync(new GetOwnKeyRequest());

        Assert.Equal((made.Key.KeyId, ShopCards.Source), (own.Key.KeyId, own.Key.Source));
        Assert.Equal([Scope.RecordsWrite], own.Key.Scopes);
        var listed = (await server.Access.ListKeysAsync(new ListKeysRequest())).Keys.Single(key => key.KeyId == made.Key.KeyId);
        Assert.InRange(listed.LastUsedTime.ToDateTime(), made.Key.CreateTime.ToDateTime(), DateTime.UtcNow.AddMinutes(1));
    }

    [Fact]
    public async Task A_revoked_key_stays_revoked()
    {
        var made = await CreateAsync("tablet", "", Scope.TrendsRead);
        var first = await server.Access.RevokeKeyAsync(new RevokeKeyRequest { KeyId = made.Key.KeyId });
        var second = await server.Access.RevokeKeyAsync(new RevokeKeyRequest { KeyId = made.Key.KeyId });

        Assert.NotNull(first.Key.RevokeTime);
        Assert.Equal(first, second);
        await AssertRefusedAsync("KEY_NOT_FOUND", () => server.Access.RevokeKeyAsync(new RevokeKeyRequest { KeyId = "aaaaaaaaaaaa" }));
        await AssertRefusedAsync("PATTERN_MISMATCH", () => server.Access.RevokeKeyAsync(new RevokeKeyRequest { KeyId = made.KeyText }));
    }

    [Fact]
    public async Task Keys_are_listed_in_pages()
    {
        for (var i = 0; i < 3; i++)
            await CreateAsync($"number {i}", "", Scope.TrendsRead);
        var names = new List<string>();
        var token = "";
        do
        {
            var page = await server.Access.ListKeysAsync(new ListKeysRequest { PageSize = 2, PageToken = token });
            Assert.InRange(page.Keys.Count, 1, 2);
            names.AddRange(page.Keys.Select(key => key.Name));
            token = page.NextPageToken;
        }
        while (token.Length > 0);

        Assert.Equal(["of a test", "number 0", "number 1", "number 2"], names);
    }

    [Fact]
    public async Task A_key_that_makes_no_sense_is_refused()
    {
        await AssertRefusedAsync("FIELD_REQUIRED", () => CreateAsync("", "", Scope.TrendsRead));
        await AssertRefusedAsync("TEXT_TOO_LONG", () => CreateAsync(new string('x', 61), "", Scope.TrendsRead));
        await AssertRefusedAsync("FIELD_REQUIRED", () => CreateAsync("no scope", ""));
        await AssertRefusedAsync("FIELD_REQUIRED", () => CreateAsync("no source", "", Scope.RecordsWrite));
        await AssertRefusedAsync("FIELD_REQUIRED", () => CreateAsync("not told", "", Scope.Unspecified));
        await AssertRefusedAsync("ENUM_UNKNOWN", () => CreateAsync("unknown", "", (Scope)5));
        await AssertRefusedAsync("DUPLICATE_LINE", () => CreateAsync("twice", "", Scope.TrendsRead, Scope.TrendsRead));
        await AssertRefusedAsync("TOO_MANY_ITEMS", () => CreateAsync("five", "", Scope.TrendsRead, Scope.TrendsRead, Scope.TrendsRead, Scope.TrendsRead, Scope.TrendsRead));
        await AssertRefusedAsync("PATTERN_MISMATCH", () => CreateAsync("form", "Shop Cards", Scope.RecordsWrite));
        await AssertRefusedAsync("SOURCE_NOT_REGISTERED", () => CreateAsync("nobody", "nobody", Scope.RecordsWrite));
    }

    [Fact]
    public async Task An_open_stream_ends_when_its_key_is_revoked_and_what_was_acknowledged_stays()
    {
        await ShopCards.RegisterAsync(server);
        var made = await CreateAsync("tablet", ShopCards.Source, Scope.RecordsWrite);
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        using var call = new IntakeService.IntakeServiceClient(server.ChannelWith(made.KeyText)).StreamRecords(cancellationToken: limit.Token);
        await call.RequestStream.WriteAsync(new StreamRecordsRequest { Sequence = 1, Record = ShopCards.Aircraft("ZZ-A01") });
        Assert.True(await call.ResponseStream.MoveNext(limit.Token));
        Assert.Equal(RecordState.Accepted, call.ResponseStream.Current.Outcome.State);

        await server.Access.RevokeKeyAsync(new RevokeKeyRequest { KeyId = made.Key.KeyId });

        var end = await Assert.ThrowsAsync<RpcException>(() => call.ResponseStream.MoveNext(limit.Token));
        Assert.Equal((StatusCode.Unauthenticated, "KEY_REVOKED"), (end.StatusCode, end.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason));
        var again = await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A01") });
        Assert.Equal(RecordState.Unchanged, again.Outcome.State);
    }

    [Fact]
    public async Task A_key_revoked_by_another_process_is_refused_here_soon_after()
    {
        var key = await server.CreateKeyAsync(null, KeyScope.TrendsRead);
        var reports = new ReportService.ReportServiceClient(server.ChannelWith(key));
        await reports.ListReportsAsync(new ListReportsRequest());

        await using var command = server.Database.DataSource.CreateCommand(
            $"update api_keys set revoke_time = clock_timestamp() where id = '{key.Split('_')[1]}'");
        await command.ExecuteNonQueryAsync();

        await Eventually.TrueAsync(
            async () =>
            {
                try
                {
                    await reports.ListReportsAsync(new ListReportsRequest());
                    return false;
                }
                catch (RpcException refusal)
                {
                    return refusal.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason == "KEY_REVOKED";
                }
            });
    }

    private async Task<CreateKeyResponse> CreateAsync(string name, string source, params Scope[] scopes) =>
        await server.Access.CreateKeyAsync(new CreateKeyRequest { Name = name, Source = source, Scopes = { scopes } });

    private static Task AssertRefusedAsync<T>(string reason, Func<AsyncUnaryCall<T>> call) => AssertRefusedAsync(reason, async () => await call());

    private static async Task AssertRefusedAsync(string reason, Func<Task> call)
    {
        var refusal = await Assert.ThrowsAsync<RpcException>(call);
        Assert.Equal(reason, refusal.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason);
    }
}
