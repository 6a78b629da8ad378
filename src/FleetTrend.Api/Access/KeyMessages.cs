using FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Access;

/// <summary>Keys as messages of the contract.</summary>
internal static class KeyMessages
{
    public static ApiKey ToWire(this Store.Keys.ApiKey key)
    {
        var wire = new ApiKey
        {
            KeyId = key.Id,
            Name = key.Name,
            Source = key.Source ?? "",
            Scopes = { key.Scopes.Select(scope => (Scope)scope) },
            CreateTime = key.CreateTime.ToWire(),
        };
        if (key.LastUsedTime is { } lastUsed)
            wire.LastUsedTime = lastUsed.ToWire();
        if (key.RevokeTime is { } revoked)
            wire.RevokeTime = revoked.ToWire();
        return wire;
    }
}
