using System.Net;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Access;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store.Flags;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Rpc;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Nothing known is not nothing wrong: over the whole contract, an empty list is never the answer to an unknown name, nor to a
/// question that no refresh has looked at, and each list of results says how fresh it is.</summary>
[Collection(SharedPostgres.Name)]
public sealed class NothingKnownTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Mark = "ZZ-A01";

    /// <summary>A value that each filter knows, by field. A new filter by name belongs here, and with it into the test.</summary>
    private static readonly Dictionary<string, string> Known = new(StringComparer.Ordinal)
    {
        ["registration"] = Mark,
        ["type_group"] = ShopCards.TypeGroup,
        ["location"] = ShopCards.Weld,
        ["kind"] = "gasket",
        ["base"] = "North",
        ["source"] = ShopCards.Source,
        ["source_record_id"] = $"aircraft {Mark}",
        ["request_id"] = "asked",
        ["flag_id"] = "1",
    };

    private const string FlagBody =
        """{"subject":"s","kind":"AirframeDrift","base":"North","typeGroup":"trainer-four","locations":[],"ratio":{"value":1,"confidence":0.95,"unit":"ratio","events":1,"method":"m"},"observed":1,"statement":"s","whatToCheck":[]}""";

    /// <summary>Lists of what people decided, or of what was sent: no refresh makes them.</summary>
    private static readonly string[] NoResults =
        ["CheckService/ListFindingMerges", "FlagService/ListFlagSteps", "ReportService/ListMails", "ReportService/ListRecipients", "ReportService/ListReportRequests"];

    private static readonly IReadOnlyList<MethodDescriptor> Lists =
        [.. Contract.Calls.Where(call => call.Name.StartsWith("List", StringComparison.Ordinal))];

    private static readonly IReadOnlyList<MethodDescriptor> Results =
    [
        .. Lists.Where(call => call.Service.Name is "TrendService" or "FlagService" or "CheckService" or "ReportService"
            && !NoResults.Contains(Contract.NameOf(call), StringComparer.Ordinal)),
    ];

    private ApiServer server = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft(Mark) });
        await server.Reports.RequestReportAsync(new RequestReportRequest { RequestId = Known["request_id"] });
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task Every_filter_of_every_list_answers_an_unknown_name_with_not_found()
    {
        await RefreshAsync();
        await server.Services.GetRequiredService<FlagStore>().RaiseAsync(
            DateTimeOffset.UtcNow,
            [new FlagProposal { Subject = "s", Kind = "AirframeDrift", Base = "North", TypeGroup = ShopCards.TypeGroup, EventCount = 1, BodyJson = FlagBody }],
            default);
        var asked = 0;
        foreach (var call in Lists)
        {
            var filters = NameFilters(call);
            foreach (var filter in filters)
            {
                var request = Ask(call, filters, filter, filter.Name == "registration" ? "ZZ-Q99" : "nobody");
                var answer = await Assert.ThrowsAsync<RpcException>(() => Contract.CallAsync(server.Channel, call, request));
                var info = answer.GetRpcStatus()!.GetDetail<ErrorInfo>()!;
                Assert.Equal((call.FullName, StatusCode.NotFound, filter.Name), (call.FullName, answer.StatusCode, info.Metadata["field"]));
                Assert.EndsWith("_NOT_FOUND", info.Reason, StringComparison.Ordinal);
                asked++;
            }

            await Contract.CallAsync(server.Channel, call, Ask(call, filters, null, "")); // with names that are there it answers
        }

        Assert.True(asked >= 20, $"{asked} filters");
    }

    [Fact]
    public async Task Every_enum_filter_of_every_list_refuses_a_value_that_the_contract_does_not_have()
    {
        await RefreshAsync();
        foreach (var call in Lists)
        {
            var names = NameFilters(call);
            foreach (var filter in call.InputType.Fields.InDeclarationOrder().Where(f => f.FieldType == FieldType.Enum))
            {
                var bytes = new MemoryStream();
                using (var output = new CodedOutputStream(bytes, leaveOpen: true))
                {
                    output.WriteTag(filter.FieldNumber, WireFormat.WireType.Varint);
                    output.WriteEnum(99);
                }

                var request = Ask(call, names, null, "");
                request.MergeFrom(bytes.ToArray());
                var answer = await Assert.ThrowsAsync<RpcException>(() => Contract.CallAsync(server.Channel, call, request));
                var info = answer.GetRpcStatus()!.GetDetail<ErrorInfo>()!;
                Assert.Equal((call.FullName, "ENUM_UNKNOWN", filter.Name, "99"), (call.FullName, info.Reason, info.Metadata["field"], info.Metadata["value"]));
            }
        }
    }

    [Theory]
    [InlineData("ZZ-A0l", "did you mean ZZ-A01?")]
    [InlineData("zz-a10", "did you mean ZZ-A01?")]
    [InlineData("QQ-X77", "registered aircraft; got")]
    public async Task An_unknown_mark_is_answered_with_the_nearest_registered_one_where_one_is_near(string mark, string end)
    {
        await RefreshAsync();
        var answer = await Assert.ThrowsAsync<RpcException>(async () => await server.Flags.ListFlagsAsync(new ListFlagsRequest { Registration = mark }));
        Assert.Equal("AIRCRAFT_NOT_FOUND", answer.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason);
        Assert.StartsWith("registration: ", answer.Status.Detail, StringComparison.Ordinal);
        Assert.Contains(end, answer.Status.Detail, StringComparison.Ordinal);
        Assert.Contains(mark, answer.Status.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_location_of_another_layout_is_unknown_to_a_type_group()
    {
        await RefreshAsync();
        var elsewhere = "exhaust/cyl-2/gasket"; // shipped layouts have it, the one-cylinder layout does not
        await server.Trends.ListRatesAsync(new ListRatesRequest { Location = elsewhere });
        var answer = await Assert.ThrowsAsync<RpcException>(async () => await server.Trends.ListRatesAsync(
            new ListRatesRequest { Location = elsewhere, TypeGroup = ShopCards.TypeGroup }));
        Assert.Equal("LOCATION_NOT_FOUND", answer.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason);
        Assert.Contains("did you mean exhaust/cyl-1/gasket?", answer.Status.Detail, StringComparison.Ordinal);
    }

    [Fact] // Reports are an archive: before the first there is none, and the answer has no as_of_time.
    public async Task Before_any_refresh_every_list_of_results_says_that_there_are_no_trends_yet()
    {
        foreach (var call in Results.Where(call => Contract.NameOf(call) != "ReportService/ListReports"))
        {
            var request = Ask(call, [], null, "");
            if (request is ListEvidenceRequest evidence)
                evidence.Registration = Mark;
            var answer = await Assert.ThrowsAsync<RpcException>(() => Contract.CallAsync(server.Channel, call, request));
            Assert.Equal(
                (call.FullName, StatusCode.FailedPrecondition, "NO_TRENDS_YET"),
                (call.FullName, answer.StatusCode, answer.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason));
            Assert.Contains("RequestRefresh", answer.Status.Detail, StringComparison.Ordinal);
        }

        Assert.Null((await server.Reports.ListReportsAsync(new ListReportsRequest())).Freshness.AsOfTime);
    }

    [Fact]
    public async Task Every_list_of_results_says_its_moment_the_newest_record_and_whether_a_refresh_is_due()
    {
        await RefreshAsync();
        foreach (var (call, fresh) in await FreshnessAsync())
        {
            Assert.True(fresh.NewestRecordTime.ToDateTimeOffset() <= fresh.AsOfTime.ToDateTimeOffset(), call);
            Assert.False(fresh.RefreshPending, call);
        }

        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Reading("later", Mark, 20, 820) });
        foreach (var (call, fresh) in await FreshnessAsync())
        {
            Assert.True(fresh.NewestRecordTime.ToDateTimeOffset() > fresh.AsOfTime.ToDateTimeOffset(), call);
            Assert.True(fresh.RefreshPending, call);
        }
    }

    [Fact]
    public async Task Pages_say_that_nothing_is_known_and_help_where_a_mark_is_unknown()
    {
        foreach (var path in new[] { "/", "/flags", "/data-problems" })
            Assert.Contains("No refresh has run", await server.Http.GetStringAsync(path), StringComparison.Ordinal);
        await RefreshAsync();
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Reading("later", Mark, 20, 820) });
        foreach (var path in new[] { "/", "/flags", "/data-problems", $"/data-problems?registration={Mark}" })
            Assert.Contains("newer records are not in these numbers yet", await server.Http.GetStringAsync(path), StringComparison.Ordinal);

        using var unknown = await server.Http.GetAsync("/data-problems?registration=zz-a0l");
        var page = await unknown.Content.ReadAsStringAsync();
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
        Assert.Contains("No aircraft ZZ-A0L", page, StringComparison.Ordinal);
        Assert.Contains("Did you mean ZZ-A01?", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/data-problems\"", page, StringComparison.Ordinal);
    }

    private async Task<List<(string Call, Freshness Fresh)>> FreshnessAsync()
    {
        var all = new List<(string, Freshness)>();
        foreach (var call in Results)
        {
            var request = Ask(call, [], null, "");
            if (request is ListEvidenceRequest evidence)
                evidence.Registration = Mark;
            var answer = await Contract.CallAsync(server.Channel, call, request);
            var field = Assert.Single(
                call.OutputType.Fields.InDeclarationOrder(), f => f.FieldType == FieldType.Message && f.MessageType == Freshness.Descriptor);
            all.Add((call.FullName, Assert.IsType<Freshness>(field.Accessor.GetValue(answer))));
        }

        Assert.Equal(24, all.Count);
        return all;
    }

    /// <summary>A question with known names in every filter, but for one.</summary>
    private static IMessage Ask(MethodDescriptor call, IEnumerable<FieldDescriptor> filters, FieldDescriptor? unknown, string value)
    {
        var request = call.InputType.Parser.ParseFrom(ByteString.Empty);
        foreach (var filter in filters)
            filter.Accessor.SetValue(request, filter == unknown ? value : Known[filter.Name]);
        return request;
    }

    private static List<FieldDescriptor> NameFilters(MethodDescriptor call) =>
        [.. call.InputType.Fields.InDeclarationOrder().Where(f => f is { FieldType: FieldType.String, IsRepeated: false } && f.Name != "page_token")];

    private Task<FleetTrend.Trends.TrendSnapshot> RefreshAsync() => server.Services.RefreshAsync();
}
