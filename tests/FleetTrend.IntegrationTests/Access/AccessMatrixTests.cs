using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store.Keys;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Rpc;
using Grpc.AspNetCore.Server;
using Grpc.Core;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>Every call of the contract against no key, a wrong one, a revoked one, one of the wrong scope, and a record of another
/// source; over gRPC, and over JSON where the call has a path. What opens which call is the product's own rule, written here once more.</summary>
[Collection(SharedPostgres.Name)]
public sealed class AccessMatrixTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string OtherSource = "other-cards";
    private static readonly string[] AccessReasons = ["KEY_REQUIRED", "KEY_UNKNOWN", "KEY_REVOKED", "SCOPE_REQUIRED"];

    /// <summary>W: records write, R: trends read, N: answer, A: administer; any one of them opens the call.</summary>
    private static readonly Dictionary<string, string> Openers = new(StringComparer.Ordinal)
    {
        ["AccessService/CreateKey"] = "A",
        ["AccessService/GetOwnKey"] = "WRNA",
        ["AccessService/ListKeys"] = "A",
        ["AccessService/RevokeKey"] = "A",
        ["CheckService/CloseDataCheck"] = "NA",
        ["CheckService/ListDataChecks"] = "R",
        ["CheckService/ListFindingMerges"] = "R",
        ["CheckService/MergeFindings"] = "NA",
        ["CheckService/UnmergeFindings"] = "NA",
        ["CodeService/DeleteCode"] = "WNA",
        ["CodeService/ListCodes"] = "WNA",
        ["CodeService/ListUnmappedCodes"] = "WNA",
        ["CodeService/SetCode"] = "WNA",
        ["FlagService/AcknowledgeFlag"] = "NA",
        ["FlagService/ActOnFlag"] = "NA",
        ["FlagService/AssignFlag"] = "NA",
        ["FlagService/CloseFlag"] = "NA",
        ["FlagService/ListFlagSteps"] = "R",
        ["FlagService/ReopenFlag"] = "NA",
        ["FlagService/ListFlags"] = "R",
        ["IntakeService/ListHeldRecords"] = "WNA",
        ["IntakeService/PushRecord"] = "W",
        ["IntakeService/PushRecords"] = "W",
        ["IntakeService/StreamRecords"] = "W",
        ["LayoutService/CreateLocationKind"] = "A",
        ["LayoutService/CreateLayout"] = "A",
        ["LayoutService/CreateTypeGroup"] = "A",
        ["LayoutService/GetLayout"] = "WRNA",
        ["LayoutService/ListLayouts"] = "WRNA",
        ["LayoutService/ListLocationKinds"] = "WRNA",
        ["LayoutService/ListTypeGroups"] = "WRNA",
        ["ParameterService/ChangeParameters"] = "NA",
        ["ParameterService/GetParameters"] = "RA",
        ["ParameterService/ListParameterRevisions"] = "RA",
        ["RecordService/GetRecord"] = "WRNA",
        ["RecordService/ListRecordRevisions"] = "WRNA",
        ["RecordService/ListRecords"] = "WRNA",
        ["ReportService/GetReport"] = "R",
        ["ReportService/ListMails"] = "A",
        ["ReportService/ListRecipients"] = "A",
        ["ReportService/ListReportRequests"] = "A",
        ["ReportService/ListReports"] = "R",
        ["ReportService/ReproduceReport"] = "R",
        ["ReportService/RequestReport"] = "A",
        ["ReportService/RetryMail"] = "A",
        ["ReportService/SetRecipients"] = "A",
        ["ReportScheduleService/DeleteReportSchedule"] = "NA",
        ["ReportScheduleService/GetReportPreview"] = "NA",
        ["ReportScheduleService/ListReportSchedules"] = "NA",
        ["ReportScheduleService/SendReportNow"] = "NA",
        ["ReportScheduleService/SetReportSchedule"] = "NA",
        ["SourceService/CreateSource"] = "A",
        ["SourceService/ListSources"] = "A",
        ["TrendService/ListEvidence"] = "R",
        ["TrendService/ListPartLives"] = "R",
        ["TrendService/ListPartNumbers"] = "R",
        ["TrendService/ListRates"] = "R",
        ["TrendService/ListRecurrences"] = "R",
        ["TrendService/ListLevels"] = "R",
        ["TrendService/ListOpenFindings"] = "R",
        ["TrendService/ListDueLooks"] = "R",
        ["TrendService/GetAuthorityDraft"] = "R",
        ["TrendService/GetLookList"] = "R",
        ["TrendService/ListFailureChances"] = "R",
        ["TrendService/ListChanceCalibrations"] = "R",
        ["TrendService/ListRepairs"] = "R",
        ["TrendService/ListSpares"] = "R",
        ["TrendService/ListLeakErosions"] = "R",
        ["TrendService/ListPositions"] = "R",
        ["TrendService/ListShrouds"] = "R",
        ["TrendService/ListRenewalAges"] = "R",
        ["TrendService/ListGrowth"] = "R",
        ["TrendService/ListEffects"] = "R",
        ["TrendService/ListScores"] = "R",
        ["TrendService/ListQuiet"] = "R",
        ["TrendService/ListSilences"] = "R",
        ["TrendService/RequestRefresh"] = "WA",
    };

    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public void Every_call_of_the_contract_has_its_row_here() =>
        Assert.Equal(Contract.Calls.Select(Contract.NameOf), Openers.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public async Task Without_a_good_key_no_call_is_let_in()
    {
        var good = await server.CreateKeyAsync(ShopCards.Source, Enum.GetValues<KeyScope>());
        var revoked = await server.CreateKeyAsync(ShopCards.Source, Enum.GetValues<KeyScope>());
        await server.Access.RevokeKeyAsync(new() { KeyId = revoked.Split('_')[1] });
        (string? Key, string Reason)[] bad =
        [
            (null, "KEY_REQUIRED"),
            ("", "KEY_REQUIRED"),
            ("ftk", "KEY_UNKNOWN"),
            (KeyText.Create().Reveal(), "KEY_UNKNOWN"), // no such identifier
            (WithLastLetterChanged(good), "KEY_UNKNOWN"),
            ($"{good} ", ""), // the space is no part of it
            ($"{good}x", "KEY_UNKNOWN"),
            (good.ToUpperInvariant(), "KEY_UNKNOWN"),
            (revoked, "KEY_REVOKED"),
            (WithLastLetterChanged(revoked), "KEY_UNKNOWN"),
        ];
        foreach (var (key, reason) in bad)
        {
            foreach (var (call, over, answer) in await AskEveryCallAsync(key))
            {
                if (reason.Length == 0)
                    Assert.DoesNotContain(answer.Reason, AccessReasons);
                else
                    Assert.Equal((call, over, reason, StatusCode.Unauthenticated), (call, over, answer.Reason, answer.Code));
            }
        }
    }

    [Theory]
    [InlineData(KeyScope.RecordsWrite, 'W')]
    [InlineData(KeyScope.TrendsRead, 'R')]
    [InlineData(KeyScope.Administer, 'A')]
    [InlineData(KeyScope.Answer, 'N')]
    public async Task A_key_opens_what_its_scope_opens_and_nothing_else(KeyScope scope, char letter)
    {
        var key = await server.CreateKeyAsync(scope == KeyScope.RecordsWrite ? ShopCards.Source : null, scope);
        foreach (var (call, over, answer) in await AskEveryCallAsync(key))
        {
            if (Openers[call].Contains(letter, StringComparison.Ordinal))
                Assert.DoesNotContain(answer.Reason, AccessReasons);
            else
                Assert.Equal((call, over, "SCOPE_REQUIRED", StatusCode.PermissionDenied), (call, over, answer.Reason, answer.Code));
        }
    }

    [Fact]
    public async Task A_source_neither_sees_nor_changes_records_of_another()
    {
        await server.IntakeOfAsync(OtherSource); // it is registered
        var key = await server.CreateKeyAsync(ShopCards.Source, KeyScope.RecordsWrite);
        var about = Served().Where(call => Openers[Contract.NameOf(call)].Contains('W', StringComparison.Ordinal))
            .Select(call => (Call: call, Request: Contract.RequestAbout(call, OtherSource)))
            .Where(pair => pair.Request is not null)
            .ToList();
        Assert.Superset(
            new HashSet<string>(["IntakeService/PushRecord", "IntakeService/PushRecords", "IntakeService/StreamRecords"], StringComparer.Ordinal),
            about.Select(pair => Contract.NameOf(pair.Call)).ToHashSet(StringComparer.Ordinal));
        foreach (var (call, request) in about)
        {
            var overGrpc = await AskAsync(server.ChannelWith(key), call, request!);
            Assert.Equal((call.FullName, "SOURCE_NOT_YOURS", StatusCode.PermissionDenied), (call.FullName, overGrpc.Reason, overGrpc.Code));
            if (Contract.HttpOf(call) is { } http)
            {
                using var client = server.HttpWith(key);
                var overJson = await AskAsync(client, http, request!);
                Assert.Equal((call.FullName, "SOURCE_NOT_YOURS", StatusCode.PermissionDenied), (call.FullName, overJson.Reason, overJson.Code));
            }
        }

        await using var command = server.Database.DataSource.CreateCommand(
            $"select count(*) from records join sources on sources.id = source_id where name = '{OtherSource}'");
        Assert.Equal(0L, await command.ExecuteScalarAsync());
    }

    private static string WithLastLetterChanged(string key) => key[..^1] + (key[^1] == 'a' ? 'b' : 'a');

    /// <summary>Calls whose service this host serves.</summary>
    private IEnumerable<MethodDescriptor> Served()
    {
        var served = server.Services.GetRequiredService<EndpointDataSource>().Endpoints
            .Select(endpoint => endpoint.Metadata.GetMetadata<GrpcMethodMetadata>()?.Method.FullName)
            .OfType<string>()
            .ToHashSet(StringComparer.Ordinal);
        return Contract.Calls.Where(call => served.Contains($"/{call.Service.FullName}/{call.Name}"));
    }

    private async Task<List<(string Call, string Over, Answer Answer)>> AskEveryCallAsync(string? key)
    {
        var channel = server.ChannelWith(key);
        using var http = server.HttpWith(key);
        var answers = new List<(string, string, Answer)>();
        foreach (var call in Served())
        {
            answers.Add((Contract.NameOf(call), "gRPC", await AskAsync(channel, call, call.InputType.Parser.ParseFrom(ByteString.Empty))));
            if (Contract.HttpOf(call) is { } path)
                answers.Add((Contract.NameOf(call), "JSON", await AskAsync(http, path, null)));
        }

        Assert.True(answers.Count > 60, $"{answers.Count} answers");
        return answers;
    }

    private static async Task<Answer> AskAsync(ChannelBase channel, MethodDescriptor call, IMessage request)
    {
        try
        {
            var answer = await Contract.CallAsync(channel, call, request);
            return answer is null || Contract.StatusIn(answer) is not { } status ? new Answer("", StatusCode.OK) : Read(status);
        }
        catch (RpcException refusal)
        {
            return refusal.GetRpcStatus() is { } status ? Read(status) : new Answer("", refusal.StatusCode);
        }
    }

    private static async Task<Answer> AskAsync(HttpClient http, (HttpMethod Verb, string Path, string? Body) call, IMessage? request)
    {
        var json = request is null ? "{}" : JsonFormatter.Default.Format(BodyOf(request, call.Body));
        var query = request is not null && call.Body is null ? $"?source={OtherSource}" : "";
        using var message = new HttpRequestMessage(call.Verb, call.Path[1..] + query);
        if (call.Body is not null)
            message.Content = new StringContent(json, Encoding.UTF8, "application/json");
        using var response = await http.SendAsync(message);
        var body = await response.Content.ReadFromJsonAsync<JsonNode>();
        var status = response.IsSuccessStatusCode ? body!["outcomes"]?[0]?["error"] : body;
        Assert.True(
            response.IsSuccessStatusCode || (int)response.StatusCode is >= 400 and < 500 or 501, $"{call.Path}: {(int)response.StatusCode} {body}");
        return new Answer((string?)status?["details"]?.AsArray().FirstOrDefault()?["reason"] ?? "", (StatusCode)((int?)status?["code"] ?? 0));
    }

    /// <summary>What of a request is its body: everything, or one field.</summary>
    private static IMessage BodyOf(IMessage request, string? body) =>
        body is null or "*" ? request : (IMessage)request.Descriptor.FindFieldByName(body).Accessor.GetValue(request);

    private static Answer Read(Google.Rpc.Status status) => new(status.GetDetail<ErrorInfo>()?.Reason ?? "", (StatusCode)status.Code);

    private sealed record Answer(string Reason, StatusCode Code);
}
