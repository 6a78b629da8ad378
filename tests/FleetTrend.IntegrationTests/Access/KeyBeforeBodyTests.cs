using System.Buffers.Binary;
using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store.Keys;
using Google.Protobuf;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>The key is asked for before a byte of the body is read, and no body takes more memory than the guide says.</summary>
[Collection(SharedPostgres.Name)]
public sealed class KeyBeforeBodyTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const int Large = 28_800_000; // below the 30,000,000 bytes that a web server takes by habit
    private const int AtOnce = 5;

    /// <summary>For all posts together. Deserialized, one such body took some 600 MB.</summary>
    private const long MostAllocatedBytes = 50_000_000;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    public static TheoryData<string> CallsWithBody { get; } =
        [.. Contract.Calls.Where(call => Contract.HttpOf(call) is { Body: not null }).Select(Contract.NameOf)];

    [Theory] // Only the head is sent: an answer that waits for the body never comes.
    [MemberData(nameof(CallsWithBody))]
    public async Task Over_json_a_call_without_a_good_key_is_answered_before_its_body_comes(string name)
    {
        var (verb, path, _) = Contract.HttpOf(Contract.Calls.Single(call => Contract.NameOf(call) == name))!.Value;
        var none = await AnswerToHeadAsync(verb, path, null);
        Assert.Equal((401, "KEY_REQUIRED"), (none.Status, none.Reason));
        var unknown = await AnswerToHeadAsync(verb, path, KeyText.Create().Reveal());
        Assert.Equal((401, "KEY_UNKNOWN"), (unknown.Status, unknown.Reason));
    }

    [Fact] // The server's log of errors is read when it is disposed.
    public async Task Refusing_a_caller_who_has_gone_meanwhile_is_no_fault()
    {
        await using var ours = await ApiServer.StartAsync(postgres, configure: builder => builder.Services.AddSingleton<IStartupFilter>(new CallerGone()));
        using var client = ours.HttpWith(null);
        using var answer = await client.GetAsync("/v1/heldRecords");
        Assert.Empty(await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task Over_grpc_a_call_without_a_good_key_is_answered_before_its_body_comes()
    {
        foreach (var call in Contract.Calls)
        {
            using var client = new HttpClient { BaseAddress = server.GrpcAddress };
            using var body = new EndlessContent();
            using var request = Grpc($"{call.Service.FullName}/{call.Name}", body, null);
            using var limit = new CancellationTokenSource(Patience);
            using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, limit.Token);
            Assert.Equal((call.FullName, "16"), (call.FullName, answer.Headers.GetValues("grpc-status").Single()));
        }
    }

    [Fact]
    public async Task Large_bodies_without_a_key_take_no_memory_and_get_a_clear_answer()
    {
        var body = Encoding.UTF8.GetBytes("{\"records\":[" + string.Join(',', Enumerable.Repeat("{}", Large / 3)) + "]}");
        using var http = server.HttpWith(null);
        await PostAsync(http, "{}"u8.ToArray()); // what the first call loads is not counted

        var before = GC.GetTotalAllocatedBytes(precise: true);
        var answers = await Task.WhenAll(Enumerable.Range(0, AtOnce).Select(_ => PostAsync(http, body)));
        var allocated = GC.GetTotalAllocatedBytes(precise: true) - before;

        Assert.All(answers, answer => Assert.Equal((401, "KEY_REQUIRED"), (answer.Status, answer.Reason)));
        Assert.InRange(allocated, 0, MostAllocatedBytes);
    }

    [Fact]
    public async Task A_body_beyond_the_limit_is_refused_before_it_comes_also_with_a_key()
    {
        var tooLarge = await AnswerToHeadAsync(HttpMethod.Post, "/v1/records:push", server.Key);
        Assert.Equal((413, "MESSAGE_TOO_LARGE"), (tooLarge.Status, tooLarge.Reason));

        using var client = new HttpClient { BaseAddress = server.GrpcAddress };
        using var body = new EndlessContent(Large);
        using var request = Grpc("fleettrend.v1.IntakeService/PushRecords", body, server.Key);
        using var limit = new CancellationTokenSource(Patience);
        using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, limit.Token);
        Assert.Equal("8", answer.Headers.GetValues("grpc-status").Single());
        Assert.Contains("8,388,608", Uri.UnescapeDataString(answer.Headers.GetValues("grpc-message").Single()), StringComparison.Ordinal);
    }

    [Fact] // A chunked body says its length only by its end.
    public async Task A_body_that_grows_beyond_the_limit_is_refused_there()
    {
        var body = Encoding.UTF8.GetBytes("{\"records\":[" + string.Join(',', Enumerable.Repeat("{}", 9_000_000 / 3)) + "]}");
        using var request = new HttpRequestMessage(HttpMethod.Post, "v1/records:push") { Content = new ByteArrayContent(body) };
        request.Headers.TransferEncodingChunked = true;
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        using var answer = await server.Http.SendAsync(request);
        var status = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        Assert.Equal((413, "MESSAGE_TOO_LARGE"), ((int)answer.StatusCode, (string?)status["details"]![0]!["reason"]));
    }

    [Theory]
    [InlineData("gzip")]
    [InlineData("deflate")]
    public async Task A_few_compressed_bytes_that_unfold_into_many_are_refused_at_the_limit(string encoding)
    {
        server.ErrorsExpected = true; // the framework logs a message that it cannot read
        var small = await PostCompressedAsync(encoding, new PushRecordsRequest { Records = { ShopCards.Finding("f") } }.ToByteArray(), 1);
        Assert.Equal("0", small.Code); // compression as such is taken

        var before = GC.GetTotalAllocatedBytes(precise: true);
        var bomb = await PostCompressedAsync(encoding, new byte[1024 * 1024], 256);
        var allocated = GC.GetTotalAllocatedBytes(precise: true) - before;

        Assert.Equal("8", bomb.Code);
        Assert.Contains("8,388,608", bomb.Message, StringComparison.Ordinal);
        Assert.InRange(allocated, 0, MostAllocatedBytes);
    }

    [Fact]
    public async Task A_compressed_json_body_is_refused_by_name()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "v1/records:push") { Content = new StringContent("{}", Encoding.UTF8, "application/json") };
        request.Content.Headers.ContentEncoding.Add("gzip");
        using var answer = await server.Http.SendAsync(request);
        var status = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        Assert.Equal((415, "CONTENT_ENCODING_NOT_TAKEN"), ((int)answer.StatusCode, (string?)status["details"]![0]!["reason"]));
        Assert.Contains("gzip", (string?)status["message"], StringComparison.Ordinal);
    }

    [Fact] // Signing in is open to everybody, and so is asking a server for its calls.
    public async Task What_needs_no_key_takes_little()
    {
        var form = await AnswerToHeadAsync(HttpMethod.Post, "/sign-in", null, "application/x-www-form-urlencoded");
        Assert.InRange(form.Status, 400, 413);
        using var client = new HttpClient { BaseAddress = server.GrpcAddress };
        string[] calls = ["grpc.reflection.v1.ServerReflection/ServerReflectionInfo", "grpc.reflection.v1alpha.ServerReflection/ServerReflectionInfo"];
        foreach (var call in calls)
        {
            using var body = new EndlessContent(null, 0, 0, 0x10, 0, 0); // a message of 1 MiB begins
            using var request = Grpc(call, body, null);
            using var limit = new CancellationTokenSource(Patience);
            using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, limit.Token);
            Assert.Equal((call, "8"), (call, answer.Headers.TryGetValues("grpc-status", out var code) ? code.Single() : "none"));
        }
    }

    private static async Task<(int Status, string Reason)> PostAsync(HttpClient http, byte[] body)
    {
        using var content = new ByteArrayContent(body);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        using var answer = await http.PostAsync("v1/records:push", content);
        var status = JsonNode.Parse(await answer.Content.ReadAsStringAsync());
        return ((int)answer.StatusCode, (string?)status!["details"]![0]!["reason"] ?? "");
    }

    /// <summary>Pushes one message: a block so many times, compressed.</summary>
    private async Task<(string Code, string Message)> PostCompressedAsync(string encoding, byte[] block, int times)
    {
        using var compressed = new MemoryStream();
        compressed.Write([1, 0, 0, 0, 0]);
        await using (Stream writer = encoding == "gzip"
            ? new GZipStream(compressed, CompressionLevel.Fastest, leaveOpen: true)
            : new ZLibStream(compressed, CompressionLevel.Fastest, leaveOpen: true))
        {
            for (var i = 0; i < times; i++)
                await writer.WriteAsync(block);
        }

        BinaryPrimitives.WriteUInt32BigEndian(compressed.GetBuffer().AsSpan(1), (uint)compressed.Length - 5);
        using var client = new HttpClient { BaseAddress = server.GrpcAddress };
        using var request = Grpc(
            "fleettrend.v1.IntakeService/PushRecords", new ByteArrayContent(compressed.GetBuffer(), 0, (int)compressed.Length), server.Key);
        request.Headers.Add("grpc-encoding", encoding);
        request.Headers.TE.Add(new TransferCodingWithQualityHeaderValue("trailers"));
        using var answer = await client.SendAsync(request);
        await answer.Content.ReadAsByteArrayAsync();
        string Trailer(string name) =>
            answer.Headers.TryGetValues(name, out var values) || answer.TrailingHeaders.TryGetValues(name, out values) ? values.Single() : "";
        return (Trailer("grpc-status"), Uri.UnescapeDataString(Trailer("grpc-message")));
    }

    private static HttpRequestMessage Grpc(string call, HttpContent body, string? key)
    {
        body.Headers.ContentType = new MediaTypeHeaderValue("application/grpc");
        return new HttpRequestMessage(HttpMethod.Post, "/" + call)
        {
            Version = HttpVersion.Version20,
            VersionPolicy = HttpVersionPolicy.RequestVersionExact,
            Content = body,
            Headers = { Authorization = key is null ? null : new AuthenticationHeaderValue("Bearer", key) },
        };
    }

    /// <summary>The answer to the head of a call whose large body is announced and never sent.</summary>
    private async Task<(int Status, string Reason)> AnswerToHeadAsync(HttpMethod verb, string path, string? key, string type = "application/json")
    {
        using var limit = new CancellationTokenSource(Patience);
        using var connection = new TcpClient();
        await connection.ConnectAsync(IPAddress.Loopback, server.HttpAddress.Port, limit.Token);
        var stream = connection.GetStream();
        var authorization = key is null ? "" : $"authorization: Bearer {key}\r\n";
        var head = $"{verb} {path} HTTP/1.1\r\nhost: localhost\r\n{authorization}content-type: {type}\r\ncontent-length: {Large}\r\nconnection: close\r\n\r\n";
        await stream.WriteAsync(Encoding.ASCII.GetBytes(head), limit.Token);
        var answer = new StringBuilder();
        var buffer = new byte[4096];
        while (!HasWholeBody(answer.ToString()) && await stream.ReadAsync(buffer, limit.Token) is > 0 and var read)
            answer.Append(Encoding.UTF8.GetString(buffer, 0, read));
        var text = answer.ToString();
        var start = text.IndexOf('{', StringComparison.Ordinal);
        var end = text.LastIndexOf('}');
        var status = start < 0 || end < start ? null : JsonNode.Parse(text[start..(end + 1)]);
        return (int.Parse(text.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture), (string?)status?["details"]?[0]?["reason"] ?? "");
    }

    private static bool HasWholeBody(string answer) =>
        answer.Split("\r\n\r\n", 2) is [_, var body] && (body.EndsWith('}') || body.EndsWith("0\r\n\r\n", StringComparison.Ordinal));

    /// <summary>A body that begins and never ends.</summary>
    private sealed class EndlessContent : HttpContent
    {
        private readonly int? length;
        private readonly byte[] start;
        private readonly CancellationTokenSource end = new();

        public EndlessContent(int? length = null, params byte[] start) => (this.length, this.start) = (length, start);

        protected override Task SerializeToStreamAsync(Stream stream, TransportContext? context) =>
            SerializeToStreamAsync(stream, context, default);

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context, CancellationToken cancellationToken)
        {
            using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, end.Token);
            await stream.WriteAsync(this.start, either.Token);
            await stream.FlushAsync(either.Token);
            await Task.Delay(Timeout.Infinite, either.Token);
        }

        protected override bool TryComputeLength(out long length)
        {
            length = this.length ?? 0;
            return this.length is not null;
        }

        protected override void Dispose(bool disposing)
        {
            if (!end.IsCancellationRequested)
                end.Cancel();
            base.Dispose(disposing);
        }
    }

    /// <summary>Has every call end as one whose caller has just gone.</summary>
    private sealed class CallerGone : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use((context, rest) =>
            {
                var ended = new CancellationToken(canceled: true);
                context.RequestAborted = context.Request.Path.StartsWithSegments("/v1", StringComparison.Ordinal) ? ended : context.RequestAborted;
                return rest(context);
            });
            next(app);
        };
    }
}
