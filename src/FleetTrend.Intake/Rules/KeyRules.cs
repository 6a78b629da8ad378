using FleetTrend.Store.Keys;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of what is asked about keys.</summary>
public static class KeyRules
{
    private const int MaxNameLength = 60;

    /// <summary>Every rule that a request for a key breaks.</summary>
    public static IReadOnlyList<Refusal> Check(Wire.CreateKeyRequest request)
    {
        var reader = new FieldReader(default);
        reader.Line("name", request.Name, 1, MaxNameLength);
        if (request.Source.Length > 0)
            reader.Name("source", request.Source, Patterns.Source, Patterns.SourceRule);
        if (request.Scopes.Count == 0)
            reader.Refuse("scopes", "", Reasons.FieldRequired, "must be a list of one scope or more");
        if (request.Scopes.Count > Enum.GetValues<KeyScope>().Length)
        {
            reader.RefuseBare("scopes", $"{request.Scopes.Count}", Reasons.TooManyItems, "must be a list of scopes, each once");
            return reader.Refusals;
        }

        var seen = new HashSet<Wire.Scope>();
        foreach (var (index, scope) in request.Scopes.Index())
        {
            reader.Choice<Wire.Scope, KeyScope>($"scopes[{index}]", scope);
            if (!seen.Add(scope))
                reader.RefuseBare($"scopes[{index}]", ContractWords.Write(scope), Reasons.DuplicateLine, "must be a scope that stands in the list once");
        }

        if (seen.Contains(Wire.Scope.RecordsWrite) && request.Source.Length == 0)
            reader.Refuse("source", "", Reasons.FieldRequired, "must be the source that the key pushes records of");
        return reader.Refusals;
    }

    /// <summary>Every rule that a request to revoke a key breaks.</summary>
    public static IReadOnlyList<Refusal> Check(Wire.RevokeKeyRequest request)
    {
        var reader = new FieldReader(default);
        reader.Name("key_id", request.KeyId, Patterns.KeyId, Patterns.KeyIdRule);
        return reader.Refusals;
    }
}
