using FleetTrend.Api.Access;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages;

/// <summary>Takes a key and signs the browser in.</summary>
public sealed class SignInModel : PageModel
{
    /// <summary>Why the key was not taken; null before one was sent.</summary>
    public string? Refusal { get; private set; }

    /// <summary>Signs in and leads on to the page that was asked for.</summary>
    public async Task<IActionResult> OnPostAsync([FromForm] string? key, [FromQuery] string? returnUrl)
    {
        Refusal = await PageAccess.SignInAsync(HttpContext, key ?? "");
        if (Refusal is not null)
            return Page();
        return LocalRedirect(Url.IsLocalUrl(returnUrl) ? returnUrl : "/");
    }
}
