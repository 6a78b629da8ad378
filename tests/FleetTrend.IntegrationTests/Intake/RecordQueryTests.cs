using FleetTrend.Contracts.V1;
using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>Corrections supersede, they do not overwrite (domain rule 8): history stays and can be asked for.</summary>
[Collection(SharedPostgres.Name)]
public sealed class RecordQueryTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;
    private RecordService.RecordServiceClient records = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        records = new RecordService.RecordServiceClient(server.Channel);
        await ShopCards.RegisterAsync(server);
        await PushAsync(ShopCards.Aircraft("ZZ-A01"));
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task Every_kind_of_record_comes_back_as_it_was_pushed_and_is_unchanged_when_pushed_again()
    {
        await PushAsync([.. EveryKind()]);

        var listed = (await records.ListRecordsAsync(new ListRecordsRequest())).Records;

        Assert.Equal(
            EveryKind().Append(ShopCards.Aircraft("ZZ-A01")).OrderBy(r => r.Key.SourceRecordId, StringComparer.Ordinal),
            listed.Select(r => r.Record).OrderBy(r => r.Key.SourceRecordId, StringComparer.Ordinal));
        var again = await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { listed.Select(r => r.Record) } });
        Assert.Equal(listed.Select(r => (RecordState.Unchanged, r.AcceptTime)), again.Outcomes.Select(o => (o.State, o.AcceptTime)));
    }

    [Fact]
    public async Task Every_revision_is_kept_and_a_moment_shows_what_was_known_then()
    {
        var third = ShopCards.Reading("card 1", "ZZ-A01", 20, 820);
        third.Key.Revision = 3;
        var retraction = new Record { Key = ShopCards.Key("card 1", 4), Retraction = new Retraction { Reason = "wrong card" } };
        var found = ShopCards.Finding("card 1");
        found.Finding.Grade = FindingGrade.Defect;
        var first = await PushAsync(found);
        var fourth = await PushAsync(retraction); // before the third
        var late = await PushAsync(third);

        var revisions = (await records.ListRecordRevisionsAsync(Revisions("card 1"))).Revisions;

        Assert.Equal([found, third, retraction], revisions.Select(r => r.Record));
        Assert.Equal([first, late, fourth], revisions.Select(r => r.AcceptTime));
        Assert.Equal(retraction, await GetAsync("card 1"));
        Assert.Equal(found, await GetAsync("card 1", first));
        Assert.Equal(["card 1"], await ListAsync(new ListRecordsRequest { AsOfTime = first, Kind = RecordKind.Finding }));
        Assert.Empty(await ListAsync(new ListRecordsRequest { AsOfTime = fourth, Kind = RecordKind.Finding }));
        Assert.Empty(await ListAsync(new ListRecordsRequest { Kind = RecordKind.MeterReading }));
    }

    [Fact]
    public async Task Revisions_come_by_page()
    {
        for (var revision = 1; revision <= 5; revision++)
        {
            var record = ShopCards.Finding("card 1", hours: 800 + revision);
            record.Key.Revision = revision;
            await PushAsync(record);
        }

        var first = await records.ListRecordRevisionsAsync(Revisions("card 1", size: 3));
        var second = await records.ListRecordRevisionsAsync(Revisions("card 1", size: 3, token: first.NextPageToken));

        Assert.Equal([1, 2, 3], first.Revisions.Select(r => r.Record.Key.Revision));
        Assert.Equal([4, 5], second.Revisions.Select(r => r.Record.Key.Revision));
        Assert.Empty(second.NextPageToken);
    }

    [Fact]
    public async Task All_pages_are_as_of_the_moment_of_the_first()
    {
        await PushAsync([.. Enumerable.Range(0, 25).Select(i => ShopCards.Reading($"r{i:00}", "ZZ-A01", i, i))]);
        var question = new ListRecordsRequest { Registration = "zz-a01", Kind = RecordKind.MeterReading, PageSize = 10 };
        var first = await records.ListRecordsAsync(question);

        // Meanwhile one is corrected, one is taken back, and one is new.
        var corrected = ShopCards.Reading("r20", "ZZ-A01", 20, 999);
        corrected.Key.Revision = 2;
        await PushAsync(corrected);
        await PushAsync(new Record { Key = ShopCards.Key("r21", 2), Retraction = new Retraction() });
        await PushAsync(ShopCards.Reading("r99", "ZZ-A01", 99, 99));
        var seen = first.Records.ToList();
        for (var token = first.NextPageToken; token.Length > 0;)
        {
            var next = await records.ListRecordsAsync(new ListRecordsRequest(question) { PageToken = token });
            Assert.Equal(first.AsOfTime, next.AsOfTime);
            seen.AddRange(next.Records);
            token = next.NextPageToken;
        }

        Assert.Equal(Enumerable.Range(0, 25).Select(i => ShopCards.Reading($"r{i:00}", "ZZ-A01", i, i)), seen.Select(r => r.Record));
        var now = await ListAsync(new ListRecordsRequest { Kind = RecordKind.MeterReading });
        Assert.Equal((25, false, true), (now.Count, now.Contains("r21"), now.Contains("r99")));
        Assert.Equal("PAGE_TOKEN_INVALID", await RefusedAsync(() => records.ListRecordsAsync(
            new ListRecordsRequest { PageToken = first.NextPageToken }).ResponseAsync));
    }

    [Fact]
    public async Task A_key_that_may_only_push_sees_its_own_source()
    {
        await PushAsync(ShopCards.Finding("card 1"));
        await server.IntakeOfAsync("other-tool");
        var other = new RecordService.RecordServiceClient(server.ChannelWith(
            await server.CreateKeyAsync("other-tool", FleetTrend.Store.Keys.KeyScope.RecordsWrite)));

        Assert.Empty((await other.ListRecordsAsync(new ListRecordsRequest())).Records);
        Assert.Equal("SOURCE_NOT_YOURS", await RefusedAsync(() => other.ListRecordsAsync(new ListRecordsRequest { Source = ShopCards.Source }).ResponseAsync));
        Assert.Equal("SOURCE_NOT_YOURS", await RefusedAsync(() => other.GetRecordAsync(
            new GetRecordRequest { Source = ShopCards.Source, SourceRecordId = "card 1" }).ResponseAsync));
        Assert.Equal("SOURCE_NOT_YOURS", await RefusedAsync(() => other.ListRecordRevisionsAsync(Revisions("card 1")).ResponseAsync));
    }

    [Fact]
    public async Task What_is_not_there_and_what_cannot_be_asked_is_told_by_name()
    {
        Assert.Equal("RECORD_NOT_FOUND", await RefusedAsync(() => GetAsync("card 9")));
        Assert.Equal("RECORD_NOT_FOUND", await RefusedAsync(() => GetAsync("aircraft ZZ-A01", new Timestamp { Seconds = 946_684_800 })));
        Assert.Equal("RECORD_NOT_FOUND", await RefusedAsync(() => records.ListRecordRevisionsAsync(Revisions("card 9")).ResponseAsync));
        Assert.Equal("TEXT_NOT_PRINTABLE", await RefusedAsync(() => GetAsync("card\u00009")));
        Assert.Equal("DATE_OUT_OF_RANGE", await RefusedAsync(() => ListAsync(new ListRecordsRequest { AsOfTime = new Timestamp { Seconds = 4_102_444_800 } })));
        Assert.Equal("ENUM_UNKNOWN", await RefusedAsync(() => ListAsync(new ListRecordsRequest { Kind = (RecordKind)99 })));
        Assert.Equal("NUMBER_OUT_OF_RANGE", await RefusedAsync(() => ListAsync(new ListRecordsRequest { PageSize = -1 })));
        Assert.Equal("PAGE_TOKEN_INVALID", await RefusedAsync(() => records.ListRecordRevisionsAsync(Revisions("aircraft ZZ-A01", token: "x")).ResponseAsync));
        Assert.Equal("AIRCRAFT_NOT_FOUND", await RefusedAsync(() => ListAsync(new ListRecordsRequest { Registration = "ZZ-Q99" })));
    }

    [Fact]
    public async Task The_same_over_JSON()
    {
        await PushAsync(ShopCards.Finding("card 17/1"));

        string[] questions =
        [
            "v1/records:get?source=shop-cards&source_record_id=card%2017%2F1",
            "v1/records:revisions?source=shop-cards&source_record_id=card%2017%2F1",
            "v1/records?kind=RECORD_KIND_FINDING",
        ];
        foreach (var question in questions)
        {
            var text = await server.Http.GetStringAsync(question);
            Assert.Contains("\"sourceRecordId\":\"card 17/1\"", text, StringComparison.Ordinal);
        }

        using var early = await server.Http.GetAsync(
            "v1/records:get?source=shop-cards&source_record_id=card%2017%2F1&as_of_time=2000-01-01T00:00:00Z");
        Assert.Equal(System.Net.HttpStatusCode.NotFound, early.StatusCode);
    }

    private static IEnumerable<Record> EveryKind()
    {
        yield return new Record
        {
            Key = ShopCards.Key("aircraft ZZ-A02", 3),
            Aircraft = new Aircraft
            {
                Registration = "ZZ-A02",
                WatchStartDate = ShopCards.Day(0),
                MeterOffsetHours = -12.3,
                RetiredDate = ShopCards.Day(900),
                Assignments =
                {
                    new Assignment { FromDate = ShopCards.Day(0), Base = "North", TypeGroup = ShopCards.TypeGroup },
                    new Assignment { FromDate = ShopCards.Day(9), Base = "South", TypeGroup = ShopCards.TypeGroup },
                },
            },
        };
        yield return ShopCards.Reading("reading", "ZZ-A02", 1, 812.4);
        yield return new Record
        {
            Key = ShopCards.Key("change"),
            MeterChange = new MeterChange { Registration = "ZZ-A02", ChangeDate = ShopCards.Day(2), OldMeterHours = 900.1, NewMeterHours = 0.3 },
        };
        yield return new Record
        {
            Key = ShopCards.Key("in"),
            Installation = new Installation
            {
                Registration = "ZZ-A02",
                Location = ShopCards.Gasket,
                InstallationDate = ShopCards.Day(3),
                TimeInServiceHours = 3.3,
                PartHours = 0,
                SerialNumber = "S-1",
                PartNumber = "invented",
            },
        };
        yield return new Record
        {
            Key = ShopCards.Key("in, age unknown"),
            Installation = new Installation { Registration = "ZZ-A02", Location = ShopCards.Gasket, InstallationDate = ShopCards.Day(4), TimeInServiceHours = 4 },
        };
        yield return new Record
        {
            Key = ShopCards.Key("out"),
            Removal = new Removal
            {
                Registration = "ZZ-A02",
                Location = ShopCards.Gasket,
                RemovalDate = ShopCards.Day(5),
                TimeInServiceHours = 5.5,
                Reason = RemovalReason.WithSisters,
                ExaminedGood = true,
                SerialNumber = "S-1",
            },
        };
        yield return new Record
        {
            Key = ShopCards.Key("look"),
            Inspection = new Inspection
            {
                Registration = "ZZ-A02",
                InspectionDate = ShopCards.Day(6),
                TimeInServiceHours = 6.7,
                Occasion = Occasion.Progressive,
                Looks =
                {
                    new LocationLook { Location = ShopCards.Weld, State = LookState.Examined, Method = LookMethod.Borescope },
                    new LocationLook { Location = ShopCards.Gasket, State = LookState.CouldNotExamine },
                },
            },
        };
        yield return new Record
        {
            Key = ShopCards.Key("found"),
            Finding = new Finding
            {
                Registration = "ZZ-A02",
                Location = ShopCards.Gasket,
                FoundDate = ShopCards.Day(7),
                TimeInServiceHours = 7.9,
                Condition = Condition.LeakTrace,
                Grade = FindingGrade.Accepted,
                SizeMm = 0.1,
                TraceColour = TraceColour.Rose,
                Method = LookMethod.Touch,
                SameEventAs = "found before",
                Note = "a\nb",
            },
        };
        yield return new Record
        {
            Key = ShopCards.Key("done"),
            Action = new Contracts.V1.Action
            {
                Registration = "ZZ-A02",
                Location = ShopCards.Gasket,
                ActionDate = ShopCards.Day(8),
                TimeInServiceHours = 8.1,
                Kind = ActionKind.Replaced,
                PartHours = 17.2,
                Note = "as a set",
            },
        };
        yield return new Record
        {
            Key = ShopCards.Key("practice"),
            PracticeChange = new PracticeChange
            {
                ChangeDate = ShopCards.Day(9),
                Base = "North",
                TypeGroup = ShopCards.TypeGroup,
                Locations = { new ChangedLocation { Location = ShopCards.Weld }, new ChangedLocation { Location = ShopCards.Gasket } },
                PartNumber = "gasket, three layers",
                What = "torque in two passes",
                Why = "leaks\nbelow 300 h",
            },
        };
        yield return new Record
        {
            Key = ShopCards.Key("practice of the fleet"),
            PracticeChange = new PracticeChange { ChangeDate = ShopCards.Day(9), What = "a mirror for every look" },
        };
        yield return new Record
        {
            Key = ShopCards.Key("stock"),
            StockCount = new StockCount
            {
                CountDate = ShopCards.Day(9),
                Base = "North",
                PartNumber = "gasket, three layers",
                Quantity = 4,
                LeadTimeDays = 0,
            },
        };
        yield return new Record
        {
            Key = ShopCards.Key("none left"),
            StockCount = new StockCount { CountDate = ShopCards.Day(9), Base = "North", PartNumber = "coupling", Quantity = 0 },
        };
    }

    private static ListRecordRevisionsRequest Revisions(string id, int size = 0, string token = "") =>
        new() { Source = ShopCards.Source, SourceRecordId = id, PageSize = size, PageToken = token };

    private async Task<Record> GetAsync(string id, Timestamp? asOf = null) => (await records.GetRecordAsync(
        new GetRecordRequest { Source = ShopCards.Source, SourceRecordId = id, AsOfTime = asOf })).Record.Record;

    private async Task<IReadOnlyList<string>> ListAsync(ListRecordsRequest request) =>
        [.. (await records.ListRecordsAsync(request)).Records.Select(r => r.Record.Key.SourceRecordId)];

    private async Task<Timestamp> PushAsync(params Record[] records)
    {
        var response = await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { records } });
        Assert.All(response.Outcomes, o => Assert.Equal(RecordState.Accepted, o.State));
        return response.Outcomes[^1].AcceptTime;
    }

    private static async Task<string?> RefusedAsync<T>(Func<Task<T>> call) =>
        (await Assert.ThrowsAsync<RpcException>(call)).GetRpcStatus()?.GetDetail<ErrorInfo>()?.Reason;
}
