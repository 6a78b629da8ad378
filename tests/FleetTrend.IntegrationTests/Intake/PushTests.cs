using FleetTrend.Contracts.V1;
using FleetTrend.Store.Histories;
using Google.Protobuf;
using Google.Rpc;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>What an integrator is promised in protos/README.md, over real gRPC on a real PostgreSQL.</summary>
[Collection(SharedPostgres.Name)]
public sealed class PushTests(PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly Google.Type.Date EarlierDay = new() { Year = 2026, Month = 2, Day = 3 };

    private ApiServer server = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A01") });
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task The_same_record_twice_answers_as_the_first_time_and_is_stored_once()
    {
        var first = await PushAsync(ShopCards.Finding("card 1"));
        var again = ShopCards.Finding("card 1");
        again.Key.Revision = 0; // read as 1
        again.Finding.Registration = "zz-a01";
        again.Finding.Grade = FindingGrade.Defect; // what unspecified means
        var second = await PushAsync(again);

        Assert.Equal((RecordState.Accepted, RecordState.Unchanged), (first.State, second.State));
        Assert.Equal(first.AcceptTime, second.AcceptTime);
        Assert.Equal(1, await CountAsync("findings"));
    }

    [Fact]
    public async Task The_same_key_with_other_content_is_refused_and_the_first_stays()
    {
        await PushAsync(ShopCards.Finding("card 1"));
        var other = ShopCards.Finding("card 1");
        other.Finding.SizeMm = 9;

        var refusal = await RefusedAsync(other);

        Assert.Equal(StatusCode.AlreadyExists, refusal.StatusCode);
        Assert.Equal("REVISION_REUSED", Info(refusal).Reason);
        Assert.Equal(("key.revision", "1"), (Info(refusal).Metadata["field"], Info(refusal).Metadata["value"]));
        Assert.Equal(RecordState.Unchanged, (await PushAsync(ShopCards.Finding("card 1"))).State);
        Assert.Equal(1, await CountAsync("findings"));
    }

    [Fact] // Hashes: tests/reference/content-hash/content_hash.py; the code that hashed protobuf's own bytes stored the same.
    public async Task A_record_that_an_earlier_version_stored_or_held_is_known_when_it_comes_again()
    {
        var reading = new Record
        {
            Key = ShopCards.Key("reading 1"),
            MeterReading = new MeterReading { Registration = "ZZ-A01", ReadingDate = EarlierDay, MeterHours = 812.4 },
        };
        var action = new Record
        {
            Key = ShopCards.Key("action 1"),
            Action = new Contracts.V1.Action
            {
                Registration = "ZZ-A01",
                ActionDate = EarlierDay,
                TimeInServiceHours = 812.4,
                PartHours = 3.5,
                LocationCode = "EX3",
                KindCode = "RPL",
            },
        };
        var before = await server.Services.GetRequiredService<RecordWriter>().SaveAsync(
            [
                new NewRecord.ToStore(
                    new(ShopCards.Source, "reading 1", 1),
                    new Records.Readings.MeterReading("ZZ-A01", new(2026, 2, 3), Records.Hours.From(812.4)),
                    Convert.FromHexString("26158566B8D07C1C44FE8F5900B73CC6B00B5FC6247FCF87E34E644C6DCCD7D6")),
                new NewRecord.ToHold(
                    new(ShopCards.Source, "action 1", 1),
                    new HeldContent("ZZ-A01", action.ToByteArray(), [new(ShopCards.Source, Records.Sources.CodeKind.Location, "EX3")]),
                    Convert.FromHexString("6B3F9B17F183E85B77EC9B68064CBA873B473A279DFBAA93E86BA2349638FD4D")),
            ],
            default);

        var (stored, held) = (await PushAsync(reading), await PushAsync(action));

        Assert.Equal((RecordState.Unchanged, RecordState.Held), (stored.State, held.State));
        Assert.Equal(((SaveResult.Accepted)before[0]).AcceptTime, stored.AcceptTime.ToDateTimeOffset());
        Assert.Equal(((SaveResult.Held)before[1]).HoldTime, held.HoldTime.ToDateTimeOffset());
        reading.MeterReading.MeterHours = 812.5;
        Assert.Equal("REVISION_REUSED", Info(await RefusedAsync(reading)).Reason);
    }

    [Fact] // Only a new record is held against what is known of the aircraft now.
    public async Task A_record_stays_accepted_when_its_aircraft_is_taken_back()
    {
        var first = await PushAsync(ShopCards.Finding("card 1"));
        await PushAsync(new Record { Key = ShopCards.Key("aircraft ZZ-A01", 2), Retraction = new Retraction { Reason = "sold" } });

        var again = await PushAsync(ShopCards.Finding("card 1"));

        Assert.Equal((RecordState.Unchanged, first.AcceptTime), (again.State, again.AcceptTime));
        Assert.Equal("AIRCRAFT_NOT_REGISTERED", Info(await RefusedAsync(ShopCards.Finding("card 2"))).Reason);
    }

    [Fact]
    public async Task A_higher_revision_of_any_kind_and_a_retraction_are_taken_in_any_order()
    {
        await PushAsync(ShopCards.Finding("card 1"));
        var second = ShopCards.Finding("card 1");
        second.Key.Revision = 2;
        second.Finding.SizeMm = 9;
        Assert.Equal(RecordState.Accepted, (await PushAsync(second)).State);

        var reading = ShopCards.Reading("card 1", "ZZ-A01", 20, 820);
        reading.Key.Revision = 3;
        Assert.Equal(RecordState.Accepted, (await PushAsync(reading)).State);

        var retraction = new Record { Key = ShopCards.Key("card 1", 4), Retraction = new Retraction { Reason = "wrong aircraft" } };
        Assert.Equal(RecordState.Accepted, (await PushAsync(retraction)).State);
        Assert.Equal(RecordState.Unchanged, (await PushAsync(retraction)).State);
        var early = new Record { Key = ShopCards.Key("card 2", 2), Retraction = new Retraction() };
        Assert.Equal(RecordState.Accepted, (await PushAsync(early)).State);
        Assert.Equal(RecordState.Accepted, (await PushAsync(ShopCards.Finding("card 2"))).State);
    }

    [Fact]
    public async Task An_unknown_location_aircraft_source_or_type_group_is_refused_by_name()
    {
        await AssertRefusedAsync(ShopCards.Finding("card 1", location: "exhaust/cyl-9/flange-weld"),
            StatusCode.FailedPrecondition, "LOCATION_NOT_IN_LAYOUT", "finding.location", "exhaust/cyl-9/flange-weld");
        await AssertRefusedAsync(ShopCards.Finding("card 1", registration: "ZZ-Q77"),
            StatusCode.FailedPrecondition, "AIRCRAFT_NOT_REGISTERED", "finding.registration", "ZZ-Q77");
        var foreign = ShopCards.Finding("card 1");
        foreign.Key.Source = "other-tool";
        await AssertRefusedAsync(foreign, StatusCode.PermissionDenied, "SOURCE_NOT_YOURS", "key.source", "other-tool");
        var aircraft = ShopCards.Aircraft("ZZ-A02");
        aircraft.Aircraft.Assignments[0].TypeGroup = "twin";
        await AssertRefusedAsync(aircraft,
            StatusCode.FailedPrecondition, "TYPE_GROUP_NOT_REGISTERED", "aircraft.assignments[0].type_group", "twin");
        Assert.Equal(0, await CountAsync("findings"));
    }

    [Fact]
    public async Task One_bad_record_in_a_batch_neither_stops_nor_rolls_back_the_others()
    {
        var bad = ShopCards.Finding("card 3", hours: -1);
        var response = await server.Intake.PushRecordsAsync(new PushRecordsRequest
        {
            Records =
            {
                ShopCards.Finding("card 1"),
                ShopCards.Finding("card 2", registration: "ZZ-B02"), // not registered yet: it comes two lines later
                bad,
                ShopCards.Aircraft("ZZ-B02"),
                ShopCards.Finding("card 4", registration: "zz-b02"), // registered one line before
                ShopCards.Finding("card 1"), // the first line again
            },
        });

        Assert.Equal(
            [RecordState.Accepted, RecordState.Refused, RecordState.Refused, RecordState.Accepted, RecordState.Accepted, RecordState.Unchanged],
            response.Outcomes.Select(o => o.State));
        Assert.Equal((3, 1, 2), (response.AcceptedCount, response.UnchangedCount, response.RefusedCount));
        Assert.Equal(bad.Key, response.Outcomes[2].Key);
        Assert.Equal("NUMBER_OUT_OF_RANGE", response.Outcomes[2].Error.GetDetail<ErrorInfo>().Reason);
        Assert.Equal(response.Outcomes[0].AcceptTime, response.Outcomes[5].AcceptTime);
        Assert.Equal(2, await CountAsync("findings"));
    }

    [Fact]
    public async Task A_batch_is_1_to_1000_records_and_a_message_up_to_4_MiB()
    {
        var records = Enumerable.Range(0, 1_001).Select(i => ShopCards.Reading($"r{i}", "ZZ-A01", i / 10, 500 + i)).ToList();
        await AssertRefusedAsync(new PushRecordsRequest { Records = { records } }, StatusCode.InvalidArgument, "TOO_MANY_ITEMS");
        await AssertRefusedAsync(new PushRecordsRequest(), StatusCode.InvalidArgument, "FIELD_REQUIRED");

        var heavy = ShopCards.Finding("card 1");
        heavy.Finding.Note = new string('n', 4 * 1024 * 1024);
        await AssertRefusedAsync(new PushRecordsRequest { Records = { heavy } }, StatusCode.ResourceExhausted, "MESSAGE_TOO_LARGE");
        heavy.Finding.Note = new string('n', 9 * 1024 * 1024); // more than the framework reads
        await AssertRefusedAsync(new PushRecordsRequest { Records = { heavy } }, StatusCode.ResourceExhausted, "MESSAGE_TOO_LARGE");

        var response = await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { records.Take(1_000) } });
        Assert.Equal(1_000, response.AcceptedCount);
    }

    private async Task<RecordOutcome> PushAsync(Record record) =>
        (await server.Intake.PushRecordAsync(new PushRecordRequest { Record = record })).Outcome;

    private async Task<RpcException> RefusedAsync(Record record) =>
        await Assert.ThrowsAsync<RpcException>(() => PushAsync(record));

    private async Task AssertRefusedAsync(Record record, StatusCode code, string reason, string field, string value)
    {
        var refusal = await RefusedAsync(record);
        var info = Info(refusal);
        Assert.Equal((code, reason, field, value), (refusal.StatusCode, info.Reason, info.Metadata["field"], info.Metadata["value"]));
    }

    private async Task AssertRefusedAsync(PushRecordsRequest request, StatusCode code, string reason)
    {
        var refusal = await Assert.ThrowsAsync<RpcException>(() => server.Intake.PushRecordsAsync(request).ResponseAsync);
        Assert.Equal((code, reason), (refusal.StatusCode, Info(refusal).Reason));
    }

    private static ErrorInfo Info(RpcException exception) => exception.GetRpcStatus()!.GetDetail<ErrorInfo>()!;

    private async Task<long> CountAsync(string table)
    {
        await using var command = server.Database.DataSource.CreateCommand($"select count(*) from {table}");
        return (long)(await command.ExecuteScalarAsync())!;
    }
}
