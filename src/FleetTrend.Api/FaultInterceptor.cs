using System.Diagnostics;
using System.Net.Sockets;
using FleetTrend.Intake;
using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Grpc.Core;
using Grpc.Core.Interceptors;
using Npgsql;
using Status = Google.Rpc.Status;

namespace FleetTrend.Api;

/// <summary>The one place where a fault becomes an answer: a caller never sees what went wrong inside, and learns whether
/// sending the same again can help.</summary>
internal sealed class FaultInterceptor(ILogger<FaultInterceptor> log) : Interceptor
{
    private static readonly TimeSpan RetryAfter = TimeSpan.FromSeconds(1);

    /// <inheritdoc/>
    public override async Task<TResponse> UnaryServerHandler<TRequest, TResponse>(
        TRequest request, ServerCallContext context, UnaryServerMethod<TRequest, TResponse> continuation)
    {
        try
        {
            return await continuation(request, context);
        }
        catch (Exception exception) when (exception is not RpcException)
        {
            throw Answer(exception, context);
        }
    }

    /// <inheritdoc/>
    public override async Task DuplexStreamingServerHandler<TRequest, TResponse>(
        IAsyncStreamReader<TRequest> requestStream, IServerStreamWriter<TResponse> responseStream, ServerCallContext context,
        DuplexStreamingServerMethod<TRequest, TResponse> continuation)
    {
        try
        {
            await continuation(requestStream, responseStream, context);
        }
        catch (Exception exception) when (exception is not RpcException)
        {
            throw Answer(exception, context);
        }
    }

    private RpcException Answer(Exception exception, ServerCallContext context)
    {
        if (context.CancellationToken.IsCancellationRequested)
            return Gone();
        if (IsDatabaseUnavailable(exception))
        {
            ApiLog.DatabaseUnavailable(log, context.Method, exception.Message);
            return Status(Reasons.DatabaseUnavailable, "The database does not answer; send the same again later.", RetryAfter).ToRpcException();
        }

        if (exception is InvalidProtocolBufferException) // of a stream: a unary request is read before we are asked
            return MalformedMessages.Status.ToRpcException();
        if (exception is PostgresException { SqlState: PostgresErrorCodes.CharacterNotInRepertoire })
            return new Refusal("", "\0", Reasons.TextNotPrintable, "must be texts without the character U+0000").ToException();
        if (exception is IOException) // reading or writing the call itself; the cancellation is about to follow
            return Gone();
        ApiLog.Fault(log, context.Method, exception);
        return Status(Reasons.InternalFault, "A fault on our side; whoever runs the server finds it by trace_id.", null).ToRpcException();
    }

    private static RpcException Gone() => new(new Grpc.Core.Status(StatusCode.Cancelled, "The caller has gone."));

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
}
