using System.Net;
using System.Net.Sockets;

namespace FleetTrend.FaultTests;

/// <summary>Makes a server answer at a further port of this machine from now on.</summary>
internal sealed class PortForward : IAsyncDisposable
{
    private readonly TcpListener _listener;
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _accepting;

    public PortForward(int port, string targetHost, int targetPort)
    {
        _listener = new TcpListener(IPAddress.Loopback, port);
        _listener.Start();
        _accepting = AcceptAsync(targetHost, targetPort);
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        _listener.Stop();
        await _accepting;
        _stop.Dispose();
    }

    private async Task AcceptAsync(string host, int port)
    {
        var connections = new List<Task>();
        try
        {
            while (true)
                connections.Add(PumpAsync(await _listener.AcceptTcpClientAsync(_stop.Token), host, port));
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
                await far.ConnectAsync(host, port, _stop.Token);
                await Task.WhenAny(
                    near.GetStream().CopyToAsync(far.GetStream(), _stop.Token), far.GetStream().CopyToAsync(near.GetStream(), _stop.Token));
            }
            catch (Exception end) when (end is OperationCanceledException or IOException or SocketException)
            {
                // An end has gone; so does the other.
            }
        }
    }
}
