using FleetTrend.Api.Access;
using FleetTrend.Api.Pages.Forms;
using FleetTrend.Api.People;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Store.People;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Mvc;

namespace FleetTrend.Api.Pages.People;

/// <summary>Signs a browser in by name and password, and out again.</summary>
internal sealed class SignInModel(SignIns signIns, HostSettings settings) : FormPage
{
    /// <summary>Name of the form.</summary>
    public const string Enter = "sign-in";

    /// <summary>Shows the form, and who is signed in.</summary>
    public Task OnGetAsync() => LookAsync();

    /// <summary>Signs the browser out, on every server.</summary>
    public async Task<IActionResult> OnPostOutAsync()
    {
        await PageAccess.SignOutAsync(HttpContext);
        return LocalRedirect(PageAccess.SignInPath);
    }

    /// <summary>Signs in and leads on to the page that was asked for.</summary>
    public async Task<IActionResult> OnPostAsync([FromQuery] string? returnUrl)
    {
        var person = await TakeAsync<Person>(
            Enter, PageAccess.SignInPath, async () => await signIns.ProveAsync(Typed("name"), TypedAsItIs("password"), HttpContext));
        if (person is null)
        {
            await LookAsync();
            return Page();
        }

        await PageAccess.SignInAsync(HttpContext, person);
        return LocalRedirect(Url.IsLocalUrl(returnUrl) ? returnUrl : "/");
    }

    private async Task LookAsync()
    {
        await HttpContext.AuthenticateAsync(PageAccess.Name);
        PageAccess.ReaderOf(HttpContext, settings);
    }
}
