using System.Net;
using System.Text.Json.Nodes;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Access;
using FleetTrend.IntegrationTests.Intake;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;

namespace FleetTrend.IntegrationTests.Requests;

/// <summary>Every message of every call, over JSON: a field that is not in the contract, a value of another type, a field that is absent or
/// null, and every parameter. Each is refused with its path and reason, or means what the contract says. The calls come from the
/// descriptors, so that a new one is in here, or fails here.</summary>
[Collection(SharedPostgres.Name)]
public sealed class JsonMatrixTests(PostgresFixture postgres) : IAsyncLifetime
{
    /// <summary>Lists and messages that may be absent, which the contract says at each.</summary>
    private static readonly string[] MayBeAbsent =
    [
        "Inspection.looks", "SetRecipientsRequest.addresses", "ReportSchedule.recipients", "Aircraft.retired_date", "SourceCode.set_time", "Source.create_time",
        "LocationKind.failure_conditions", "LocationKind.watched_conditions", "LocationKind.checks", "LocationKind.base_checks",
        "Parameters.look_intervals",
        "Parameters.maker_limits",
    ];

    private ApiServer server = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft(WriteRequests.Aircraft) });
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public void Every_call_that_writes_has_its_request_here() => Assert.Equal(
        Contract.Writes.Select(Contract.NameOf).ToHashSet(StringComparer.Ordinal),
        WriteRequests.All().Select(pair => Contract.NameOf(pair.Call)).ToHashSet(StringComparer.Ordinal));

    [Fact] // What is asked about is not there for some; no rule of a field is broken.
    public async Task As_they_are_the_requests_are_taken()
    {
        foreach (var one in Writes())
        {
            var answer = await one.SendAsync(server.Http);
            Assert.True(answer.Reason.Length == 0 || answer.Reason.EndsWith("_NOT_FOUND", StringComparison.Ordinal), $"{one.Call.FullName}: {answer.Body}");
        }
    }

    [Fact]
    public async Task A_field_that_the_contract_does_not_have_is_refused()
    {
        var tried = 0;
        foreach (var one in Writes())
        {
            foreach (var place in one.Places())
            {
                var answer = await one.SendAsync(server.Http, place.In(one.Body!, o => o["no_such_field"] = 1));
                AssertRefused(one, answer, place.Path + "no_such_field", "FIELD_UNKNOWN");
                tried++;
            }
        }

        Assert.InRange(tried, 60, 1_000);
    }

    [Fact]
    public async Task A_value_of_another_type_is_refused()
    {
        var tried = 0;
        foreach (var one in Writes())
        {
            foreach (var place in one.Places())
            {
                foreach (var field in place.Message.Fields.InDeclarationOrder().Where(f => !one.InPath.Contains(f)))
                {
                    foreach (var wrong in WrongValues(field))
                    {
                        var answer = await one.SendAsync(server.Http, place.In(one.Body!, o => Put(o, field, wrong)));
                        AssertRefused(one, answer, place.Path + field.Name, field is { FieldType: FieldType.Enum, IsRepeated: false } ? "ENUM_UNKNOWN" : "TYPE_MISMATCH");
                        tried++;
                    }
                }
            }
        }

        Assert.InRange(tried, 400, 10_000);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_field_that_is_absent_or_null_is_refused_or_means_what_the_contract_says(bool isNull)
    {
        var (refused, taken) = (0, 0);
        foreach (var one in Writes())
        {
            var whole = await one.SendAsync(server.Http);
            foreach (var place in one.Places())
            {
                foreach (var field in place.Message.Fields.InDeclarationOrder().Where(f => f.Name != "validate_only"))
                {
                    var isGiven = true;
                    var body = place.In(one.Body!, o =>
                    {
                        isGiven = o.Remove(field.JsonName);
                        if (isNull)
                            o[field.JsonName] = null;
                    });
                    if (!isGiven)
                        continue;
                    var answer = await one.SendAsync(server.Http, body);
                    if (MeansSomething(field, place))
                    {
                        Assert.True(whole.Reason == answer.Reason, $"{one.Call.FullName} without {place.Path}{field.Name}: {answer.Body}");
                        taken++;
                    }
                    else
                    {
                        var (path, reason) = Required(field, place);
                        AssertRefused(one, answer, path, reason);
                        refused++;
                    }
                }
            }
        }

        Assert.InRange(refused, 100, 1_000);
        Assert.InRange(taken, 30, 1_000);
    }

    [Fact]
    public async Task A_required_number_that_is_absent_is_refused_over_gRPC_too()
    {
        foreach (var record in WriteRequests.Records())
        {
            var content = Record.Descriptor.Oneofs.Single(o => o.Name == "content").Accessor.GetCaseFieldDescriptor(record);
            foreach (var field in content.MessageType.Fields.InDeclarationOrder()
                .Where(f => f is { FieldType: FieldType.Double, HasPresence: true } && AbsentFieldTests.MeaningOf(f) is null))
            {
                var without = record.Clone();
                field.Accessor.Clear((IMessage)content.Accessor.GetValue(without));
                var outcome = (await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { without } })).Outcomes.Single();
                Assert.StartsWith($"{content.Name}.{field.Name}: must be hours", outcome.Error.Message);
            }
        }
    }

    [Fact]
    public async Task A_parameter_that_the_call_does_not_have_is_refused_with_the_nearest_that_it_has()
    {
        foreach (var one in Writes().Concat(Reads()))
        {
            var answer = await one.SendAsync(server.Http, query: Query(one, "no_such_field=1"));
            AssertRefused(one, answer, "no_such_field", "FIELD_UNKNOWN");
            foreach (var field in one.Parameters)
            {
                answer = await one.SendAsync(server.Http, query: Query(one, $"{field.Name[..^1]}=1"));
                AssertRefused(one, answer, field.Name[..^1], "FIELD_UNKNOWN");
                Assert.Contains($"did you mean {field.Name}?", answer.Message);
            }
        }
    }

    [Fact]
    public async Task A_parameter_of_another_type_or_given_twice_is_refused()
    {
        foreach (var one in Writes().Concat(Reads()))
        {
            foreach (var field in one.Parameters)
            {
                one.Query.Remove(field.Name);
                var twice = await one.SendAsync(server.Http, query: Query(one, $"{field.Name}=1&{field.Name}=1"));
                AssertRefused(one, twice, field.Name, "FIELD_TWICE");
                if (field.Name != field.JsonName)
                {
                    var value = field.FieldType switch { FieldType.Bool => "true", FieldType.Message => "2026-02-03T10:15:00Z", _ => "1" };
                    twice = await one.SendAsync(server.Http, query: Query(one, $"{field.Name}={value}&{field.JsonName}={value}"));
                    AssertRefused(one, twice, field.Name, "FIELD_TWICE");
                }

                if (field.FieldType == FieldType.String)
                    continue;
                var wrong = await one.SendAsync(server.Http, query: Query(one, $"{field.Name}=wrong"));
                AssertRefused(one, wrong, field.Name, field.FieldType == FieldType.Enum ? "ENUM_UNKNOWN" : "TYPE_MISMATCH");
            }
        }
    }

    [Fact]
    public async Task A_field_of_the_body_is_no_parameter_and_the_other_way_round()
    {
        foreach (var one in Writes().Where(one => one.Body is not null))
        {
            var name = one.BodyType == one.Call.InputType ? "validate_only" : one.BodyType.Fields.InDeclarationOrder()[0].Name;
            var answer = await one.SendAsync(server.Http, query: Query(one, $"{name}=true"));
            Assert.Equal((one.Call.FullName, "FIELD_UNKNOWN"), (one.Call.FullName, answer.Reason));
            Assert.Contains("must stand in the body of this call, not in the query", answer.Message);
            if (one.BodyType == one.Call.InputType)
                continue;
            answer = await one.SendAsync(server.Http, one.Places().First().In(one.Body!, o => o["validateOnly"] = true));
            Assert.Equal((one.Call.FullName, "FIELD_UNKNOWN"), (one.Call.FullName, answer.Reason));
            Assert.Contains("must stand in the query, as in ?validate_only=true", answer.Message);
        }
    }

    private static IEnumerable<JsonCase> Writes() =>
        WriteRequests.All().Where(pair => Contract.HttpOf(pair.Call) is not null).Select(pair => new JsonCase(pair.Call, pair.Request));

    private static IEnumerable<JsonCase> Reads() => Contract.Calls.Except(Contract.Writes).Where(call => call.Name != "ReproduceReport")
        .Select(call => new JsonCase(call, call.InputType.Parser.ParseFrom(ByteString.Empty)));

    private static string Query(JsonCase one, string added) =>
        string.Join('&', one.Query.Select(pair => $"{pair.Key}={Uri.EscapeDataString(pair.Value)}").Append(added));

    private static IEnumerable<JsonNode> WrongValues(FieldDescriptor field) => (field.IsRepeated, field.FieldType) switch
    {
        (true, _) => [7, "x", new JsonObject()],
        (_, FieldType.String) => [7, true, new JsonArray()],
        (_, FieldType.Bool) => ["true", 1],
        (_, FieldType.Enum) => ["NO_SUCH_VALUE", 1.5, true, new JsonObject()],
        (_, FieldType.Message) when field.MessageType == Timestamp.Descriptor => [7, "yesterday"],
        (_, FieldType.Message) => [7, "2026-02-03", new JsonArray()],
        (_, FieldType.Double) => ["many", true, new JsonArray()],
        _ => ["1.5", 1.5, "many", true, new JsonObject()],
    };

    /// <summary>Sets a field, and takes away what cannot stand beside it.</summary>
    private static void Put(JsonObject at, FieldDescriptor field, JsonNode value)
    {
        foreach (var other in field.RealContainingOneof?.Fields ?? [])
            at.Remove(other.JsonName);
        at[field.JsonName] = value.DeepClone();
    }

    private static bool MeansSomething(FieldDescriptor field, JsonCase.Place place) =>
        place.Message != Google.Type.Date.Descriptor && field.RealContainingOneof is null
        && (AbsentFieldTests.MeaningOf(field) is not null || MayBeAbsent.Contains(AbsentFieldTests.NameOf(field), StringComparer.Ordinal))
        && !IsRevisionOfRetraction(field, place);

    /// <summary>A retraction has a revision above the one that it takes back; the 1 that absent means is none.</summary>
    private static bool IsRevisionOfRetraction(FieldDescriptor field, JsonCase.Place place) =>
        field.Name == "revision" && place.IsOfRetraction;

    private static (string Path, string Reason) Required(FieldDescriptor field, JsonCase.Place place) =>
        place.Message == Google.Type.Date.Descriptor ? (place.Path.TrimEnd('.'), "DATE_INVALID")
        : IsRevisionOfRetraction(field, place) ? (place.Path + field.Name, "NUMBER_OUT_OF_RANGE")
        : (place.Path + (field.RealContainingOneof?.Name ?? field.Name), "FIELD_REQUIRED");

    private static void AssertRefused(JsonCase one, JsonAnswer answer, string path, string reason)
    {
        Assert.True(
            answer.Broken.Contains((path, reason)), $"{one.Call.FullName}: {path} should be refused with {reason}, and was answered {answer.Status} {answer.Body}");
        Assert.True(answer.Status == HttpStatusCode.BadRequest || (answer.Status == HttpStatusCode.OK && (string?)answer.Body!["outcomes"]![0]!["state"] == "RECORD_STATE_REFUSED"));
        Assert.Matches("^[a-z_0-9.\\[\\]-]+: must .+; got .+$", answer.Message.Split(" (")[0]);
        if (answer.Status == HttpStatusCode.OK)
            Assert.Equal("RECORD_STATE_VALID", (string?)answer.Body!["outcomes"]![1]!["state"]);
    }
}
