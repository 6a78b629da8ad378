using FleetTrend.Api.Access;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Store;
using FleetTrend.Store.People;
using Microsoft.AspNetCore.Identity;

namespace FleetTrend.Api.People;

/// <summary>
/// Looks whether name and password fit. A refusal says the same, and takes as long, whether there is no such person, the password is
/// wrong, or the account is locked, disabled or without a password.
/// </summary>
internal sealed class SignIns(UserManager<Person> people, FleetDbContext context, RefusedCalls refused, TimeProvider clock, ILogger<SignIns> log)
{
    /// <summary>How long a refusal takes at least: longer than what may be looked up for it.</summary>
    public static readonly TimeSpan LeastRefusal = TimeSpan.FromMilliseconds(500);

    private static readonly Person Nobody = new();
    private static readonly Lazy<string> NobodysHash = new(() => new PasswordHasher<Person>().HashPassword(Nobody, Guid.NewGuid().ToString()));

    /// <summary>The person whose name, or mail address, and password these are.</summary>
    /// <exception cref="CallRefusedException">They do not fit, or too many from this address did not.</exception>
    public async Task<Person> ProveAsync(string name, string password, HttpContext http)
    {
        if (!refused.IsHeard(http))
            throw new CallRefusedException(Reasons.RefusedCalls, "Too many sign-ins from this address were refused. Wait a minute, then try again.");
        var began = clock.GetTimestamp();
        var person = await FindAsync(name);
        if (await IsProvenAsync(person, password.Length > PersonRules.MostPasswordLength ? "" : password))
            return person!;
        var left = LeastRefusal - clock.GetElapsedTime(began);
        if (left > TimeSpan.Zero)
            await Task.Delay(left, clock, http.RequestAborted);
        throw new CallRefusedException(
            Reasons.SignInRefused,
            $"Name and password do not fit, or the account is locked or disabled. {PeopleRegistration.WrongPasswordsThatLock} wrong passwords lock it for "
            + $"{PeopleRegistration.LockLasts.TotalMinutes:0} minutes.");
    }

    private async Task<bool> IsProvenAsync(Person? person, string password)
    {
        if (person is not { PasswordHash: not null, DisableTime: null } || await people.IsLockedOutAsync(person))
        {
            people.PasswordHasher.VerifyHashedPassword(Nobody, NobodysHash.Value, password);
            return false;
        }

        if (!await people.CheckPasswordAsync(person, password))
        {
            await CountWrongAsync(person);
            return false;
        }

        await people.ResetAccessFailedCountAsync(person);
        return true;
    }

    /// <summary>Counts it, though others are tried at the same time.</summary>
    private async Task CountWrongAsync(Person person)
    {
        while (!(await people.AccessFailedAsync(person)).Succeeded)
            await context.Entry(person).ReloadAsync();
        if (await people.IsLockedOutAsync(person))
            ApiLog.PersonLocked(log, person.Id, PeopleRegistration.LockLasts.TotalMinutes);
    }

    private async Task<Person?> FindAsync(string name) =>
        name.Length is 0 or > PersonRules.MostAddressLength || name.Contains('\0', StringComparison.Ordinal) ? null
        : name.Contains('@', StringComparison.Ordinal) ? await people.FindByEmailAsync(name)
        : await people.FindByNameAsync(name);
}
