using FleetTrend.Intake;
using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.Api.Access;

/// <summary>A call that is not let in.</summary>
internal sealed class CallRefusedException(Reason reason, string message) : Exception(message)
{
    /// <summary>Why.</summary>
    public Reason Reason { get; } = reason;

    /// <summary>Variable parts of the message, for programs.</summary>
    public IReadOnlyDictionary<string, string> Metadata { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>When the same call may be let in; null where waiting does not help.</summary>
    public TimeSpan? RetryAfter { get; init; }

    /// <summary>What the caller gets: ErrorInfo, and RetryInfo where waiting helps.</summary>
    public RpcException ToRpcException() => ToStatus().ToRpcException();

    /// <summary>The same as a status.</summary>
    public Google.Rpc.Status ToStatus()
    {
        var status = new Google.Rpc.Status
        {
            Code = (int)Reason.Code,
            Message = Message,
            Details = { Any.Pack(new ErrorInfo { Reason = Reason.Name, Domain = Reasons.Domain,
                Metadata = { Metadata.ToDictionary(StringComparer.Ordinal) } }) },
        };
        if (RetryAfter is { } delay)
            status.Details.Add(Any.Pack(new RetryInfo { RetryDelay = Duration.FromTimeSpan(delay) }));
        return status;
    }
}
