using FleetTrend.Client;
using Grpc.Core;
using Grpc.Net.Client;

namespace FleetTrend.Cli.Commands;

/// <summary>Talks to a server and turns what can go wrong on the way into a sentence and an exit code.</summary>
internal static class ServerRun
{
    /// <summary>Opens a channel and runs; a failure of the call is told on <paramref name="error"/>.</summary>
    public static async Task<int> RunAsync(ServerSettings settings, TextWriter error, Func<GrpcChannel, Task<int>> run)
    {
        GrpcChannel channel;
        try
        {
            channel = FleetTrendChannel.Open(settings.Connection());
        }
        catch (Exception refusal) when (refusal is ArgumentException or IOException or UnauthorizedAccessException)
        {
            await error.WriteLineAsync(refusal.Message);
            return ExitCode.BadInput;
        }

        using (channel)
        {
            try
            {
                return await run(channel);
            }
            catch (RpcException failure)
            {
                await error.WriteLineAsync(Sentence(settings.Server, failure.Status, CallError.Reason(failure)));
                return CodeOf(failure.StatusCode);
            }
            catch (PushStoppedException stopped)
            {
                await error.WriteLineAsync(Sentence(settings.Server, stopped.Status, stopped.Reason));
                return CodeOf(stopped.Status.StatusCode);
            }
        }
    }

    /// <summary>What happened and what to do.</summary>
    public static string Sentence(string server, Status status, string reason)
    {
        var what = $"{server}: {status.StatusCode}{(reason.Length > 0 ? $" {reason}" : "")}: {status.Detail}";
        return CodeOf(status.StatusCode) switch
        {
            ExitCode.NotReached => $"{what}\nThe server was not reached or did not stay. 'fleettrend send-test' says where it fails.",
            ExitCode.NotAllowed => $"{what}\nThe key is given by {CallerSettings.KeyVariable} or --key-file. 'fleettrend send-test' checks it.",
            _ => what,
        };
    }

    private static int CodeOf(StatusCode code) => code switch
    {
        StatusCode.Unavailable or StatusCode.DeadlineExceeded or StatusCode.Cancelled or StatusCode.ResourceExhausted => ExitCode.NotReached,
        StatusCode.Unauthenticated or StatusCode.PermissionDenied => ExitCode.NotAllowed,
        _ => ExitCode.Failed,
    };
}
