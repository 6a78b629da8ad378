using FleetTrend.Intake;
using FleetTrend.Store.Keys;

namespace FleetTrend.Api.Access;

/// <summary>Lets a known caller make a call, or not: limits of the caller, then scopes. The forms of pages go through it too.</summary>
internal sealed class CallGate(CallLimits limits)
{
    /// <summary>Lets a call in.</summary>
    /// <param name="caller">Who makes it.</param>
    /// <param name="needed">Scopes that open it: any one of them does.</param>
    /// <returns>Held while the call lasts.</returns>
    /// <exception cref="CallRefusedException">The caller asks for too much, or may not make the call.</exception>
    public IDisposable Admit(Caller caller, IReadOnlyList<KeyScope> needed)
    {
        var held = limits.Admit(caller.Id);
        try
        {
            RefuseWithoutScope(caller, needed);
            return held;
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    private static void RefuseWithoutScope(Caller caller, IReadOnlyList<KeyScope> needed)
    {
        if (needed.Any(caller.Has))
            return;
        var names = string.Join(" or ", needed.Select(CallScopes.NameOf));
        throw new CallRefusedException(
            Reasons.ScopeRequired,
            names.Length == 0 ? "The call is open to nobody."
            : caller.Role is { } role ? $"It takes {RoleWords.WhoHas(needed)}; {caller.Name} is signed in as {RoleWords.One(role)}."
            : $"The call needs a key with {names}.")
        {
            Metadata = new Dictionary<string, string>(StringComparer.Ordinal) { ["key_id"] = caller.Id, ["scopes"] = names },
        };
    }
}
