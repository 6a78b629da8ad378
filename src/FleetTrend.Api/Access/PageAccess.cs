using System.Security.Claims;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Intake;
using FleetTrend.Store.Keys;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.DataProtection;

namespace FleetTrend.Api.Access;

/// <summary>Who sees the pages: whoever has signed in with a key that reads trends. The browser keeps a cookie that names the key and
/// the session, and each request looks whether both are still good.</summary>
internal static class PageAccess
{
    /// <summary>Name of the policy of pages, and of the cookie's scheme.</summary>
    public const string Name = "Pages";

    /// <summary>Where one signs in.</summary>
    public const string SignInPath = "/sign-in";

    private const string Session = "session";

    private static readonly TimeSpan Lasts = TimeSpan.FromHours(12);

    /// <summary>The caller where pages are open, as they are in the demo: somebody who reads.</summary>
    public static Caller Anybody { get; } = new(new ApiKey
    {
        Id = "open-pages",
        Name = "anybody on this machine",
        Source = null,
        Scopes = [KeyScope.TrendsRead],
        CreateTime = DateTimeOffset.UnixEpoch,
    });

    public static IServiceCollection AddPageAccess(this IServiceCollection services, HostSettings settings)
    {
        // Several APIs that share the data folder take each other's cookies. Whoever reads this folder can make cookies.
        var folder = Path.GetFullPath(Path.Combine(settings.DataFolder, "sign-in"));
        OwnerOnly.CreateFolder(folder);
        services.AddDataProtection().SetApplicationName("fleettrend").PersistKeysToFileSystem(new DirectoryInfo(folder));
        // Behind a named proxy the request is https where the browser's was.
        var secure = settings.Tls is null ? CookieSecurePolicy.SameAsRequest : CookieSecurePolicy.Always;
        services.AddAntiforgery(form =>
        {
            form.Cookie.Name = "fleettrend-form";
            form.Cookie.SecurePolicy = secure;
        });
        services.AddAuthentication().AddCookie(Name, cookie =>
        {
            cookie.Cookie.Name = "fleettrend";
            cookie.Cookie.HttpOnly = true;
            cookie.Cookie.SameSite = SameSiteMode.Lax; // a link in a mail leads to the page, not to signing in again
            cookie.Cookie.SecurePolicy = secure;
            cookie.ExpireTimeSpan = Lasts;
            cookie.LoginPath = SignInPath;
            cookie.AccessDeniedPath = SignInPath;
            cookie.Events.OnValidatePrincipal = ValidateAsync;
        });
        services.AddAuthorizationBuilder().AddPolicy(Name, policy =>
        {
            policy.AddAuthenticationSchemes(KeyAuthenticationHandler.SchemeName, Name);
            policy.RequireAssertion(context =>
                settings.OpenPages || context.Resource is HttpContext http && http.Features.Get<Caller>()?.Has(KeyScope.TrendsRead) == true);
        });
        return services;
    }

    /// <summary>Signs a browser in.</summary>
    /// <returns>Null, or why not.</returns>
    public static async Task<string?> SignInAsync(HttpContext http, string text)
    {
        try
        {
            var key = await KeyAuthenticationHandler.ProveAsync(text.Trim(), http.RequestServices.GetRequiredService<KnownKeys>(), http.RequestAborted);
            if (!key.Scopes.Contains(KeyScope.TrendsRead))
                throw new CallRefusedException(Reasons.ScopeRequired, "This key does not read trends.");
            await EndSessionAsync(http); // of whoever was signed in here before
            var principal = KeyAuthenticationHandler.PrincipalOf(key, Name);
            var session = await http.RequestServices.GetRequiredService<PageSessions>().OpenAsync(key.Id, Lasts, http.RequestAborted);
            principal.AddIdentity(new ClaimsIdentity([new Claim(Session, session)]));
            await http.SignInAsync(Name, principal);
            return null;
        }
        catch (CallRefusedException refusal)
        {
            return http.RequestServices.GetRequiredService<RefusedCalls>().Answer(refusal, SignInPath, http).Message;
        }
    }

    /// <summary>Signs a browser out: its cookie, and any copy of it, opens nothing more on any server.</summary>
    public static async Task SignOutAsync(HttpContext http)
    {
        await EndSessionAsync(http);
        await http.SignOutAsync(Name);
    }

    private static async Task EndSessionAsync(HttpContext http)
    {
        var signedIn = await http.AuthenticateAsync(Name);
        if (signedIn.Principal?.FindFirstValue(Session) is { } session) // to its end, though the browser may be gone
            await http.RequestServices.GetRequiredService<PageSessions>().EndAsync(session, CancellationToken.None);
    }

    private static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        var services = context.HttpContext.RequestServices;
        var ct = context.HttpContext.RequestAborted;
        var keys = services.GetRequiredService<KnownKeys>();
        if (context.Principal?.FindFirstValue(ClaimTypes.NameIdentifier) is { } id
            && context.Principal.FindFirstValue(Session) is { } session
            && await keys.FindAsync(id, ct) is { Key: { RevokeTime: null } key }
            && await services.GetRequiredService<PageSessions>().UseAsync(session, id, Lasts, ct))
        {
            context.HttpContext.Features.Set(new Caller(key));
            await keys.MarkUsedAsync(id, ct);
            return;
        }

        context.RejectPrincipal();
        await context.HttpContext.SignOutAsync(Name);
    }
}
