using System.Globalization;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Intake;

namespace FleetTrend.Api.Access;

/// <summary>Answers only what is asked of this server by one of its names.</summary>
internal sealed class HostCheck(RequestDelegate next, HostNames names, RefusedCalls refused)
{
    private const string Grpc = "application/grpc";

    /// <summary>Has a request handled, or answers why not.</summary>
    public async Task InvokeAsync(HttpContext context)
    {
        var host = context.Request.Host.Host;
        if (names.Have(host))
        {
            await next(context);
            return;
        }

        var refusal = refused.Answer(
            new CallRefusedException(
                Reasons.HostNotAllowed,
                RefusalStatus.Build(new Refusal("host", host, Reasons.HostNotAllowed, $"must be a name of this server ({SettingNames.AllowedHosts} adds further ones)")).Message),
            context.Request.Path, context);
        if (context.Request.ContentType?.StartsWith(Grpc, StringComparison.OrdinalIgnoreCase) == true)
        {
            context.Response.ContentType = Grpc;
            context.Response.Headers["grpc-status"] = ((int)refusal.Reason.Code).ToString(CultureInfo.InvariantCulture);
            context.Response.Headers["grpc-message"] = Uri.EscapeDataString($"{refusal.Reason.Name}: {refusal.Message}");
            return;
        }

        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        await context.Response.WriteAsync($"{refusal.Reason.Name}: {refusal.Message}\n", context.RequestAborted);
    }
}
