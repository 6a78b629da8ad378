using FleetTrend.Contracts.V1;
using Grpc.Core;

namespace FleetTrend.Client;

/// <summary>
/// A push stopped because the server refuses the call itself (a key, a message that is too large) or did not come back in
/// time. Outcomes handed over before hold; a record of <see cref="Unacknowledged"/> may or may not be stored, and is safe to
/// send again.
/// </summary>
public sealed class PushStoppedException : Exception
{
    internal PushStoppedException(RpcException cause, IReadOnlyList<Record> unacknowledged)
        : base($"{cause.StatusCode}: {cause.Status.Detail}", cause)
    {
        Status = cause.Status;
        Reason = CallError.Reason(cause);
        Unacknowledged = unacknowledged;
    }

    /// <summary>What the call said last.</summary>
    public Status Status { get; }

    /// <summary>Reason of the error table, such as KEY_UNKNOWN; empty where the error carried none.</summary>
    public string Reason { get; }

    /// <summary>Records sent and without an outcome, in the order given.</summary>
    public IReadOnlyList<Record> Unacknowledged { get; }
}
