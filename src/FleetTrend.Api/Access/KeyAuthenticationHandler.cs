using System.Security.Claims;
using System.Text.Encodings.Web;
using FleetTrend.Intake;
using FleetTrend.Store.Keys;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace FleetTrend.Api.Access;

/// <summary>Reads who calls from the header <c>authorization: Bearer KEY</c>, of gRPC and JSON alike.</summary>
internal sealed class KeyAuthenticationHandler(
    IOptionsMonitor<AuthenticationSchemeOptions> options, UrlEncoder encoder, KnownKeys keys)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, NullLoggerFactory.Instance, encoder) // refused calls have a line of ours
{
    /// <summary>Name of the scheme.</summary>
    public const string SchemeName = "Key";

    private const string Bearer = "Bearer ";

    /// <summary>The identity of a key's holder.</summary>
    public static ClaimsPrincipal PrincipalOf(ApiKey key, string scheme) =>
        new(new ClaimsIdentity([new Claim(ClaimTypes.NameIdentifier, key.Id), new Claim(ClaimTypes.Name, key.Name)], scheme));

    /// <summary>The good key of that text.</summary>
    /// <exception cref="CallRefusedException">There is no such key, or it was revoked.</exception>
    public static async Task<ApiKey> ProveAsync(string text, KnownKeys keys, CancellationToken ct)
    {
        if (!KeyText.TryParse(text, out var given) || await keys.FindAsync(given.Id, ct) is not { } stored || !stored.IsProvenBy(given))
            throw new CallRefusedException(Reasons.KeyUnknown, "There is no such key.");
        await keys.MarkUsedAsync(given.Id, ct);
        return stored.Key.RevokeTime is null
            ? stored.Key
            : throw new CallRefusedException(Reasons.KeyRevoked, "The key was revoked.")
            {
                Metadata = new Dictionary<string, string>(StringComparer.Ordinal) { ["key_id"] = given.Id },
            };
    }

    /// <inheritdoc/>
    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var header = Request.Headers.Authorization.ToString();
        if (!header.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase))
            return AuthenticateResult.NoResult();
        try
        {
            var key = await ProveAsync(header[Bearer.Length..].Trim(), keys, Context.RequestAborted);
            Context.Features.Set(Caller.Of(key));
            return AuthenticateResult.Success(new AuthenticationTicket(PrincipalOf(key, SchemeName), SchemeName));
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            return AuthenticateResult.Fail(failure); // the interceptor throws it where it becomes an answer
        }
    }
}
