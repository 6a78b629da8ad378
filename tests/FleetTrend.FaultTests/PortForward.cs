using System.Net;
using System.Net.Sockets;

namespace FleetTrend.FaultTests;

/// <summary>Makes a server answer at a further port of this machine from now on.</summary>
internal sealed class PortForward : IAsyncDisposable
{
    private readonly TcpListener listener;
    private readonly CancellationTokenSource stop = new();
    private readonly Task accepting;

    public PortForward(int port, string targetHost, int targetPort)
    {
        listener = new TcpListener(IPAddress.Loopback, port);
        listener.Start();
        accepting = AcceptAsync(targetHost, targetPort);
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        listener.Stop();
        await accepting;
        stop.Dispose();
    }

    private async Task AcceptAsync(string host, int port)
    {
        var connections = new List<Task>();
        try
        {
            while (true)
                connections.Add(PumpAsync(await listener.AcceptTcpClientAsync(stop.Token), host, port));
        }
        catch (OperationCanceledException)
        {
            await Task.WhenAll(connections);
        }
    }

    private async Task PumpAsync(TcpClient near, string host, int port)
    {
        using (near)
        using (var far = new TcpClient())
        {
            try
            {
                await far.ConnectAsync(host, port, stop.Token);
                await Task.WhenAny(
                    near.GetStream().CopyToAsync(far.GetStream(), stop.Token), far.GetStream().CopyToAsync(near.GetStream(), stop.Token));
            }
            catch (Exception end) when (end is OperationCanceledException or IOException or SocketException)
            {
                // An end has gone; so does the other.
            }
        }
    }
}
