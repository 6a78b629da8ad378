using FleetTrend.Api.Pages.Forms;
using FleetTrend.Api.People;
using FleetTrend.Store.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Api.Pages.People;

/// <summary>One person: the forms that change the role, give a link for a new password, and disable the account or enable it again.</summary>
internal sealed class PersonModel(UserManager<Person> people, Accounts accounts) : FormPage
{
    /// <summary>Name of a form.</summary>
    public const string Role = "role";

    /// <summary>Name of a form.</summary>
    public const string Renew = "renew";

    /// <summary>Name of a form.</summary>
    public const string Disable = "disable";

    /// <summary>Why the reader sees nobody; null where he does.</summary>
    public string? Why => WhyNot("Seeing and changing who signs in", PeopleModel.Needed);

    /// <summary>Who it is; null where there is nobody of that number, or the reader may not see him.</summary>
    public Person? Person { get; private set; }

    /// <summary>Whether it is the reader himself.</summary>
    public bool IsReader => Person?.Id == Reader.PersonId;

    /// <summary>A link that was just made, which is shown this once; null where none was.</summary>
    public string? Link { get; private set; }

    /// <summary>Shows him.</summary>
    public async Task OnGetAsync(long id, CancellationToken ct) => await FindAsync(id, ct);

    /// <summary>Gives him another role.</summary>
    public Task<IActionResult> OnPostRoleAsync(long id, CancellationToken ct) =>
        ChangeAsync(id, Role, person => accounts.ChangeRoleAsync(person, PeopleModel.RoleOf(Typed("role")), Reader, ct), ct);

    /// <summary>Makes a link for a new password, and shows it.</summary>
    public async Task<IActionResult> OnPostRenewAsync(long id, CancellationToken ct)
    {
        Link = await SendAsync(id, Renew, person => accounts.RenewAsync(person, Reader, ct), ct);
        return Page();
    }

    /// <summary>Disables his account.</summary>
    public Task<IActionResult> OnPostDisableAsync(long id, CancellationToken ct) =>
        ChangeAsync(id, Disable, person => accounts.DisableAsync(person, isDisabled: true, Reader, ct), ct);

    /// <summary>Enables his account again.</summary>
    public Task<IActionResult> OnPostEnableAsync(long id, CancellationToken ct) =>
        ChangeAsync(id, Disable, person => accounts.DisableAsync(person, isDisabled: false, Reader, ct), ct);

    private async Task<IActionResult> ChangeAsync(long id, string form, Func<Person, Task<Answer<Person>>> change, CancellationToken ct) =>
        await SendAsync(id, form, change, ct) is { } changed ? LocalRedirect($"/people/{changed.Id}?done={form}") : Page();

    private async Task<T?> SendAsync<T>(long id, string form, Func<Person, Task<Answer<T>>> change, CancellationToken ct)
        where T : class
    {
        var isThere = await FindAsync(id, ct);
        return isThere || Why is not null ? await AnswerAsync(form, "/people", PeopleModel.Needed, _ => change(Person!)) : null;
    }

    private async Task<bool> FindAsync(long id, CancellationToken ct)
    {
        if (Why is not null)
            return false;
        Person = await people.Users.FirstOrDefaultAsync(person => person.Id == id, ct);
        if (Person is null)
            Response.StatusCode = StatusCodes.Status404NotFound;
        return Person is not null;
    }
}
