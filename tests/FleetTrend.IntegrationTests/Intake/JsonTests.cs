using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using FleetTrend.Contracts.V1;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>The same calls as JSON over HTTP: the same outcomes, and errors equal to those of gRPC.</summary>
[Collection(SharedPostgres.Name)]
public sealed class JsonTests(PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly JsonFormatter Formatter = new(
        new JsonFormatter.Settings(formatDefaultValues: false, TypeRegistry.FromFiles(ErrorDetailsReflection.Descriptor)));

    private ApiServer server = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A01") });
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact] // The body is the example of protos/README.md.
    public async Task A_finding_in_plain_JSON_is_accepted()
    {
        using var response = await PostAsync("v1/records", """
            {
              "key": {"source": "shop-cards", "sourceRecordId": "card 17/1", "revision": 1},
              "finding": {
                "registration": "ZZ-A01",
                "location": "exhaust/cyl-1/flange-weld",
                "foundDate": {"year": 2026, "month": 2, "day": 3},
                "timeInServiceHours": 812.4,
                "condition": "CONDITION_CRACK",
                "sizeMm": 4.5
              }
            }
            """);

        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        var outcome = (await response.Content.ReadFromJsonAsync<JsonNode>())!["outcome"]!;
        Assert.Equal("RECORD_STATE_ACCEPTED", (string?)outcome["state"]);
        Assert.NotNull((string?)outcome["acceptTime"]);
    }

    public static TheoryData<string> BadRecords() => ["hours", "place", "source", "aircraft", "two rules", "nothing", "reused"];

    [Theory]
    [MemberData(nameof(BadRecords))]
    public async Task A_refusal_says_the_same_over_gRPC_and_JSON(string what)
    {
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Finding("card 1") });
        var record = BadRecord(what);
        var grpc = await Assert.ThrowsAsync<RpcException>(() =>
            server.Intake.PushRecordAsync(new PushRecordRequest { Record = record }).ResponseAsync);

        using var response = await PostAsync("v1/records", JsonFormatter.Default.Format(record));

        var expected = JsonNode.Parse(Formatter.Format(grpc.GetRpcStatus()));
        var actual = JsonNode.Parse(await response.Content.ReadAsStringAsync());
        Assert.True(JsonNode.DeepEquals(expected, actual), $"gRPC: {expected}\nJSON: {actual}");
        Assert.Equal(2, actual!["details"]!.AsArray().Count);
        Assert.InRange((int)response.StatusCode, 400, 499);
    }

    [Fact]
    public async Task A_batch_answers_line_by_line()
    {
        var request = new PushRecordsRequest { Records = { ShopCards.Finding("card 1"), ShopCards.Finding("card 2", hours: -3) } };
        using var response = await PostAsync("v1/records:push", JsonFormatter.Default.Format(request));

        var body = (await response.Content.ReadFromJsonAsync<JsonNode>())!;
        Assert.Equal((HttpStatusCode.OK, 1, 1), (response.StatusCode, (int)body["acceptedCount"]!, (int)body["refusedCount"]!));
        var details = body["outcomes"]![1]!["error"]!["details"]!;
        Assert.Equal("type.googleapis.com/google.rpc.ErrorInfo", (string?)details[0]!["@type"]);
        Assert.Equal("finding.time_in_service_hours", (string?)details[0]!["metadata"]!["field"]);
    }

    [Theory]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("\"x\"")]
    [InlineData("{\"key\": 7}")]
    [InlineData("{\"nosuchfield\": 7}")]
    [InlineData("{\"finding\": {\"condition\": \"CONDITION_NONE\"}}")]
    [InlineData("{\"finding\": {\"timeInServiceHours\": \"many\"}}")]
    [InlineData("{\"finding\": {\"note\": \"\\ud800\"}}")]
    [InlineData("{\"finding\": {\"foundDate\": {\"year\": 99999999999}}}")]
    public async Task What_is_no_record_is_a_bad_request(string body)
    {
        using var response = await PostAsync("v1/records", body);
        Assert.True(response.StatusCode == HttpStatusCode.BadRequest, await response.Content.ReadAsStringAsync());
        Assert.Equal(3, (int)JsonNode.Parse(await response.Content.ReadAsStringAsync())!["code"]!);
    }

    [Fact]
    public async Task A_null_among_the_records_is_refused_like_an_empty_one()
    {
        using var response = await PostAsync("v1/records:push", "{\"records\": [null, {}]}");
        Assert.InRange((int)response.StatusCode, 200, 499);
    }

    [Fact]
    public async Task Lists_page_with_opaque_tokens_and_refuse_others()
    {
        using var page = await server.Http.GetAsync("v1/layouts?page_size=1");
        var token = (string?)JsonNode.Parse(await page.Content.ReadAsStringAsync())!["nextPageToken"];
        Assert.False(string.IsNullOrEmpty(token));
        using var next = await server.Http.GetAsync($"v1/layouts?page_size=1&page_token={Uri.EscapeDataString(token)}");
        Assert.Equal(HttpStatusCode.OK, next.StatusCode);

        Assert.Equal("NUMBER_OUT_OF_RANGE", await ReasonAsync("v1/layouts?page_size=-1"));
        Assert.Equal("PAGE_TOKEN_INVALID", await ReasonAsync("v1/layouts?page_token=x.y"));
        Assert.Equal("PAGE_TOKEN_INVALID", await ReasonAsync("v1/flags?page_token=%00"));
        Assert.Equal("LAYOUT_NOT_FOUND", await ReasonAsync("v1/layouts/none"));
        Assert.Equal("REPORT_NOT_FOUND", await ReasonAsync("v1/reports/7"));
        Assert.Equal("NO_TRENDS_YET", await ReasonAsync("v1/trends/rates"));
    }

    private async Task<string?> ReasonAsync(string path)
    {
        using var response = await server.Http.GetAsync(path);
        return (string?)JsonNode.Parse(await response.Content.ReadAsStringAsync())!["details"]![0]!["reason"];
    }

    private async Task<HttpResponseMessage> PostAsync(string path, string json)
    {
        using var content = new StringContent(json, Encoding.UTF8, "application/json");
        return await server.Http.PostAsync(path, content);
    }

    private static Record BadRecord(string what)
    {
        var record = ShopCards.Finding(what == "reused" ? "card 1" : "card 2");
        switch (what)
        {
            case "hours":
                record.Finding.TimeInServiceHours = 812.45;
                break;
            case "place":
                record.Finding.Location = "exhaust/cyl-9/flange-weld";
                break;
            case "source":
                record.Key.Source = "other-tool";
                break;
            case "aircraft":
                record.Finding.Registration = "ZZ-Q77";
                break;
            case "two rules":
                record.Finding.FoundDate = null;
                record.Finding.SizeMm = double.PositiveInfinity;
                break;
            case "nothing":
                record.ClearContent();
                break;
            default:
                record.Finding.SizeMm = 8;
                break;
        }

        return record;
    }
}
