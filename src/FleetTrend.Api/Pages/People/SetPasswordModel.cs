using System.Globalization;
using FleetTrend.Api.Access;
using FleetTrend.Api.Pages.Forms;
using FleetTrend.Api.People;
using FleetTrend.Intake;
using Microsoft.AspNetCore.Mvc;

namespace FleetTrend.Api.Pages.People;

/// <summary>Lets whoever has a link choose a password, and signs him in.</summary>
internal sealed class SetPasswordModel(Accounts accounts) : FormPage
{
    /// <summary>Name of the form.</summary>
    public const string Set = "set";

    /// <summary>The token of the link; null where it is not good.</summary>
    public string? Token { get; private set; }

    /// <summary>Whose link it is.</summary>
    public long PersonId { get; private set; }

    /// <summary>His name.</summary>
    public string Name { get; private set; } = "";

    /// <summary>Shows the form where the link is good.</summary>
    public async Task OnGetAsync([FromQuery] long person, [FromQuery] string? token, CancellationToken ct)
    {
        await LookAsync(person, token ?? "", ct);
        if (Token is null)
            Response.StatusCode = StatusCodes.Status404NotFound;
    }

    /// <summary>Sets the password.</summary>
    public async Task<IActionResult> OnPostAsync(CancellationToken ct)
    {
        _ = long.TryParse(Typed("person"), NumberStyles.None, CultureInfo.InvariantCulture, out var id);
        var token = TypedAsItIs("token");
        var person = await TakeAsync(Set, "/set-password", () => accounts.SetPasswordAsync(id, token, TypedAsItIs("password"), ct));
        if (person is null)
        {
            if (Refusals.All(refusal => refusal.Reason != Reasons.LinkNotGood))
                await LookAsync(id, token, ct);
            return Page();
        }

        await PageAccess.SignInAsync(HttpContext, person);
        return LocalRedirect("/");
    }

    private async Task LookAsync(long id, string token, CancellationToken ct)
    {
        if (await accounts.OfLinkAsync(id, token, ct) is not { } person)
            return;
        (Token, PersonId, Name) = (token, person.Id, person.UserName!);
    }
}
