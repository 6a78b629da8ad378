using FleetTrend.Store.Keys;
using FleetTrend.Store.People;

namespace FleetTrend.Api.Access;

/// <summary>Roles in words.</summary>
internal static class RoleWords
{
    /// <summary>A role by its name: <c>director</c>.</summary>
    public static string Name(PersonRole role) => role switch
    {
        PersonRole.Reader => "reader",
        PersonRole.Director => "director",
        PersonRole.Administrator => "administrator",
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "Not a role."),
    };

    /// <summary>Who somebody is: <c>a director</c>.</summary>
    public static string One(PersonRole role) => role == PersonRole.Administrator ? "an administrator" : $"a {Name(role)}";

    /// <summary>What a role may do, as a sentence.</summary>
    public static string May(PersonRole role) => role switch
    {
        PersonRole.Reader => "Reads everything.",
        PersonRole.Director => "Reads, and answers: flags, data problems, merges, codes, parameters, report schedules.",
        PersonRole.Administrator => "Does what a director does, and decides who signs in.",
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "Not a role."),
    };

    /// <summary>The roles that have one of these scopes: <c>a director or an administrator</c>; <c>a program with a key</c> where none has.</summary>
    public static string WhoHas(IReadOnlyList<KeyScope> scopes)
    {
        var roles = Enum.GetValues<PersonRole>().Where(role => Caller.ScopesOf(role).Any(scopes.Contains)).Select(One).ToList();
        return roles.Count == 0 ? "a program with a key" : string.Join(" or ", roles);
    }
}
