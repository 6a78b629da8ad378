using System.Net.Http.Json;
using FleetTrend.Contracts.V1;
using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>Codes of a source are read through its table; what is not mapped is kept and shown, not dropped (domain rule 7).</summary>
[Collection(SharedPostgres.Name)]
public sealed class CodeTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;
    private CodeService.CodeServiceClient codes = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        codes = new CodeService.CodeServiceClient(server.Channel);
        await ShopCards.RegisterAsync(server);
        await PushAsync(ShopCards.Aircraft("ZZ-A01"));
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task A_record_with_unmapped_codes_is_held_shown_and_accepted_once_all_are_mapped()
    {
        var held = await PushAsync(Coded("card 1"));
        var second = await PushAsync(Coded("card 2"));
        Assert.Equal(RecordState.Held, held.State);
        Assert.Equal(
            [("finding.location_code", "CODE_NOT_MAPPED"), ("finding.condition_code", "CODE_NOT_MAPPED")],
            held.Awaits.GetDetail<BadRequest>().FieldViolations.Select(v => (v.Field, v.Reason)));
        var unmapped = (await codes.ListUnmappedCodesAsync(new ListUnmappedCodesRequest())).Codes;
        Assert.Equal(
            [(CodeKind.Location, "EX1-FW", 2), (CodeKind.Condition, "CRK", 2)], unmapped.Select(c => (c.Kind, c.Code, c.WaitingCount)));
        Assert.All(unmapped, c => Assert.Equal((ShopCards.Source, held.HoldTime), (c.Source, c.SinceTime)));

        await SetAsync(new SourceCode { Code = "EX1-FW", Location = ShopCards.Weld });
        Assert.Equal("CRK", Assert.Single((await codes.ListUnmappedCodesAsync(new ListUnmappedCodesRequest())).Codes).Code);
        Assert.Equal(0, await server.CountAsync("findings"));
        await SetAsync(new SourceCode { Code = "CRK", Condition = Condition.Crack });

        await Eventually.TrueAsync(async () => await server.CountAsync($"findings where location = '{ShopCards.Weld}' and condition = 1") == 2);
        Assert.Empty((await codes.ListUnmappedCodesAsync(new ListUnmappedCodesRequest { Source = ShopCards.Source })).Codes);
        Assert.Equal(RecordState.Unchanged, (await PushAsync(Coded("card 1"))).State);
        Assert.Equal(RecordState.Accepted, (await PushAsync(Coded("card 3"))).State);
        Assert.NotEqual(held.HoldTime, second.HoldTime);
    }

    [Fact]
    public async Task Every_kind_of_record_with_a_place_takes_codes()
    {
        await SetAsync(new SourceCode { Code = "EX1-FW", Location = ShopCards.Weld });
        await SetAsync(new SourceCode { Code = "EX1-G", Location = ShopCards.Gasket });
        await SetAsync(new SourceCode { Code = "R", Action = ActionKind.Replaced });
        Record[] records =
        [
            new()
            {
                Key = ShopCards.Key("i"),
                Inspection = new Inspection
                {
                    Registration = "ZZ-A01", InspectionDate = ShopCards.Day(1), TimeInServiceHours = 1, Occasion = Occasion.Annual,
                    Looks =
                    {
                        new LocationLook { LocationCode = "EX1-FW", State = LookState.Examined },
                        new LocationLook { Location = ShopCards.Gasket, State = LookState.Examined },
                    },
                },
            },
            new()
            {
                Key = ShopCards.Key("in"),
                Installation = new Installation { Registration = "ZZ-A01", LocationCode = "EX1-G", InstallationDate = ShopCards.Day(1), TimeInServiceHours = 1 },
            },
            new()
            {
                Key = ShopCards.Key("out"),
                Removal = new Removal
                {
                    Registration = "ZZ-A01", LocationCode = "EX1-G", RemovalDate = ShopCards.Day(2), TimeInServiceHours = 2, Reason = RemovalReason.Other,
                },
            },
            new()
            {
                Key = ShopCards.Key("a"),
                Action = new Contracts.V1.Action
                {
                    Registration = "ZZ-A01", LocationCode = "EX1-G", KindCode = "R", ActionDate = ShopCards.Day(2), TimeInServiceHours = 2, PartHours = 5,
                },
            },
        ];

        var response = await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { records } });

        Assert.All(response.Outcomes, o => Assert.Equal(RecordState.Accepted, o.State));
        Assert.Equal(1, await server.CountAsync($"location_looks where location = '{ShopCards.Weld}'"));
        Assert.Equal(1, await server.CountAsync($"installations where location = '{ShopCards.Gasket}'"));
        Assert.Equal(1, await server.CountAsync("actions where kind = 3 and part_hours = 5"));
    }

    [Fact]
    public async Task A_code_beside_our_own_word_and_a_text_that_is_no_code_are_refused()
    {
        var both = Coded("card 1");
        both.Finding.Location = ShopCards.Weld;
        Assert.Equal("FIELD_NOT_ALLOWED", await RefusedAsync(() => PushAsync(both)));
        var unprintable = Coded("card 1");
        unprintable.Finding.LocationCode = "EX\0";
        Assert.Equal("TEXT_NOT_PRINTABLE", await RefusedAsync(() => PushAsync(unprintable)));
        var twice = new Record
        {
            Key = ShopCards.Key("i"),
            Inspection = new Inspection
            {
                Registration = "ZZ-A01",
                InspectionDate = ShopCards.Day(1),
                TimeInServiceHours = 1,
                Occasion = Occasion.Annual,
                Looks =
                {
                    new LocationLook { LocationCode = "EX1-FW", State = LookState.Examined },
                    new LocationLook { Location = ShopCards.Weld, State = LookState.Examined },
                },
            },
        };
        await SetAsync(new SourceCode { Code = "EX1-FW", Location = ShopCards.Weld });
        Assert.Equal("DUPLICATE_LINE", await RefusedAsync(() => PushAsync(twice)));
    }

    [Fact]
    public async Task A_changed_meaning_counts_for_what_arrives_after()
    {
        await SetAsync(new SourceCode { Code = "CRK", Condition = Condition.Crack });
        await SetAsync(new SourceCode { Code = "EX1-FW", Location = ShopCards.Weld });
        await PushAsync(Coded("card 1"));
        var corrosion = new SetCodeRequest { Code = new SourceCode { Source = ShopCards.Source, Code = "CRK", Condition = Condition.Corrosion } };
        var changed = await codes.SetCodeAsync(corrosion);
        Assert.Equal(("CRK", Condition.Crack), (changed.Replaced.Code, changed.Replaced.Condition));
        Assert.Equal(new SetCodeResponse { Code = changed.Code }, await codes.SetCodeAsync(corrosion));
        await PushAsync(Coded("card 2"));

        Assert.Equal(RecordState.Unchanged, (await PushAsync(Coded("card 1"))).State);
        Assert.Equal(1, await server.CountAsync("findings where condition = 1"));
        Assert.Equal(1, await server.CountAsync("findings where condition = 4"));
        var delete = new DeleteCodeRequest { Source = ShopCards.Source, Kind = CodeKind.Condition, Code = "CRK", ValidateOnly = true };
        await codes.DeleteCodeAsync(delete);
        Assert.Equal(2, await server.CountAsync("source_codes"));
        delete.ValidateOnly = false;
        await codes.DeleteCodeAsync(delete);
        foreach (var unknown in new[] { delete, new DeleteCodeRequest { Source = ShopCards.Source, Kind = CodeKind.Action, Code = "EX1-FW", ValidateOnly = true } })
        {
            var refusal = await Assert.ThrowsAsync<RpcException>(() => codes.DeleteCodeAsync(unknown).ResponseAsync);
            Assert.Equal((StatusCode.NotFound, "CODE_NOT_FOUND"), (refusal.StatusCode, refusal.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason));
        }

        Assert.Equal(RecordState.Unchanged, (await PushAsync(Coded("card 1"))).State);
        Assert.Equal(RecordState.Held, (await PushAsync(Coded("card 3"))).State);
    }

    [Fact]
    public async Task A_higher_revision_has_the_new_meaning_and_what_was_known_before_stays()
    {
        await SetAsync(new SourceCode { Code = "CRK", Condition = Condition.Crack });
        await SetAsync(new SourceCode { Code = "EX1-FW", Location = ShopCards.Weld });
        var first = await PushAsync(Coded("card 1"));
        await SetAsync(new SourceCode { Code = "CRK", Condition = Condition.Corrosion });
        var again = Coded("card 1");
        again.Key.Revision = 2;
        await PushAsync(again);

        var records = new RecordService.RecordServiceClient(server.Channel);
        var question = new GetRecordRequest { Source = ShopCards.Source, SourceRecordId = "card 1" };
        Assert.Equal(Condition.Corrosion, (await records.GetRecordAsync(question)).Record.Record.Finding.Condition);
        question.AsOfTime = first.AcceptTime;
        Assert.Equal(Condition.Crack, (await records.GetRecordAsync(question)).Record.Record.Finding.Condition);
    }

    [Fact]
    public async Task A_code_that_leads_elsewhere_keeps_its_records_held_until_it_is_mended()
    {
        await SetAsync(new SourceCode { Code = "CRK", Condition = Condition.Crack });
        await PushAsync(Coded("card 1"));
        await SetAsync(new SourceCode { Code = "EX1-FW", Location = "exhaust/cyl-6/gasket" }); // of a shipped layout, not of this aircraft
        await Eventually.TrueAsync(async () => Reason((await ListHeldAsync()).Single().Awaits) == "LOCATION_NOT_IN_LAYOUT");

        await SetAsync(new SourceCode { Code = "EX1-FW", Location = ShopCards.Weld });

        await Eventually.TrueAsync(async () => await server.CountAsync("findings") == 1);
        Assert.Empty(await ListHeldAsync());
    }

    [Fact]
    public async Task Codes_are_listed_by_kind_and_page_and_set_as_JSON()
    {
        using var put = await server.Http.PutAsync("v1/codes", JsonContent.Create(new { source = ShopCards.Source, code = "b", location = ShopCards.Weld }));
        Assert.True(put.IsSuccessStatusCode, await put.Content.ReadAsStringAsync());
        await SetAsync(new SourceCode { Code = "a", Action = ActionKind.Cleaned });
        await SetAsync(new SourceCode { Code = "b", Condition = Condition.Wear });
        await SetAsync(new SourceCode { Code = "a", Location = ShopCards.Gasket });

        var seen = new List<(string, SourceCode.MeaningOneofCase)>();
        var token = "";
        do
        {
            var page = await codes.ListCodesAsync(new ListCodesRequest { Source = ShopCards.Source, PageSize = 3, PageToken = token });
            seen.AddRange(page.Codes.Select(c => (c.Code, c.MeaningCase)));
            token = page.NextPageToken;
        }
        while (token.Length > 0);

        Assert.Equal(
            [
                ("a", SourceCode.MeaningOneofCase.Location), ("b", SourceCode.MeaningOneofCase.Location),
                ("b", SourceCode.MeaningOneofCase.Condition), ("a", SourceCode.MeaningOneofCase.Action),
            ], seen);
        using var deleted = await server.Http.DeleteAsync($"v1/codes?source={ShopCards.Source}&kind=CODE_KIND_ACTION&code=a");
        Assert.True(deleted.IsSuccessStatusCode);
        Assert.Equal(3, await server.CountAsync("source_codes"));
    }

    [Fact]
    public async Task A_code_that_cannot_be_set_is_refused_by_name()
    {
        Assert.Equal("SOURCE_NOT_REGISTERED", await RefusedAsync(() => SetAsync(new SourceCode { Source = "other-tool", Code = "x", Condition = Condition.Wear })));
        Assert.Equal("LOCATION_NOT_IN_LAYOUT", await RefusedAsync(() => SetAsync(new SourceCode { Code = "x", Location = "exhaust/none/here" })));
        Assert.Equal("FIELD_REQUIRED", await RefusedAsync(() => SetAsync(new SourceCode { Code = "x" })));
        Assert.Equal("ENUM_UNKNOWN", await RefusedAsync(() => SetAsync(new SourceCode { Code = "x", Condition = (Condition)99 })));
        Assert.Equal("PAGE_TOKEN_INVALID", await RefusedAsync(() => codes.ListCodesAsync(
            new ListCodesRequest { Source = ShopCards.Source, PageToken = "!" }).ResponseAsync));
        await codes.SetCodeAsync(new SetCodeRequest
        {
            Code = new SourceCode { Source = ShopCards.Source, Code = "x", Condition = Condition.Wear },
            ValidateOnly = true,
        });
        Assert.Equal(0, await server.CountAsync("source_codes"));
    }

    private static Record Coded(string id)
    {
        var record = ShopCards.Finding(id);
        record.Finding.Location = "";
        record.Finding.Condition = Condition.Unspecified;
        record.Finding.LocationCode = "EX1-FW";
        record.Finding.ConditionCode = "CRK";
        return record;
    }

    private async Task<RecordOutcome> PushAsync(Record record) =>
        (await server.Intake.PushRecordAsync(new PushRecordRequest { Record = record })).Outcome;

    private async Task<SourceCode> SetAsync(SourceCode code)
    {
        if (code.Source.Length == 0)
            code.Source = ShopCards.Source;
        return (await codes.SetCodeAsync(new SetCodeRequest { Code = code })).Code;
    }

    private async Task<IReadOnlyList<HeldRecord>> ListHeldAsync() =>
        (await server.Intake.ListHeldRecordsAsync(new ListHeldRecordsRequest())).Records;

    private static async Task<string?> RefusedAsync<T>(Func<Task<T>> call) =>
        Reason((await Assert.ThrowsAsync<RpcException>(call)).GetRpcStatus());

    private static string? Reason(Google.Rpc.Status? status) => status?.GetDetail<ErrorInfo>()?.Reason;
}
