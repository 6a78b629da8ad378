using System.Collections.Concurrent;
using System.Net;
using System.Security.Cryptography.X509Certificates;
using FleetTrend.Contracts.V1;
using Grpc.Core;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace FleetTrend.Client.Tests;

/// <summary>What one connection of a scripted server does: reads, answers, ends or breaks.</summary>
internal delegate Task Scene(
    IAsyncStreamReader<StreamRecordsRequest> requests, IServerStreamWriter<StreamRecordsResponse> responses, ServerCallContext context);

/// <summary>
/// A real server on a real port whose streams follow a script, a scene per connection, so that a break comes at an exact place;
/// the last scene repeats. Records what arrived on each connection.
/// </summary>
internal sealed class ScriptedServer : IAsyncDisposable
{
    private readonly WebApplication app;

    private ScriptedServer(WebApplication app) => this.app = app;

    public Uri Address => new(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());

    public Script Played => app.Services.GetRequiredService<Script>();

    public static async Task<ScriptedServer> StartAsync(X509Certificate2? certificate, params Scene[] scenes)
    {
        var builder = WebApplication.CreateBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0, listen =>
        {
            listen.Protocols = HttpProtocols.Http2;
            if (certificate is not null)
                listen.UseHttps(certificate);
        }));
        builder.Services.AddGrpc();
        builder.Services.AddSingleton(new Script(scenes));
        var built = builder.Build();
        built.MapGrpcService<ScriptedIntake>();
        await built.StartAsync();
        return new ScriptedServer(built);
    }

    public static Task<ScriptedServer> StartAsync(params Scene[] scenes) => StartAsync(null, scenes);

    /// <summary>Acknowledges everything until the sender completes.</summary>
    public static async Task AcknowledgeAllAsync(
        IAsyncStreamReader<StreamRecordsRequest> requests, IServerStreamWriter<StreamRecordsResponse> responses, ServerCallContext context)
    {
        while (await requests.MoveNext(context.CancellationToken))
            await responses.WriteAsync(Accepted(requests.Current));
    }

    public static StreamRecordsResponse Accepted(StreamRecordsRequest request) => new()
    {
        Sequence = request.Sequence,
        Outcome = new RecordOutcome { Key = request.Record.Key, State = RecordState.Accepted },
    };

    public async ValueTask DisposeAsync()
    {
        await app.StopAsync();
        await app.DisposeAsync();
    }

    internal sealed class Script(Scene[] scenes)
    {
        /// <summary>Sequences that arrived, per connection.</summary>
        public List<ConcurrentQueue<long>> Arrived { get; } = [];

        public ConcurrentQueue<string?> Authorization { get; } = new();

        public (Scene Scene, ConcurrentQueue<long> Arrived) Next()
        {
            lock (Arrived)
            {
                Arrived.Add(new ConcurrentQueue<long>());
                return (scenes[Math.Min(Arrived.Count, scenes.Length) - 1], Arrived[^1]);
            }
        }
    }

    internal sealed class ScriptedIntake(Script script) : IntakeService.IntakeServiceBase
    {
        public override Task StreamRecords(
            IAsyncStreamReader<StreamRecordsRequest> requestStream, IServerStreamWriter<StreamRecordsResponse> responseStream, ServerCallContext context)
        {
            script.Authorization.Enqueue(context.RequestHeaders.GetValue("authorization"));
            var (scene, arrived) = script.Next();
            return scene(new Noted(requestStream, arrived), responseStream, context);
        }
    }

    private sealed class Noted(IAsyncStreamReader<StreamRecordsRequest> inner, ConcurrentQueue<long> arrived) : IAsyncStreamReader<StreamRecordsRequest>
    {
        public StreamRecordsRequest Current => inner.Current;

        public async Task<bool> MoveNext(CancellationToken cancellationToken)
        {
            var any = await inner.MoveNext(cancellationToken);
            if (any)
                arrived.Enqueue(Current.Sequence);
            return any;
        }
    }
}
