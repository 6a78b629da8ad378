using System.Net;
using System.Text;
using System.Text.Json;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Tests.Rules;
using Google.Api;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Rpc;
using Grpc.Core;
using Method = Grpc.Core.Method<byte[], byte[]>;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>
/// Over a hundred thousand messages that no honest caller sends, over gRPC and JSON: each gets an answer that the guide describes, none
/// is an internal fault, and what was accepted is there whole.
/// </summary>
[Collection(SharedPostgres.Name)]
public sealed class HostileTrafficTests(PostgresFixture postgres)
{
    private const int StreamMessages = 70_000;
    private const int GrpcMessages = 20_000;
    private const int JsonMessages = 15_000;
    private const int Senders = 8;

    private static readonly HashSet<string> Documented =
        [.. Reasons.All.Where(r => r.Code is not (Code.Internal or Code.Unavailable)).Select(r => r.Name)];

    private static readonly Marshaller<byte[]> Bytes = Marshallers.Create<byte[]>(b => b, b => b);

    private static readonly MethodDescriptor[] Calls =
    [
        .. typeof(IntakeService).Assembly.GetTypes()
            .Select(t => t.GetProperty("Descriptor")?.GetValue(null)).OfType<FileDescriptor>()
            .SelectMany(file => file.Services).SelectMany(service => service.Methods)
            .Where(method => !method.IsClientStreaming).OrderBy(method => method.FullName, StringComparer.Ordinal),
    ];

    [Fact]
    public async Task Hostile_records_of_a_stream_each_get_an_outcome_and_what_is_accepted_is_whole()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await RegisterAsync(server);
        using var call = server.Intake.StreamRecords();
        var reading = Task.Run(async () =>
        {
            var outcomes = new List<RecordOutcome>();
            while (await call.ResponseStream.MoveNext(default))
                outcomes.Add(call.ResponseStream.Current.Outcome);
            return outcomes;
        });
        for (var i = 0; i < StreamMessages; i++)
            await call.RequestStream.WriteAsync(new StreamRecordsRequest { Sequence = i, Record = HostileRecord(i) });
        await call.RequestStream.CompleteAsync();
        var outcomes = await reading;

        Assert.Equal(StreamMessages, outcomes.Count);
        foreach (var outcome in outcomes)
            AssertOutcome(outcome);
        Assert.Contains(outcomes, o => o.State == RecordState.Accepted);
        await AssertWholeAsync(server, outcomes.Count(o => o.State == RecordState.Accepted) + 1); // the aircraft of the start
    }

    [Fact]
    public async Task Random_and_mutated_bytes_at_every_grpc_call_get_documented_answers()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await RegisterAsync(server);
        server.ErrorsExpected = true; // the framework logs each message that it cannot read
        var invoker = server.Channel.CreateCallInvoker();
        await InParallelAsync(GrpcMessages, async number =>
        {
            var call = Calls[number % Calls.Length];
            var method = new Method(MethodType.Unary, call.Service.FullName, call.Name, Bytes, Bytes);
            try
            {
                await invoker.AsyncUnaryCall(method, null, default, HostileBytes(number, call.InputType));
            }
            catch (RpcException answer)
            {
                Assert.True(Documented.Contains(answer.GetRpcStatus()?.GetDetail<ErrorInfo>()?.Reason ?? ""), $"{number} {call.FullName}: {answer.Status}");
            }
        });
        await AssertWholeAsync(server, null);
    }

    [Fact]
    public async Task A_stream_that_turns_into_garbage_ends_with_a_documented_error_and_keeps_what_came_before()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await RegisterAsync(server);
        server.ErrorsExpected = true;
        var method = new Method(MethodType.DuplexStreaming, IntakeService.Descriptor.FullName, "StreamRecords", Bytes, Bytes);
        using var call = server.Channel.CreateCallInvoker().AsyncDuplexStreamingCall(method, null, default);
        await call.RequestStream.WriteAsync(new StreamRecordsRequest { Sequence = 1, Record = ShopCards.Finding("before") }.ToByteArray());
        Assert.True(await call.ResponseStream.MoveNext(default));
        await call.RequestStream.WriteAsync([0xff, 0xff, 0xff]);
        var answer = await Assert.ThrowsAsync<RpcException>(() => call.ResponseStream.MoveNext(default));
        Assert.Equal(Reasons.MessageMalformed.Name, answer.GetRpcStatus()?.GetDetail<ErrorInfo>()?.Reason);
        await AssertWholeAsync(server, 2);
    }

    [Fact]
    public async Task Hostile_json_at_every_path_is_never_a_server_fault()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await RegisterAsync(server);
        server.ErrorsExpected = true;
        var paths = Calls.Select(c => (Call: c, Rule: c.GetOptions()?.GetExtension(AnnotationsExtensions.Http))).Where(c => c.Rule is not null).ToArray();
        await InParallelAsync(JsonMessages, async number =>
        {
            var (call, rule) = paths[number % paths.Length];
            using var request = HostileRequest(number, call, rule!);
            using var answer = await server.Http.SendAsync(request);
            var body = await answer.Content.ReadAsStringAsync();
            Assert.True((int)answer.StatusCode < 500, $"{number} {request.Method} {request.RequestUri}: {(int)answer.StatusCode} {body}");
            if (answer.StatusCode == HttpStatusCode.BadRequest && body.Length > 0)
                AssertStatus(JsonDocument.Parse(body).RootElement, $"{number} {request.RequestUri}: {body}");
            if (answer.StatusCode is HttpStatusCode.Conflict or HttpStatusCode.TooManyRequests or HttpStatusCode.Forbidden)
                Assert.Contains(JsonDocument.Parse(body).RootElement.GetProperty("details")[0].GetProperty("reason").GetString()!, Documented);
        });
        await AssertWholeAsync(server, null);
    }

    private static async Task RegisterAsync(ApiServer server)
    {
        await ShopCards.RegisterAsync(server);
        var answer = await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { ShopCards.Aircraft("ZZ-A01") } });
        Assert.Equal(1, answer.AcceptedCount);
    }

    /// <summary>Anything at all; or a good record with one field gone wrong, which gets further in.</summary>
    private static Record HostileRecord(int number)
    {
        var messages = new HostileMessages(number);
        if (number % 3 == 0)
            return messages.Make<Record>();
        var record = ShopCards.Finding($"f-{number % 5_000}", location: number % 2 == 0 ? ShopCards.Weld : ShopCards.Gasket);
        if (number % 3 == 1)
            messages.SpoilOneField(record.Finding);
        else
            messages.SpoilOneField(record.Key);
        return record;
    }

    private static byte[] HostileBytes(int number, MessageDescriptor type)
    {
        var random = new Random(number);
        var bytes = number % 4 == 0 ? new byte[random.Next(200)] : new HostileMessages(number).Make(type).ToByteArray();
        if (number % 4 == 0)
            random.NextBytes(bytes);
        for (var i = number % 4 == 1 && bytes.Length > 0 ? random.Next(1, 6) : 0; i > 0; i--)
            bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
        return number % 4 == 2 ? bytes[..random.Next(bytes.Length + 1)] : bytes;
    }

    private static HttpRequestMessage HostileRequest(int number, MethodDescriptor call, HttpRule rule)
    {
        var random = new Random(number);
        var (verb, path) = rule.PatternCase switch
        {
            HttpRule.PatternOneofCase.Get => (HttpMethod.Get, rule.Get),
            HttpRule.PatternOneofCase.Post => (HttpMethod.Post, rule.Post),
            HttpRule.PatternOneofCase.Put => (HttpMethod.Put, rule.Put),
            HttpRule.PatternOneofCase.Patch => (HttpMethod.Patch, rule.Patch),
            _ => (HttpMethod.Delete, rule.Delete),
        };
        string[] segments = ["x", "-1", "%00", "%F0%9F%94%A7", "..%2F..", "9999999999999999999999", new string('a', 2_000), "shop-cards", "1"];
        var target = new StringBuilder();
        var isVariable = false;
        foreach (var c in path)
        {
            if (c == '{')
                target.Append(segments[random.Next(segments.Length)]);
            isVariable = c == '{' || (isVariable && c != '}');
            if (!isVariable && c != '}')
                target.Append(c);
        }

        string[] queries = ["", "", "?page_size=-5", "?page_token=%FF", "?page_size=abc", "?nonsense=1&nonsense=2", "?validate_only=true", "?as_of=yesterday"];
        var request = new HttpRequestMessage(verb, target + queries[random.Next(queries.Length)]);
        if (verb != HttpMethod.Get)
            request.Content = new StringContent(HostileJson(number, call.InputType, rule.Body, random), Encoding.UTF8, "application/json");
        return request;
    }

    private static string HostileJson(int number, MessageDescriptor type, string body, Random random)
    {
        string[] junk = ["", "{", "null", "[]", "[[[[[[", "\"text\"", "1e999", "{\"records\":[null,null]}", "{\"a\":\"\\ud800\"}", new string('[', 5_000), "\0\0"];
        var bodyType = type.FindFieldByName(body) is { FieldType: FieldType.Message, IsRepeated: false } field ? field.MessageType : type;
        var text = number % 5 == 0 ? junk[random.Next(junk.Length)] : JsonFormatter.ToDiagnosticString(new HostileMessages(number).Make(bodyType));
        if (number % 5 != 1 || text.Length == 0)
            return text;
        var changed = new StringBuilder(text);
        const string Breakers = "{}[]\",:0-eE\\x\u202e";
        changed[random.Next(text.Length)] = Breakers[random.Next(Breakers.Length)];
        return changed.ToString();
    }

    private static async Task InParallelAsync(int count, Func<int, Task> send) =>
        await Parallel.ForEachAsync(Enumerable.Range(0, count), new ParallelOptions { MaxDegreeOfParallelism = Senders }, async (i, _) => await send(i));

    /// <summary>A status of the standard error model; without details only where the body was no JSON of the call.</summary>
    private static void AssertStatus(JsonElement status, string shown)
    {
        Assert.True(status.GetProperty("code").GetInt32() is (int)StatusCode.InvalidArgument or (int)StatusCode.FailedPrecondition, shown);
        Assert.NotEqual("", status.GetProperty("message").GetString());
        if (status.TryGetProperty("details", out var details) && details.GetArrayLength() > 0)
            Assert.True(Documented.Contains(details[0].GetProperty("reason").GetString()!), shown);
    }

    private static void AssertOutcome(RecordOutcome outcome)
    {
        if (outcome.Error is { } error)
            Assert.Contains(error.GetDetail<ErrorInfo>().Reason, Documented);
        else
            Assert.True(outcome.State is RecordState.Accepted or RecordState.Unchanged or RecordState.Held, outcome.ToString());
    }

    /// <summary>Each envelope has the one content of its kind, and each content its envelope.</summary>
    private static async Task AssertWholeAsync(ApiServer server, int? accepted)
    {
        const string Contents =
            """
            select record_id from airframes union all select record_id from meter_readings union all select record_id from meter_changes
            union all select record_id from installations union all select record_id from removals union all select record_id from inspections
            union all select record_id from findings union all select record_id from actions union all select record_id from retractions
            """;
        var records = await CountAsync(server, "select count(*) from records");
        Assert.Equal(records, await CountAsync(server, $"select count(*) from ({Contents}) content"));
        Assert.Equal(records, await CountAsync(server, $"select count(distinct record_id) from ({Contents}) content join records on records.id = record_id"));
        if (accepted is { } expected)
            Assert.Equal(expected, records);
    }

    private static async Task<long> CountAsync(ApiServer server, string statement)
    {
        await using var command = server.Database.DataSource.CreateCommand(statement);
        return (long)(await command.ExecuteScalarAsync())!;
    }
}
