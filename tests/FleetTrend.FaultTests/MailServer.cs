using System.Buffers;
using System.Collections.Concurrent;
using System.Net;
using MimeKit;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace FleetTrend.FaultTests;

/// <summary>A real mail server in this process; it keeps what it is handed.</summary>
internal sealed class MailServer : MessageStore, IAsyncDisposable
{
    private readonly CancellationTokenSource stop = new();
    private readonly SmtpServer.SmtpServer server;
    private readonly Task running;

    public MailServer(int port)
    {
        var services = new ServiceProvider();
        services.Add(this);
        var options = new SmtpServerOptionsBuilder()
            .ServerName("localhost")
            .Endpoint(endpoint => endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, port)))
            .Build();
        server = new SmtpServer.SmtpServer(options, services);
        running = server.StartAsync(stop.Token);
    }

    public ConcurrentQueue<MimeMessage> Messages { get; } = new();

    /// <summary>What it answers to each message instead of taking it; null takes it.</summary>
    public SmtpResponse? Refusal { get; set; }

    public override async Task<SmtpResponse> SaveAsync(
        ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
    {
        if (Refusal is { } refusal)
            return refusal;
        using var stream = new MemoryStream(buffer.ToArray());
        Messages.Enqueue(await MimeMessage.LoadAsync(stream, cancellationToken));
        return SmtpResponse.Ok;
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        server.Shutdown();
        await running;
        stop.Dispose();
    }
}
