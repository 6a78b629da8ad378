using Grpc.Core;
using Grpc.Core.Interceptors;

namespace FleetTrend.Api.Access;

/// <summary>Holds a stream to its key for as long as it is open; <see cref="KeyBeforeBody"/> has let it in. A call that came past that
/// gate has no caller and ends here.</summary>
internal sealed class AccessInterceptor(KnownKeys keys, TimeProvider clock) : Interceptor
{
    /// <inheritdoc/>
    public override Task<TResponse> UnaryServerHandler<TRequest, TResponse>(
        TRequest request, ServerCallContext context, UnaryServerMethod<TRequest, TResponse> continuation)
    {
        CallerOf(context);
        return continuation(request, context);
    }

    /// <inheritdoc/>
    public override Task ServerStreamingServerHandler<TRequest, TResponse>(
        TRequest request, IServerStreamWriter<TResponse> responseStream, ServerCallContext context,
        ServerStreamingServerMethod<TRequest, TResponse> continuation)
    {
        CallerOf(context);
        return continuation(request, responseStream, context);
    }

    /// <inheritdoc/>
    public override async Task<TResponse> ClientStreamingServerHandler<TRequest, TResponse>(
        IAsyncStreamReader<TRequest> requestStream, ServerCallContext context,
        ClientStreamingServerMethod<TRequest, TResponse> continuation)
    {
        if (CallerOf(context) is not { } caller)
            return await continuation(requestStream, context);
        await using var reader = new WatchedReader<TRequest>(requestStream, caller.Id, keys, clock);
        return await continuation(reader, context);
    }

    /// <inheritdoc/>
    public override async Task DuplexStreamingServerHandler<TRequest, TResponse>(
        IAsyncStreamReader<TRequest> requestStream, IServerStreamWriter<TResponse> responseStream, ServerCallContext context,
        DuplexStreamingServerMethod<TRequest, TResponse> continuation)
    {
        if (CallerOf(context) is not { } caller)
        {
            await continuation(requestStream, responseStream, context);
            return;
        }

        await using var reader = new WatchedReader<TRequest>(requestStream, caller.Id, keys, clock);
        await continuation(reader, responseStream, context);
    }

    /// <summary>The caller; null where the call needs no key.</summary>
    private static Caller? CallerOf(ServerCallContext context) => CallScopes.IsOpen(context.Method) ? null : Caller.Read(context);
}
