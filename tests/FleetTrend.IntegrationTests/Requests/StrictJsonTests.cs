using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;

namespace FleetTrend.IntegrationTests.Requests;

/// <summary>What goes wrong by hand: a misspelt name, a record wrapped once too often, a parameter in the wrong place. It is refused by name, and
/// says what was meant. Every form that ProtoJSON has is taken (protobuf.dev, "ProtoJSON Format").</summary>
[Collection(SharedPostgres.Name)]
public sealed class StrictJsonTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Good =
        """
        {"registration": "ZZ-A01", "location": "exhaust/cyl-1/flange-weld", "foundDate": {"year": 2024, "month": 2, "day": 3},
         "timeInServiceHours": 812.4, "condition": "CONDITION_CRACK"}
        """;

    private ApiServer server = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A01") });
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task A_misspelt_number_is_refused_and_not_stored_as_zero()
    {
        var answer = await PushAsync(Good.Replace("timeInServiceHours", "hours"));
        Assert.Equal([("finding.hours", "FIELD_UNKNOWN")], answer.Broken);
        Assert.Equal("finding.hours: must be the name of a field of finding; got \"hours\"; did you mean time_in_service_hours?", answer.Message);
        Assert.Equal(1, await server.CountAsync("records")); // the aircraft
    }

    [Fact]
    public async Task A_date_in_another_form_says_how_it_is_written()
    {
        var answer = await PushAsync(Good.Replace("{\"year\": 2024, \"month\": 2, \"day\": 3}", "\"2024-02-03\""));
        Assert.Equal(
            "finding.found_date: must be {year, month, day}, as in {\"year\": 2024, \"month\": 2, \"day\": 3}; got \"2024-02-03\"", answer.Message);
        answer = await PushAsync(Good.Replace("\"month\": 2", "\"month\": \"Feb\""));
        Assert.Equal([("finding.found_date.month", "TYPE_MISMATCH")], answer.Broken);
    }

    [Fact]
    public async Task A_choice_in_other_words_says_which_was_meant()
    {
        var answer = await PushAsync(Good.Replace("CONDITION_CRACK", "leak-trace"));
        Assert.Equal([("finding.condition", "ENUM_UNKNOWN")], answer.Broken);
        Assert.EndsWith("; got \"leak-trace\"; did you mean CONDITION_LEAK_TRACE?", answer.Message);
    }

    [Fact]
    public async Task A_record_that_is_wrapped_says_that_the_body_is_the_record()
    {
        var answer = await PostAsync("v1/records", $$"""{"record": {"key": {{Key("f")}}, "finding": {{Good}} } }""");
        Assert.Equal([("record", "FIELD_UNKNOWN")], answer.Broken);
        Assert.StartsWith("record: must be left out: the body is the record itself", answer.Message);
    }

    [Fact]
    public async Task A_write_that_was_to_be_a_check_writes_nothing()
    {
        var answer = await PostAsync("v1/records:push?validate_only=true", $$"""{"records": [{"key": {{Key("f")}}, "finding": {{Good}} }]}""");
        Assert.Equal("validate_only: must stand in the body of this call, not in the query; got \"validate_only\"", answer.Message);
        answer = await PostAsync("v1/keys?validateOnly=true", """{"name": "tablet", "scopes": ["SCOPE_TRENDS_READ"]}""");
        Assert.Equal([("validate_only", "FIELD_UNKNOWN")], answer.Broken);
        answer = await PostAsync("v1/records?validateonly=true", $$"""{"key": {{Key("f")}}, "finding": {{Good}} }""");
        Assert.Equal([("validateonly", "FIELD_UNKNOWN")], answer.Broken);
        Assert.EndsWith("did you mean validate_only?", answer.Message);
        Assert.Equal(1, await server.CountAsync("records"));
        Assert.Equal(1, await server.CountAsync("api_keys"));

        answer = await PostAsync("v1/records?validate_only=true", $$"""{"key": {{Key("f")}}, "finding": {{Good}} }""");
        Assert.Equal("RECORD_STATE_VALID", (string?)answer.Body!["outcome"]!["state"]);
        Assert.Equal(1, await server.CountAsync("records"));
    }

    [Theory]
    [InlineData("v1/records?regisration=ZZ-A01", "regisration", "registration")]
    [InlineData("v1/records?as_of=2026-03-01T00:00:00Z", "as_of", "as_of_time")]
    [InlineData("v1/trends/evidence?registration=ZZ-A01&as_of_tmie=2026-03-01T00:00:00Z", "as_of_tmie", "as_of_time")]
    [InlineData("v1/flags?Registration=ZZ-A01", "Registration", "registration")]
    public async Task A_misspelt_parameter_is_refused_and_does_not_list_everything(string path, string given, string meant)
    {
        var answer = await GetAsync(path);
        Assert.Equal([(given, "FIELD_UNKNOWN")], answer.Broken);
        Assert.EndsWith($"did you mean {meant}?", answer.Message);
    }

    [Fact]
    public async Task One_bad_record_of_a_batch_is_refused_by_itself()
    {
        var answer = await PostAsync(
            "v1/records:push",
            $$"""
            {"records": [
                {"key": {{Key("a")}}, "finding": {{Good}} },
                {"key": {{Key("b")}}, "finding": {{Good.Replace("\"ZZ-A01\"", "7")}}},
                null,
                {"key": {"source": 7}, "finding": {{Good}} },
                {"key": {{Key("c")}}, "finding": {{Good}} },
                [],
                {"key": {{Key("d")}}, "finding": {{Good.Replace("812.4", "812.45")}}}
            ]}
            """);
        Assert.Equal(HttpStatusCode.OK, answer.Status);
        var outcomes = answer.Body!["outcomes"]!.AsArray();
        Assert.Equal(
            [
                ("a", "RECORD_STATE_ACCEPTED", null), ("b", "RECORD_STATE_REFUSED", "finding.registration"), (null, "RECORD_STATE_REFUSED", "records[2]"),
                (null, "RECORD_STATE_REFUSED", "key.source"), ("c", "RECORD_STATE_ACCEPTED", null), (null, "RECORD_STATE_REFUSED", "records[5]"),
                ("d", "RECORD_STATE_REFUSED", "finding.time_in_service_hours"),
            ],
            outcomes.Select(o => ((string?)o!["key"]?["sourceRecordId"], (string)o["state"]!, (string?)o["error"]?["details"]?[0]?["metadata"]?["field"])));
        Assert.Equal((2, 5), ((int)answer.Body["acceptedCount"]!, (int)answer.Body["refusedCount"]!));
        Assert.Equal("finding.registration: must be a text in quotes; got 7", (string?)outcomes[1]!["error"]!["message"]);
        Assert.Equal(3, await server.CountAsync("records"));
    }

    [Fact]
    public async Task A_batch_of_bad_records_only_has_an_outcome_for_each()
    {
        foreach (var only in new[] { "true", "false" })
        {
            var answer = await PostAsync("v1/records:push", $$"""{"records": [{"kye": {{Key("a")}} }, 7], "validateOnly": {{only}} }""");
            Assert.Equal(2, (int)answer.Body!["refusedCount"]!);
            Assert.Equal("kye: must be the name of a field of the record; got \"kye\"; did you mean key?", answer.Message);
        }
    }

    [Fact]
    public async Task Every_form_that_ProtoJSON_has_is_taken()
    {
        string[] forms =
        [
            Good,
            Good.Replace("timeInServiceHours", "time_in_service_hours").Replace("foundDate", "found_date"),
            Good.Replace("812.4", "\"812.4\""),
            Good.Replace("812.4", "8.124e2"),
            Good.Replace("\"CONDITION_CRACK\"", "1"),
            Good.Replace("2024", "\"2024\"").Replace("\"month\": 2", "\"month\": 2.0").Replace("\"day\": 3", "\"day\": 3e0"),
            Good.Replace("{\"registration\"", "{\"note\": null, \"size_mm\": null, \"grade\": null, \"registration\""),
            Good.Replace("{\"registration\"", "{\"note\": \"beside the weld \\u00e9 \\ud83d\\ude00\", \"sizeMm\": \"4.5\", \"registration\""),
        ];
        foreach (var (index, form) in forms.Index())
        {
            var answer = await PostAsync("v1/records", $$"""{"key": {{Key($"form {index}")}}, "finding": {{form}}, "action": null}""");
            Assert.True((string?)answer.Body?["outcome"]?["state"] == "RECORD_STATE_ACCEPTED", $"{form}: {answer.Body}");
        }

        var note = await GetAsync($"v1/records:get?source={ShopCards.Source}&sourceRecordId=form%207");
        Assert.Equal("beside the weld \u00e9 \ud83d\ude00", (string?)note.Body!["record"]!["record"]!["finding"]!["note"]);
        Assert.Equal(1.0, (double)(await GetAsync("v1/records?kind=7&page_size=1&registration=zz-a01")).Body!["records"]!.AsArray().Count);
        using var mark = new ByteArrayContent([.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes($$"""{"key": {{Key("mark")}}, "finding": {{Good}} }""")]);
        mark.Headers.ContentType = new("application/json");
        using var response = await server.Http.PostAsync("v1/records", mark);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
    }

    [Theory]
    [InlineData("NaN")]
    [InlineData("Infinity")]
    [InlineData("-Infinity")]
    public async Task A_number_that_is_none_is_read_and_refused_by_its_rule(string number) =>
        Assert.Equal([("finding.time_in_service_hours", "NUMBER_NOT_FINITE")], (await PushAsync(Good.Replace("812.4", $"\"{number}\""))).Broken);

    [Theory]
    [InlineData("\"timeInServiceHours\": 812.4", "\"timeInServiceHours\": 1, \"timeInServiceHours\": 812.4", "finding.time_in_service_hours", "FIELD_TWICE")]
    [InlineData("\"timeInServiceHours\": 812.4", "\"timeInServiceHours\": 1, \"time_in_service_hours\": 812.4", "finding.time_in_service_hours", "FIELD_TWICE")]
    [InlineData("812.4", "1e999", "finding.time_in_service_hours", "TYPE_MISMATCH")]
    [InlineData("812.4", "\" 812.4\"", "finding.time_in_service_hours", "TYPE_MISMATCH")]
    [InlineData("812.4", "\"812,4\"", "finding.time_in_service_hours", "TYPE_MISMATCH")]
    [InlineData("\"CONDITION_CRACK\"", "\"1\"", "finding.condition", "ENUM_UNKNOWN")]
    [InlineData("\"CONDITION_CRACK\"", "99", "finding.condition", "ENUM_UNKNOWN")]
    [InlineData("\"ZZ-A01\"", "\"\\ud800\"", "finding.registration", "TYPE_MISMATCH")]
    [InlineData("\"year\": 2024", "\"year\": 99999999999", "finding.found_date.year", "TYPE_MISMATCH")]
    public async Task What_has_two_meanings_or_none_is_refused(string good, string bad, string field, string reason) =>
        Assert.Equal([(field, reason)], (await PushAsync(Good.Replace(good, bad))).Broken);

    [Fact]
    public async Task Two_contents_are_refused()
    {
        var answer = await PostAsync("v1/records", $$"""{"key": {{Key("f")}}, "finding": {{Good}}, "retraction": { } }""");
        Assert.Equal([("retraction", "FIELD_NOT_ALLOWED")], answer.Broken);
        Assert.EndsWith("; got finding and retraction", answer.Message);
    }

    [Fact]
    public async Task A_body_where_none_belongs_is_refused()
    {
        var codes = new CodeService.CodeServiceClient(server.Channel);
        await codes.SetCodeAsync(new SetCodeRequest { Code = new SourceCode { Source = ShopCards.Source, Code = "EX1", Location = ShopCards.Weld } });
        using var delete = new HttpRequestMessage(HttpMethod.Delete, $"v1/codes?source={ShopCards.Source}&kind=CODE_KIND_LOCATION&code=EX1")
        {
            Content = JsonContent.Create(new { validateOnly = true }),
        };
        using var response = await server.Http.SendAsync(delete);
        var answer = JsonAnswer.Read(response.StatusCode, await response.Content.ReadFromJsonAsync<JsonNode>());
        Assert.Equal([("body", "FIELD_NOT_ALLOWED")], answer.Broken);
        Assert.Equal(1, await server.CountAsync("source_codes"));
    }

    [Fact]
    public async Task What_stands_in_the_path_does_not_stand_in_the_body()
    {
        var answer = await PostAsync("v1/flags/7:close", """{"flagId": "8", "closedBy": "lead", "comment": "done"}""");
        Assert.Equal([("flag_id", "FIELD_NOT_ALLOWED")], answer.Broken);
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/json; charset=utf-16")]
    [InlineData("application/x-www-form-urlencoded")]
    public async Task A_body_that_is_not_told_to_be_JSON_is_refused(string type)
    {
        using var content = new ByteArrayContent("{}"u8.ToArray());
        content.Headers.TryAddWithoutValidation("Content-Type", type);
        using var response = await server.Http.PostAsync("v1/trends:refresh", content);
        var answer = JsonAnswer.Read(response.StatusCode, await response.Content.ReadFromJsonAsync<JsonNode>());
        Assert.Equal((HttpStatusCode.BadRequest, "MESSAGE_MALFORMED"), (answer.Status, answer.Reason));
    }

    [Fact]
    public async Task Who_has_no_key_is_told_so_before_what_was_sent_is_read()
    {
        using var nobody = server.HttpWith(null);
        foreach (var (path, json) in new[] { ("v1/records", "{\"hours\": 1}"), ("v1/records", "no JSON"), ("v1/records?regisration=1", "{}") })
        {
            using var content = new StringContent(json, Encoding.UTF8, "application/json");
            using var response = await nobody.PostAsync(path, content);
            var answer = JsonAnswer.Read(response.StatusCode, await response.Content.ReadFromJsonAsync<JsonNode>());
            Assert.Equal((HttpStatusCode.Unauthorized, "KEY_REQUIRED"), (answer.Status, answer.Reason));
        }
    }

    [Fact]
    public async Task A_body_of_many_wrong_fields_is_answered_with_the_first()
    {
        var fields = string.Join(',', Enumerable.Range(0, 200_000).Select(i => $"\"x{i}\": 1"));
        var answer = await PostAsync("v1/sources", $"{{{fields}}}");
        Assert.Equal((HttpStatusCode.BadRequest, 20), (answer.Status, answer.Broken.Count));
    }

    private static string Key(string id) => $$"""{"source": "{{ShopCards.Source}}", "sourceRecordId": "{{id}}"}""";

    private Task<JsonAnswer> PushAsync(string finding) => PostAsync("v1/records", $$"""{"key": {{Key("f")}}, "finding": {{finding}} }""");

    private async Task<JsonAnswer> PostAsync(string path, string json)
    {
        using var content = new StringContent(json, Encoding.UTF8, "application/json");
        using var response = await server.Http.PostAsync(path, content);
        return JsonAnswer.Read(response.StatusCode, await response.Content.ReadFromJsonAsync<JsonNode>());
    }

    private async Task<JsonAnswer> GetAsync(string path)
    {
        using var response = await server.Http.GetAsync(path);
        return JsonAnswer.Read(response.StatusCode, await response.Content.ReadFromJsonAsync<JsonNode>());
    }
}
