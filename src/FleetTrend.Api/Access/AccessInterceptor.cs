using System.Runtime.ExceptionServices;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Intake;
using Grpc.Core;
using Grpc.Core.Interceptors;
using Microsoft.AspNetCore.Authentication;

namespace FleetTrend.Api.Access;

/// <summary>The one gate of every call, gRPC and JSON: a good key, its limits, its scopes. What is not listed is open to nobody.</summary>
internal sealed class AccessInterceptor(
    KnownKeys keys, CallGate gate, RefusedCalls refused, HostSettings settings, TimeProvider clock) : Interceptor
{
    /// <inheritdoc/>
    public override async Task<TResponse> UnaryServerHandler<TRequest, TResponse>(
        TRequest request, ServerCallContext context, UnaryServerMethod<TRequest, TResponse> continuation)
    {
        using var admitted = await AdmitAsync(context);
        return await continuation(request, context);
    }

    /// <inheritdoc/>
    public override async Task ServerStreamingServerHandler<TRequest, TResponse>(
        TRequest request, IServerStreamWriter<TResponse> responseStream, ServerCallContext context,
        ServerStreamingServerMethod<TRequest, TResponse> continuation)
    {
        using var admitted = await AdmitAsync(context);
        await continuation(request, responseStream, context);
    }

    /// <inheritdoc/>
    public override async Task<TResponse> ClientStreamingServerHandler<TRequest, TResponse>(
        IAsyncStreamReader<TRequest> requestStream, ServerCallContext context,
        ClientStreamingServerMethod<TRequest, TResponse> continuation)
    {
        using var admitted = await AdmitAsync(context);
        if (admitted is null)
            return await continuation(requestStream, context);
        await using var reader = new WatchedReader<TRequest>(requestStream, Caller.Of(context).Key.Id, keys, clock);
        return await continuation(reader, context);
    }

    /// <inheritdoc/>
    public override async Task DuplexStreamingServerHandler<TRequest, TResponse>(
        IAsyncStreamReader<TRequest> requestStream, IServerStreamWriter<TResponse> responseStream, ServerCallContext context,
        DuplexStreamingServerMethod<TRequest, TResponse> continuation)
    {
        using var admitted = await AdmitAsync(context);
        if (admitted is null)
        {
            await continuation(requestStream, responseStream, context);
            return;
        }

        await using var reader = new WatchedReader<TRequest>(requestStream, Caller.Of(context).Key.Id, keys, clock);
        await continuation(reader, responseStream, context);
    }

    /// <summary>Lets a call in.</summary>
    /// <returns>What the call holds while it lasts; null where it needs no key.</returns>
    private async Task<IDisposable?> AdmitAsync(ServerCallContext context)
    {
        if (CallScopes.IsOpen(context.Method))
            return null;
        var http = context.GetHttpContext();
        try
        {
            var result = await http.AuthenticateAsync(KeyAuthenticationHandler.SchemeName);
            if (result.Failure is { } failure)
                ExceptionDispatchInfo.Throw(failure);
            var caller = http.Features.Get<Caller>() ?? await ReaderOfPagesAsync(http)
                ?? throw new CallRefusedException(Reasons.KeyRequired, "The call needs a key, sent as authorization: Bearer KEY.");
            return gate.Admit(caller, context.Method);
        }
        catch (CallRefusedException refusal)
        {
            throw refused.Answer(refusal, context.Method, http).ToRpcException();
        }
    }

    /// <summary>Pages link to JSON: who may see them may read it in the same browser. Only GET, which changes nothing.</summary>
    private async Task<Caller?> ReaderOfPagesAsync(HttpContext http)
    {
        if (!HttpMethods.IsGet(http.Request.Method))
            return null;
        await http.AuthenticateAsync(PageAccess.Name);
        return http.Features.Get<Caller>() ?? (settings.OpenPages ? Anybody(http) : null);
    }

    private static Caller Anybody(HttpContext http)
    {
        http.Features.Set(PageAccess.Anybody);
        return PageAccess.Anybody;
    }
}
