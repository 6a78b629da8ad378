using FleetTrend.Api.Access;
using FleetTrend.Store.Keys;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages;

/// <summary>Takes a key and signs the browser in.</summary>
public sealed class SignInModel : PageModel
{
    /// <summary>Why the key was not taken; null before one was sent.</summary>
    public string? Refusal { get; private set; }

    /// <summary>Who is signed in; null where nobody is.</summary>
    public ApiKey? SignedIn { get; private set; }

    /// <summary>Looks who is signed in.</summary>
    public async Task OnGetAsync()
    {
        await HttpContext.AuthenticateAsync(PageAccess.Name);
        SignedIn = HttpContext.Features.Get<Caller>()?.Key;
    }

    /// <summary>Signs the browser out, on every server.</summary>
    public async Task<IActionResult> OnPostOutAsync()
    {
        await PageAccess.SignOutAsync(HttpContext);
        return LocalRedirect(PageAccess.SignInPath);
    }

    /// <summary>Signs in and leads on to the page that was asked for.</summary>
    public async Task<IActionResult> OnPostAsync([FromForm] string? key, [FromQuery] string? returnUrl)
    {
        Refusal = await PageAccess.SignInAsync(HttpContext, key ?? "");
        if (Refusal is not null)
            return Page();
        return LocalRedirect(Url.IsLocalUrl(returnUrl) ? returnUrl : "/");
    }
}
