using FleetTrend.Api.Access;
using FleetTrend.Api.Pages.Forms;
using FleetTrend.Api.People;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Intake;
using FleetTrend.Store.People;
using Microsoft.AspNetCore.Mvc;

namespace FleetTrend.Api.Pages.People;

/// <summary>Makes whoever has the first link the administrator.</summary>
internal sealed class FirstSignInModel(FirstLinks links, Accounts accounts, HostSettings settings) : FormPage
{
    /// <summary>Name of the form.</summary>
    public const string First = "first";

    /// <summary>The token of the link; null where it is not good.</summary>
    public string? Token { get; private set; }

    /// <summary>Shows the form where the link is good.</summary>
    public async Task OnGetAsync([FromQuery] string? token, CancellationToken ct)
    {
        Token = token is not null && await links.IsGoodAsync(token, ct) ? token : null;
        if (Token is null)
            Response.StatusCode = StatusCodes.Status404NotFound;
    }

    /// <summary>Makes the administrator, and signs him in.</summary>
    public async Task<IActionResult> OnPostAsync(CancellationToken ct)
    {
        var made = await TakeAsync(First, FirstSignIn.Page, () =>
            accounts.BecomeAdministratorAsync(TypedAsItIs("token"), Typed("name"), Typed("address"), TypedAsItIs("password"), ct));
        if (made is null)
        {
            Token = Refusals.Any(refusal => refusal.Reason == Reasons.LinkNotGood) ? null : TypedAsItIs("token");
            return Page();
        }

        FirstSignIn.Remove(settings);
        await PageAccess.SignInAsync(HttpContext, made);
        return LocalRedirect("/people");
    }
}
