using Google.Protobuf;
using Grpc.Core;
using Grpc.Core.Interceptors;

namespace FleetTrend.Api;

/// <summary>Turns what a call throws into its answer.</summary>
internal sealed class FaultInterceptor(FaultAnswers faults) : Interceptor
{
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
        // Reading or writing the call itself fails where the caller has gone; the cancellation is about to follow.
        var hasGone = context.CancellationToken.IsCancellationRequested
            || (exception is IOException and not InvalidProtocolBufferException && !FaultAnswers.IsDatabaseUnavailable(exception));
        return hasGone
            ? new RpcException(new Grpc.Core.Status(StatusCode.Cancelled, "The caller has gone."))
            : faults.Explain(exception, context.Method).ToRpcException();
    }
}
