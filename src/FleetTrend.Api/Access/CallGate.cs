using FleetTrend.Intake;

namespace FleetTrend.Api.Access;

/// <summary>Lets a known caller make a call, or not: limits of the key, then its scopes. The forms of pages go through it too.</summary>
internal sealed class CallGate(CallLimits limits)
{
    /// <summary>Lets a call in.</summary>
    /// <param name="caller">Who makes it.</param>
    /// <param name="method">As gRPC writes it: <c>/package.Service/Call</c>.</param>
    /// <returns>Held while the call lasts.</returns>
    /// <exception cref="CallRefusedException">The key asks for too much, or does not allow the call.</exception>
    public IDisposable Admit(Caller caller, string method)
    {
        var held = limits.Admit(caller.Key.Id);
        try
        {
            RefuseWithoutScope(caller, method);
            return held;
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    private static void RefuseWithoutScope(Caller caller, string method)
    {
        var needed = CallScopes.Find(method);
        if (needed.Any(caller.Has))
            return;
        var names = string.Join(" or ", needed.Select(CallScopes.NameOf));
        throw new CallRefusedException(
            Reasons.ScopeRequired, names.Length == 0 ? "The call is open to nobody." : $"The call needs a key with {names}.")
        {
            Metadata = new Dictionary<string, string>(StringComparer.Ordinal) { ["key_id"] = caller.Key.Id, ["scopes"] = names },
        };
    }
}
