using System.Security.Claims;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Store.Keys;
using FleetTrend.Store.People;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.DataProtection;

namespace FleetTrend.Api.Access;

/// <summary>Who sees the pages: people who have signed in. The browser keeps a cookie that names the session, and each request looks
/// whether it is still good and whose it is. Keys open no page.</summary>
internal static class PageAccess
{
    /// <summary>Name of the policy of pages, and of the cookie's scheme.</summary>
    public const string Name = "Pages";

    /// <summary>Name of the policy of files that programs read too: with a key that reads trends.</summary>
    public const string Files = "Files";

    /// <summary>Where one signs in.</summary>
    public const string SignInPath = "/sign-in";

    private const string Session = "session";

    private static readonly TimeSpan Lasts = TimeSpan.FromHours(12);

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
        services.AddAuthorizationBuilder()
            .AddPolicy(Name, policy => policy.AddAuthenticationSchemes(Name)
                .RequireAssertion(context => context.Resource is HttpContext http && ReaderOf(http, settings) is not null))
            .AddPolicy(Files, policy => policy.AddAuthenticationSchemes(KeyAuthenticationHandler.SchemeName, Name)
                .RequireAssertion(context => context.Resource is HttpContext http
                    && (ReaderOf(http, settings) is not null || http.Features.Get<Caller>()?.Has(KeyScope.TrendsRead) == true)));
        return services;
    }

    /// <summary>The person who reads, once the cookie was looked at; in the demo, whoever has not signed in is its director. Null where nobody has
    /// signed in.</summary>
    public static Caller? ReaderOf(HttpContext http, HostSettings settings)
    {
        if (http.Features.Get<Caller>() is { Role: not null } person)
            return person;
        if (!settings.DemoDirector)
            return null;
        http.Features.Set(Caller.DemoDirector);
        return Caller.DemoDirector;
    }

    /// <summary>Signs a browser in, in place of whoever was signed in there before.</summary>
    public static async Task SignInAsync(HttpContext http, Person person)
    {
        await EndSessionAsync(http);
        var session = await http.RequestServices.GetRequiredService<PageSessions>().OpenAsync(person, Lasts, http.RequestAborted);
        await http.SignInAsync(Name, new ClaimsPrincipal(new ClaimsIdentity([new Claim(Session, session)], Name)));
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
        var sessions = context.HttpContext.RequestServices.GetRequiredService<PageSessions>();
        if (context.Principal?.FindFirstValue(Session) is { } session
            && await sessions.UseAsync(session, Lasts, context.HttpContext.RequestAborted) is { } person)
        {
            context.HttpContext.Features.Set(Caller.Of(person));
            return;
        }

        context.RejectPrincipal();
        await context.HttpContext.SignOutAsync(Name);
    }
}
