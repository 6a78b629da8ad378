using FleetTrend.Api.Access;
using FleetTrend.Api.Pages.Forms;
using FleetTrend.Api.People;
using FleetTrend.Store.People;
using Microsoft.AspNetCore.Mvc;

namespace FleetTrend.Api.Pages.People;

/// <summary>Gives whoever has signed in another password.</summary>
internal sealed class PasswordModel(SignIns signIns, Accounts accounts) : FormPage
{
    /// <summary>Name of the form.</summary>
    public const string Change = "change";

    /// <summary>Changes the password: the other sessions end, this browser stays signed in.</summary>
    public async Task<IActionResult> OnPostAsync()
    {
        var person = await TakeAsync<Person>(Change, "/password", async () =>
        {
            var current = TypedAsItIs("current_password");
            var proven = await signIns.ProveAsync(Reader.PersonId is null ? "" : Reader.Name, current, HttpContext);
            return await accounts.ChangePasswordAsync(proven, current, TypedAsItIs("new_password"));
        });
        if (person is null)
            return Page();
        await PageAccess.SignInAsync(HttpContext, person);
        return LocalRedirect("/password?done=change");
    }
}
