using System.Runtime.ExceptionServices;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Intake;
using Grpc.AspNetCore.Server;
using Microsoft.AspNetCore.Authentication;

namespace FleetTrend.Api.Access;

/// <summary>The one gate of every call, gRPC and JSON: a good key, its limits, its scopes. It stands before anything reads the body, so
/// that who has no key cannot make the server work. What is not listed is open to nobody.</summary>
internal sealed class KeyBeforeBody(RequestDelegate next, CallGate gate, RefusedCalls refused, FaultAnswers faults, HostSettings settings)
{
    /// <summary>Lets a call in and has it handled, or answers why not.</summary>
    public async Task InvokeAsync(HttpContext context)
    {
        if (context.GetEndpoint()?.Metadata.GetMetadata<GrpcMethodMetadata>() is not { Method: { } method } || CallScopes.IsOpen(method.FullName))
        {
            await next(context);
            return;
        }

        IDisposable held;
        try
        {
            held = await AdmitAsync(context, method.FullName);
        }
        catch (Exception failure)
        {
            if (!context.RequestAborted.IsCancellationRequested) // else nobody is left to be told, and the server would take it for a fault
                await RefuseAsync(context, StatusOf(failure, method.FullName, context));
            return;
        }

        using (held)
        {
            if (BodyLimits.Raise(context, method) is var (status, httpStatus))
                await RefuseAsync(context, status, httpStatus);
            else
                await HandleAsync(context);
        }
    }

    private async Task HandleAsync(HttpContext context)
    {
        try
        {
            await next(context);
        }
        catch (BadHttpRequestException tooLarge) // a body that did not say how long it is
            when (tooLarge.StatusCode == StatusCodes.Status413PayloadTooLarge && !context.Response.HasStarted)
        {
            await RefuseAsync(context, BodyLimits.TooLarge, tooLarge.StatusCode);
        }
    }

    /// <summary>Lets a call in.</summary>
    /// <returns>What the call holds while it lasts.</returns>
    /// <exception cref="CallRefusedException">It is not let in.</exception>
    private async Task<IDisposable> AdmitAsync(HttpContext context, string method)
    {
        var result = await context.AuthenticateAsync(KeyAuthenticationHandler.SchemeName);
        if (result.Failure is { } failure)
            ExceptionDispatchInfo.Throw(failure);
        var caller = context.Features.Get<Caller>() ?? await ReaderOfPagesAsync(context)
            ?? throw new CallRefusedException(Reasons.KeyRequired, "The call needs a key, sent as authorization: Bearer KEY.");
        return gate.Admit(caller, CallScopes.Find(method));
    }

    /// <summary>Pages link to JSON: who may see them may read it in the same browser. Only GET, which changes nothing.</summary>
    private async Task<Caller?> ReaderOfPagesAsync(HttpContext http)
    {
        if (!HttpMethods.IsGet(http.Request.Method))
            return null;
        await http.AuthenticateAsync(PageAccess.Name);
        return PageAccess.ReaderOf(http, settings);
    }

    private Google.Rpc.Status StatusOf(Exception failure, string method, HttpContext context) =>
        failure is CallRefusedException refusal ? refused.Answer(refusal, method, context).ToStatus() : faults.Explain(failure, method);

    private static Task RefuseAsync(HttpContext context, Google.Rpc.Status status, int? httpStatus = null)
    {
        BodyLimits.Discard(context);
        return StatusAnswers.WriteAsync(context, status, httpStatus);
    }
}
