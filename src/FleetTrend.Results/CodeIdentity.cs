using System.Security.Cryptography;

namespace FleetTrend.Results;

/// <summary>Which code computed something: builds are deterministic, so that the same source has the same identity.</summary>
internal static class CodeIdentity
{
    /// <summary>Identity of the modules of some types together.</summary>
    public static Guid Compute(params ReadOnlySpan<Type> types)
    {
        var modules = new List<byte>();
        foreach (var type in types)
            modules.AddRange(type.Module.ModuleVersionId.ToByteArray());
        return new Guid(SHA256.HashData(modules.ToArray()).AsSpan(0, 16));
    }
}
