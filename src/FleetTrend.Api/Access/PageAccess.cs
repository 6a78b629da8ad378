using System.Security.Claims;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Intake;
using FleetTrend.Store.Keys;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.DataProtection;

namespace FleetTrend.Api.Access;

/// <summary>Who sees the pages: whoever has signed in with a key that reads trends. The browser keeps a cookie that names the key,
/// and each request looks whether the key is still good.</summary>
internal static class PageAccess
{
    /// <summary>Name of the policy of pages, and of the cookie's scheme.</summary>
    public const string Name = "Pages";

    /// <summary>Where one signs in.</summary>
    public const string SignInPath = "/sign-in";

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
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        services.AddDataProtection().SetApplicationName("fleettrend").PersistKeysToFileSystem(new DirectoryInfo(folder));
        services.AddAuthentication().AddCookie(Name, cookie =>
        {
            cookie.Cookie.Name = "fleettrend";
            cookie.Cookie.HttpOnly = true;
            cookie.Cookie.SameSite = SameSiteMode.Lax; // a link in a mail leads to the page, not to signing in again
            cookie.Cookie.SecurePolicy = settings.Tls is null ? CookieSecurePolicy.SameAsRequest : CookieSecurePolicy.Always;
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
            await http.SignInAsync(Name, KeyAuthenticationHandler.PrincipalOf(key, Name));
            return null;
        }
        catch (CallRefusedException refusal)
        {
            return http.RequestServices.GetRequiredService<RefusedCalls>().Answer(refusal, SignInPath, http).Message;
        }
    }

    private static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        var keys = context.HttpContext.RequestServices.GetRequiredService<KnownKeys>();
        var id = context.Principal?.FindFirstValue(ClaimTypes.NameIdentifier);
        if (id is not null && await keys.FindAsync(id, context.HttpContext.RequestAborted) is { Key: { RevokeTime: null } key })
        {
            context.HttpContext.Features.Set(new Caller(key));
            await keys.MarkUsedAsync(id, context.HttpContext.RequestAborted);
            return;
        }

        context.RejectPrincipal();
        await context.HttpContext.SignOutAsync(Name);
    }
}
