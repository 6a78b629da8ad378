using System.Diagnostics;
using System.Net.Sockets;
using FleetTrend.Intake;
using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Npgsql;

namespace FleetTrend.Api;

/// <summary>The one place where a fault becomes an answer: a caller never sees what went wrong inside, and learns whether
/// sending the same again can help.</summary>
internal sealed class FaultAnswers(ILogger<FaultAnswers> log)
{
    private static readonly TimeSpan RetryAfter = TimeSpan.FromSeconds(1);

    /// <summary>The answer to a fault; it is logged where it is ours.</summary>
    /// <param name="exception">What was thrown.</param>
    /// <param name="method">The call, as gRPC writes it.</param>
    public Status Explain(Exception exception, string method)
    {
        if (IsDatabaseUnavailable(exception))
        {
            ApiLog.DatabaseUnavailable(log, method, exception.Message);
            return Status(Reasons.DatabaseUnavailable, "The database does not answer; send the same again later.", RetryAfter);
        }

        if (exception is InvalidProtocolBufferException) // of a stream: a unary request is read before we are asked
            return MalformedMessages.Status;
        if (exception is PostgresException { SqlState: PostgresErrorCodes.CharacterNotInRepertoire })
            return RefusalStatus.Build(new Refusal("", "\0", Reasons.TextNotPrintable, "must be texts without the character U+0000"));
        ApiLog.Fault(log, method, exception);
        return Status(Reasons.InternalFault, "A fault on our side; whoever runs the server finds it by trace_id.", null);
    }

    /// <summary>True where the connection, and not the statement, failed.</summary>
    public static bool IsDatabaseUnavailable(Exception exception)
    {
        for (var e = exception; e is not null; e = e.InnerException)
        {
            if (e is NpgsqlException { IsTransient: true } or SocketException)
                return true;
            // The server is shutting down, starting up, or out of connections.
            if (e is PostgresException { SqlState: ['5', '7', 'P', ..] or ['5', '3', ..] or ['0', '8', ..] })
                return true;
        }

        return false;
    }

    private static Status Status(Reason reason, string message, TimeSpan? retryAfter)
    {
        var info = new ErrorInfo { Reason = reason.Name, Domain = Reasons.Domain };
        if (Activity.Current?.TraceId is { } traceId)
            info.Metadata["trace_id"] = traceId.ToString();
        var status = new Status { Code = (int)reason.Code, Message = message, Details = { Any.Pack(info) } };
        if (retryAfter is { } delay)
            status.Details.Add(Any.Pack(new RetryInfo { RetryDelay = Duration.FromTimeSpan(delay) }));
        return status;
    }
}
