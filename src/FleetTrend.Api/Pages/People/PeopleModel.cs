using FleetTrend.Api.Access;
using FleetTrend.Api.Pages.Forms;
using FleetTrend.Api.People;
using FleetTrend.Store.Keys;
using FleetTrend.Store.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Api.Pages.People;

/// <summary>Who may sign in, and the form that adds somebody.</summary>
internal sealed class PeopleModel(UserManager<Person> people, Accounts accounts, AccountMails mails, TimeProvider clock) : FormPage
{
    /// <summary>Name of the form.</summary>
    public const string Add = "add";

    /// <summary>What it takes to see and change people.</summary>
    public static readonly IReadOnlyList<KeyScope> Needed = [KeyScope.Administer];

    /// <summary>Why the reader sees nobody; null where he does.</summary>
    public string? Why => WhyNot("Seeing and changing who signs in", Needed);

    /// <summary>Everybody, by name.</summary>
    public IReadOnlyList<Person> Everybody { get; private set; } = [];

    /// <summary>Who was just added; null where nobody was.</summary>
    public Person? Added { get; private set; }

    /// <summary>The link for him, which is shown this once.</summary>
    public string? Link { get; private set; }

    /// <summary>Whether a link is mailed too.</summary>
    public bool IsMailed => mails.IsPossible;

    /// <summary>The roles that can be chosen.</summary>
    public static IReadOnlyList<(string Value, string Words)> Roles { get; } =
        [.. Enum.GetValues<PersonRole>().Select(role => (role.ToString(), $"{RoleWords.Name(role)}: {RoleWords.May(role)}"))];

    /// <summary>A role as a form sends it; null where it is none.</summary>
    public static PersonRole? RoleOf(string typed) => Enum.TryParse<PersonRole>(typed, out var role) && Enum.IsDefined(role) ? role : null;

    /// <summary>What keeps somebody from signing in; null where nothing does.</summary>
    public string State(Person person) =>
        person.DisableTime is not null ? "disabled"
        : person.PasswordHash is null ? "has not chosen a password yet"
        : person.LockoutEnd > clock.GetUtcNow() ? "locked for a while after wrong passwords"
        : "may sign in";

    /// <summary>Shows them.</summary>
    public async Task<IActionResult> OnGetAsync(CancellationToken ct)
    {
        if (Why is null)
            Everybody = await people.Users.AsNoTracking().OrderBy(person => person.NormalizedUserName).ToListAsync(ct);
        return Page();
    }

    /// <summary>Adds somebody.</summary>
    public async Task<IActionResult> OnPostAsync(CancellationToken ct)
    {
        Added = await AnswerAsync(Add, "/people", Needed, caller => accounts.AddAsync(Typed("name"), Typed("address"), RoleOf(Typed("role")), caller, ct));
        if (Added is not null)
        {
            Link = await accounts.LinkAsync(Added);
            mails.Invite(Added, Reader.Name);
        }

        return await OnGetAsync(ct);
    }
}
