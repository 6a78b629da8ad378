using FleetTrend.Api.Access;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Store;
using FleetTrend.Store.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Api.People;

/// <summary>Adds people, gives them links, and changes what they may do. Nobody changes his own role or disables himself, so that one
/// administrator always stays.</summary>
internal sealed class Accounts(UserManager<Person> people, FleetDbContext context, HostSettings settings, TimeProvider clock, ILogger<Accounts> log)
{
    /// <summary>Makes the administrator to whom the first link was given.</summary>
    public async Task<Answer<Person>> BecomeAdministratorAsync(string token, string name, string address, string password, CancellationToken ct)
    {
        await using var change = await PeopleChange.BeginAsync(context, ct);
        if (!await FirstLinks.UseAsync(context, token, ct))
            return NotGood();
        IReadOnlyList<Refusal> refusals = [.. PersonRules.Check(name, address), .. PersonRules.CheckPassword("password", password)];
        if (refusals.Count == 0)
            refusals = await TakenAsync(name, address);
        if (refusals.Count > 0)
            return Answer<Person>.Refuse(refusals);
        var person = new Person { UserName = name, Email = address, Role = PersonRole.Administrator };
        MustHold(await people.CreateAsync(person, password));
        await change.CommitAsync(ct);
        ApiLog.PersonAdded(log, person.Id, RoleWords.Name(person.Role), "the first link");
        return person;
    }

    /// <summary>Adds somebody, without a password as yet.</summary>
    public async Task<Answer<Person>> AddAsync(string name, string address, PersonRole? role, Caller by, CancellationToken ct)
    {
        List<Refusal> refusals = [.. PersonRules.Check(name, address)];
        if (role is null)
            refusals.Add(new Refusal("role", "", Reasons.FieldRequired, "must be reader, director or administrator"));
        if (refusals.Count > 0)
            return Answer<Person>.Refuse(refusals);
        await using var change = await PeopleChange.BeginAsync(context, ct);
        if (await TakenAsync(name, address) is { Count: > 0 } taken)
            return Answer<Person>.Refuse(taken);
        var person = new Person { UserName = name, Email = address, Role = role!.Value };
        MustHold(await people.CreateAsync(person));
        await change.CommitAsync(ct);
        ApiLog.PersonAdded(log, person.Id, RoleWords.Name(person.Role), by.LogName);
        return person;
    }

    /// <summary>Gives somebody another role; it counts from his next request on.</summary>
    public async Task<Answer<Person>> ChangeRoleAsync(Person person, PersonRole? role, Caller by, CancellationToken ct)
    {
        if (role is not { } next)
            return new Refusal("role", "", Reasons.FieldRequired, "must be reader, director or administrator");
        return await ChangeAsync(person, by, () => person.Role = next, RoleWords.Name(next), ct);
    }

    /// <summary>Ends all sessions and links of somebody, and keeps him from signing in; or lets him sign in again.</summary>
    public Task<Answer<Person>> DisableAsync(Person person, bool isDisabled, Caller by, CancellationToken ct) => ChangeAsync(
        person, by,
        () =>
        {
            person.DisableTime = isDisabled ? person.DisableTime ?? clock.GetUtcNow() : null;
            person.SecurityStamp = Guid.NewGuid().ToString("N");
        },
        isDisabled ? "disabled" : "enabled", ct);

    /// <summary>A link with which somebody chooses a password, for an administrator to hand over. It ends his sessions and links before.</summary>
    public async Task<Answer<string>> RenewAsync(Person person, Caller by, CancellationToken ct)
    {
        var changed = await ChangeAsync(person, by, () => person.SecurityStamp = Guid.NewGuid().ToString("N"), "given a link", ct);
        return changed.Value is null ? Answer<string>.Refuse(changed.Refusals) : await LinkAsync(person);
    }

    /// <summary>A link with which somebody chooses a password, once, within <see cref="PeopleRegistration.LinkLasts"/>. Secret.</summary>
    public async Task<string> LinkAsync(Person person) =>
        $"{settings.PublicUrl}/set-password?person={person.Id}&token={Uri.EscapeDataString(await people.GeneratePasswordResetTokenAsync(person))}";

    /// <summary>The person that a link is for; null where it is not good: used, too old, or of somebody disabled.</summary>
    public async Task<Person?> OfLinkAsync(long id, string token, CancellationToken ct) =>
        await people.Users.FirstOrDefaultAsync(row => row.Id == id, ct) is { DisableTime: null } person
        && await people.VerifyUserTokenAsync(person, TokenOptions.DefaultProvider, UserManager<Person>.ResetPasswordTokenPurpose, token)
            ? person
            : null;

    /// <summary>Sets the password with a link, which is used up; sessions end, and so does a lock-out.</summary>
    public async Task<Answer<Person>> SetPasswordAsync(long id, string token, string password, CancellationToken ct)
    {
        await using var change = await PeopleChange.BeginAsync(context, ct); // a link is used once
        if (await OfLinkAsync(id, token, ct) is not { } person)
            return NotGood();
        if (PersonRules.CheckPassword("password", password) is { Count: > 0 } refusals)
            return Answer<Person>.Refuse(refusals);
        (person.LockoutEnd, person.AccessFailedCount) = (null, 0);
        MustHold(await people.ResetPasswordAsync(person, token, password));
        await change.CommitAsync(ct);
        ApiLog.PasswordSet(log, person.Id);
        return person;
    }

    /// <summary>Gives a person who has proven his password another one; his sessions end.</summary>
    public async Task<Answer<Person>> ChangePasswordAsync(Person person, string current, string next)
    {
        if (PersonRules.CheckPassword("new_password", next) is { Count: > 0 } refusals)
            return Answer<Person>.Refuse(refusals);
        MustHold(await people.ChangePasswordAsync(person, current, next));
        ApiLog.PasswordSet(log, person.Id);
        return person;
    }

    private async Task<Answer<Person>> ChangeAsync(Person person, Caller by, Action change, string what, CancellationToken ct)
    {
        if (person.Id == by.PersonId)
            return new Refusal("person", person.UserName!, Reasons.FieldNotAllowed, "must be somebody else: nobody changes his own account here");
        await using var alone = await PeopleChange.BeginAsync(context, ct);
        if (!await people.Users.AnyAsync(row => row.Id == by.PersonId && row.Role == PersonRole.Administrator && row.DisableTime == null, ct))
            return new Refusal("person", by.Name, Reasons.ScopeRequired, "must be changed by an administrator");
        IdentityResult result;
        do
        {
            await context.Entry(person).ReloadAsync(ct); // a wrong password may be counted meanwhile
            change();
            result = await people.UpdateAsync(person);
        }
        while (result.Errors.Any(error => error.Code == nameof(IdentityErrorDescriber.ConcurrencyFailure)));

        MustHold(result);
        await alone.CommitAsync(ct);
        ApiLog.PersonChanged(log, person.Id, what, by.LogName);
        return person;
    }

    private async Task<IReadOnlyList<Refusal>> TakenAsync(string name, string address)
    {
        var taken = new List<Refusal>();
        if (await people.FindByNameAsync(name) is not null)
            taken.Add(new Refusal("name", name, Reasons.NameInUse, "must be a name that nobody else has"));
        if (await people.FindByEmailAsync(address) is not null)
            taken.Add(new Refusal("address", address, Reasons.NameInUse, "must be a mail address that nobody else has"));
        return taken;
    }

    private static Refusal NotGood() => new("token", "", Reasons.LinkNotGood, "must be that of a link that was not used and is not too old") { IsBare = true };

    private static void MustHold(IdentityResult result)
    {
        if (!result.Succeeded)
            throw new InvalidOperationException(string.Join(", ", result.Errors.Select(error => error.Code)));
    }
}
