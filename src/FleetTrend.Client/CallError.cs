using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.Client;

/// <summary>What the error of a call tells a program.</summary>
public static class CallError
{
    /// <summary>Reason of the error table, such as KEY_UNKNOWN; empty where the error carries none.</summary>
    public static string Reason(RpcException error) => error.GetRpcStatus()?.GetDetail<ErrorInfo>()?.Reason ?? "";

    /// <summary>Shortest pause that the server asks for; null where it says nothing.</summary>
    public static TimeSpan? RetryDelay(RpcException error) => error.GetRpcStatus()?.GetDetail<RetryInfo>()?.RetryDelay?.ToTimeSpan();

    /// <summary>
    /// Whether the same call may succeed later: the server or the way to it is gone, it broke the call off, or it named a pause.
    /// RESOURCE_EXHAUSTED without a pause is a message that is too large, and stays one.
    /// </summary>
    public static bool IsTransient(RpcException error) => error.StatusCode switch
    {
        StatusCode.Unavailable or StatusCode.Cancelled => true,
        StatusCode.ResourceExhausted => RetryDelay(error) is not null,
        // The connection broke under the call; the server itself said nothing.
        StatusCode.Internal or StatusCode.Unknown => error.Status.DebugException is IOException or HttpRequestException,
        _ => false,
    };
}
