using FleetTrend.Contracts.V1;
using FleetTrend.Intake.HeldRecords;
using FleetTrend.Store.HeldRecords;
using FleetTrend.Store.Histories;
using Google.Rpc;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>Records about an aircraft that is not registered wait for it, where the source asks for that (domain rule 9).</summary>
[Collection(SharedPostgres.Name)]
public sealed class HeldRecordTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string SixOnly = "exhaust/cyl-6/gasket";

    private ApiServer server = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task A_held_record_is_accepted_on_its_own_once_its_aircraft_is_registered()
    {
        var held = await PushAsync(ShopCards.Finding("card 1"), hold: true);
        Assert.Equal((RecordState.Held, "AIRCRAFT_NOT_REGISTERED"), (held.State, Reason(held.Awaits)));
        Assert.Null(held.AcceptTime);
        var listed = Assert.Single(await ListAsync());
        Assert.Equal((ShopCards.Finding("card 1"), held.HoldTime, "AIRCRAFT_NOT_REGISTERED"), (listed.Record, listed.HoldTime, Reason(listed.Awaits)));
        Assert.Equal(0, await CountAsync("records"));

        await PushAsync(ShopCards.Aircraft("ZZ-A01"));

        await EventuallyAsync(async () => await CountAsync("findings") == 1);
        Assert.Empty(await ListAsync());
        Assert.Equal(RecordState.Unchanged, (await PushAsync(ShopCards.Finding("card 1"))).State);
    }

    [Fact]
    public async Task A_held_record_sent_again_answers_as_the_first_time_and_other_content_is_refused()
    {
        var first = await PushAsync(ShopCards.Finding("card 1"), hold: true);
        var again = await PushAsync(ShopCards.Finding("card 1"), hold: true);
        var without = await PushAsync(ShopCards.Finding("card 1"));
        var other = ShopCards.Finding("card 1");
        other.Finding.SizeMm = 9;
        var reused = await Assert.ThrowsAsync<RpcException>(() => PushAsync(other, hold: true));

        Assert.Equal((RecordState.Held, first.HoldTime), (again.State, again.HoldTime));
        Assert.Equal((RecordState.Held, first.HoldTime), (without.State, without.HoldTime));
        Assert.Equal("REVISION_REUSED", Reason(reused.GetRpcStatus()));
        Assert.Equal(1, await CountAsync("held_records"));
    }

    [Fact]
    public async Task Without_the_wish_it_is_refused_and_a_record_that_breaks_another_rule_is_refused_with_it()
    {
        var refused = await Assert.ThrowsAsync<RpcException>(() => PushAsync(ShopCards.Finding("card 1")));
        var bad = await Assert.ThrowsAsync<RpcException>(() => PushAsync(ShopCards.Finding("card 2", hours: -1), hold: true));

        Assert.Equal("AIRCRAFT_NOT_REGISTERED", Reason(refused.GetRpcStatus()));
        Assert.Equal(2, bad.GetRpcStatus()!.GetDetail<BadRequest>()!.FieldViolations.Count);
        Assert.Equal(0, await CountAsync("held_records"));
    }

    [Fact]
    public async Task In_a_batch_a_record_waits_only_until_its_aircraft_comes()
    {
        var response = await server.Intake.PushRecordsAsync(new PushRecordsRequest
        {
            HoldUnregistered = true,
            Records =
            {
                ShopCards.Finding("card 1"), ShopCards.Finding("card 2"), ShopCards.Aircraft("ZZ-A01"), ShopCards.Finding("card 1"),
                ShopCards.Finding("card 3", registration: "ZZ-B02"),
            },
        });

        Assert.Equal(
            [RecordState.Held, RecordState.Held, RecordState.Accepted, RecordState.Accepted, RecordState.Held],
            response.Outcomes.Select(o => o.State));
        Assert.Equal((2, 3), (response.AcceptedCount, response.HeldCount));
        await EventuallyAsync(async () => await CountAsync("findings") == 2);
        Assert.Equal("card 3", Assert.Single(await ListAsync()).Record.Key.SourceRecordId);
    }

    [Fact]
    public async Task A_stream_holds_and_a_check_says_so_without_writing()
    {
        using var call = server.Intake.StreamRecords();
        await call.RequestStream.WriteAsync(new StreamRecordsRequest { Record = ShopCards.Finding("card 1"), HoldUnregistered = true, ValidateOnly = true });
        Assert.True(await call.ResponseStream.MoveNext(default));
        Assert.Equal(RecordState.Held, call.ResponseStream.Current.Outcome.State);
        Assert.Null(call.ResponseStream.Current.Outcome.HoldTime);
        Assert.Equal(0, await CountAsync("held_records"));

        await call.RequestStream.WriteAsync(new StreamRecordsRequest { Record = ShopCards.Finding("card 1"), HoldUnregistered = true });
        Assert.True(await call.ResponseStream.MoveNext(default));
        Assert.Equal(RecordState.Held, call.ResponseStream.Current.Outcome.State);
        await call.RequestStream.CompleteAsync();
        Assert.Equal(1, await CountAsync("held_records"));
    }

    [Fact]
    public async Task What_does_not_fit_its_aircraft_stays_held_and_a_corrected_revision_takes_its_place()
    {
        await PushAsync(ShopCards.Finding("card 1", location: "exhaust/cyl-6/gasket"), hold: true);
        await PushAsync(ShopCards.Aircraft("ZZ-A01"));
        await EventuallyAsync(async () => Reason(Assert.Single(await ListAsync()).Awaits) == "LOCATION_NOT_IN_LAYOUT");

        var corrected = ShopCards.Finding("card 1");
        corrected.Key.Revision = 2;
        await PushAsync(corrected);

        Assert.Empty(await ListAsync());
        Assert.Equal(1, await CountAsync("findings"));
    }

    [Fact] // A location of a shipped layout of six cylinders; the aircraft comes with one cylinder.
    public async Task A_location_that_the_aircraft_does_not_have_waits_for_a_type_group_that_has_it()
    {
        await server.Layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest { TypeGroup = new TypeGroup { Name = "six", Layout = "six-cylinder-muffler-clamp" } });
        await PushAsync(ShopCards.Aircraft("ZZ-A01"));
        var finding = ShopCards.Finding("card 1", location: SixOnly);
        var refused = await Assert.ThrowsAsync<RpcException>(() => PushAsync(finding));
        Assert.Equal("LOCATION_NOT_IN_LAYOUT", Reason(refused.GetRpcStatus()));

        var held = await PushAsync(finding, hold: true);

        Assert.Equal((RecordState.Held, "LOCATION_NOT_IN_LAYOUT"), (held.State, Reason(held.Awaits)));
        Assert.Equal((finding, "LOCATION_NOT_IN_LAYOUT"), (Assert.Single(await ListAsync()).Record, Reason((await ListAsync())[0].Awaits)));
        var moment = await server.Services.GetRequiredService<Knowledge>().FixAsOfAsync(default);
        Assert.Equal(1, (await server.Services.GetRequiredService<HeldRecordStore>().CountAsync(moment, default))["ZZ-A01"]);
        Assert.Equal(RecordState.Held, (await PushAsync(finding)).State);

        await PushAsync(InGroup("six", revision: 2));

        await EventuallyAsync(async () => await CountAsync("findings") == 1);
        Assert.Empty(await ListAsync());
        Assert.Equal(RecordState.Unchanged, (await PushAsync(finding)).State);
    }

    [Fact] // What an older revision let in stays and is listed as a data problem, so what came after it is let in too.
    public async Task A_location_of_a_superseded_type_group_does_not_wait_whichever_came_first()
    {
        await server.Layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest { TypeGroup = new TypeGroup { Name = "six", Layout = "six-cylinder-muffler-clamp" } });
        await PushAsync(InGroup("six", revision: 1));
        Assert.Equal(RecordState.Accepted, (await PushAsync(ShopCards.Finding("card 1", location: SixOnly), hold: true)).State);
        await PushAsync(InGroup(ShopCards.TypeGroup, revision: 2));

        Assert.Equal(RecordState.Accepted, (await PushAsync(ShopCards.Finding("card 2", location: SixOnly), hold: true)).State);
        Assert.Equal(RecordState.Held, (await PushAsync(ShopCards.Finding("card 3", location: "exhaust/cyl-9/gasket"), hold: true)).State);
        var refused = await Assert.ThrowsAsync<RpcException>(() => PushAsync(ShopCards.Finding("card 4", location: SixOnly)));
        Assert.Equal("LOCATION_NOT_IN_LAYOUT", Reason(refused.GetRpcStatus()));
    }

    [Fact]
    public async Task A_record_that_waits_for_aircraft_code_and_location_is_let_in_when_the_last_of_them_comes()
    {
        await server.Layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest { TypeGroup = new TypeGroup { Name = "six", Layout = "six-cylinder-muffler-clamp" } });
        var finding = ShopCards.Finding("card 1");
        (finding.Finding.Location, finding.Finding.LocationCode) = ("", "E5");
        var held = await PushAsync(finding, hold: true);
        Assert.Equal(
            ["AIRCRAFT_NOT_REGISTERED", "CODE_NOT_MAPPED"], held.Awaits.GetDetail<BadRequest>().FieldViolations.Select(v => v.Reason));

        await new CodeService.CodeServiceClient(server.Channel).SetCodeAsync(new SetCodeRequest
        {
            Code = new SourceCode { Source = ShopCards.Source, Code = "E5", Location = SixOnly },
        });
        Assert.Equal("AIRCRAFT_NOT_REGISTERED", Reason(Assert.Single(await ListAsync()).Awaits));
        await PushAsync(ShopCards.Aircraft("ZZ-A01"));
        Assert.Equal("LOCATION_NOT_IN_LAYOUT", Reason(Assert.Single(await ListAsync()).Awaits));
        await PushAsync(InGroup("six", revision: 2));

        await EventuallyAsync(async () => await CountAsync("findings") == 1);
        Assert.Empty(await ListAsync());
    }

    [Fact]
    public async Task An_aircraft_that_another_process_registers_lets_its_records_in_too()
    {
        await PushAsync(ShopCards.Finding("card 1"), hold: true);
        await using var other = await ApiServer.StartBesideAsync(server);
        await other.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A01") });

        await server.Services.GetRequiredService<HeldRecordIntake>().ReleaseAsync(default);

        await EventuallyAsync(async () => await CountAsync("findings") == 1);
    }

    [Fact]
    public async Task How_many_waited_at_a_moment_stays_as_it_was()
    {
        var knowledge = server.Services.GetRequiredService<Knowledge>();
        var held = server.Services.GetRequiredService<HeldRecordStore>();
        var before = await knowledge.FixAsOfAsync(default);
        await PushAsync(ShopCards.Finding("card 1"), hold: true);
        await PushAsync(ShopCards.Finding("card 2"), hold: true);
        await PushAsync(new Record { Key = ShopCards.Key("card 2", 2), Retraction = new Retraction() });
        var meanwhile = await knowledge.FixAsOfAsync(default);
        await PushAsync(ShopCards.Aircraft("ZZ-A01"));
        await EventuallyAsync(async () => await CountAsync("findings") == 2);
        var after = await knowledge.FixAsOfAsync(default);

        Assert.Empty(await held.CountAsync(before, default));
        Assert.Equal(1, (await held.CountAsync(meanwhile, default))["ZZ-A01"]);
        Assert.Empty(await held.CountAsync(after, default));
    }

    [Fact]
    public async Task Held_records_are_listed_by_page_source_and_aircraft()
    {
        for (var i = 0; i < 5; i++)
            await PushAsync(ShopCards.Finding($"card {i}", registration: $"ZZ-Q{i % 2}"), hold: true);

        var seen = new List<string>();
        var token = "";
        do
        {
            var page = await server.Intake.ListHeldRecordsAsync(new ListHeldRecordsRequest { Source = ShopCards.Source, PageSize = 2, PageToken = token });
            seen.AddRange(page.Records.Select(r => r.Record.Key.SourceRecordId));
            token = page.NextPageToken;
        }
        while (token.Length > 0);

        Assert.Equal(["card 0", "card 1", "card 2", "card 3", "card 4"], seen);
        var one = await server.Intake.ListHeldRecordsAsync(new ListHeldRecordsRequest { Registration = "zz-q1" });
        Assert.Equal(["card 1", "card 3"], one.Records.Select(r => r.Record.Key.SourceRecordId));
        await server.IntakeOfAsync("other-tool"); // registered: one that is not is no empty list
        Assert.Empty((await server.Intake.ListHeldRecordsAsync(new ListHeldRecordsRequest { Source = "other-tool" })).Records);
        var json = await server.Http.GetStringAsync("v1/heldRecords?registration=ZZ-Q1&page_size=1");
        Assert.Contains("AIRCRAFT_NOT_REGISTERED", json, StringComparison.Ordinal);
    }

    private static Record InGroup(string typeGroup, int revision)
    {
        var aircraft = ShopCards.Aircraft("ZZ-A01");
        aircraft.Key.Revision = revision;
        aircraft.Aircraft.Assignments[0].TypeGroup = typeGroup;
        return aircraft;
    }

    private async Task<RecordOutcome> PushAsync(Record record, bool hold = false) =>
        (await server.Intake.PushRecordAsync(new PushRecordRequest { Record = record, HoldUnregistered = hold })).Outcome;

    private async Task<IReadOnlyList<Contracts.V1.HeldRecord>> ListAsync() =>
        (await server.Intake.ListHeldRecordsAsync(new ListHeldRecordsRequest())).Records;

    private static string? Reason(Google.Rpc.Status? status) => status?.GetDetail<ErrorInfo>()?.Reason;

    private Task<long> CountAsync(string table) => server.CountAsync(table);

    private static Task EventuallyAsync(Func<Task<bool>> condition) => Eventually.TrueAsync(condition);
}
