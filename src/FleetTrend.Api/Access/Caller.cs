using FleetTrend.Intake;
using FleetTrend.Store.Keys;
using Grpc.Core;

namespace FleetTrend.Api.Access;

/// <summary>Who makes a call: the holder of a good key.</summary>
/// <param name="Key">The key.</param>
internal sealed record Caller(ApiKey Key)
{
    /// <summary>The source whose records the caller may push and see; null for none.</summary>
    public string? Source => Key.Source;

    /// <summary>Whether the key has this scope.</summary>
    public bool Has(KeyScope scope) => Key.Scopes.Contains(scope);

    /// <summary>Whether the source is the caller's own.</summary>
    public bool Owns(string source) => Source is not null && Source == source;

    /// <summary>The caller of an admitted call.</summary>
    public static Caller Read(ServerCallContext context) =>
        context.GetHttpContext().Features.Get<Caller>() ?? throw new InvalidOperationException($"{context.Method} was let in without a caller.");

    /// <summary>The source that a call may be about. A key with a scope beyond <see cref="KeyScope.RecordsWrite"/> that opens the call
    /// is not bound to one; any other key is bound to its own, and "all" means that. Comes before it is looked whether there is
    /// such a source.</summary>
    /// <param name="method">The call, as gRPC writes it.</param>
    /// <param name="field">The field that names the source.</param>
    /// <param name="asked">What it holds; empty for all where the call takes that.</param>
    /// <returns>The source; empty for all. SOURCE_NOT_YOURS where it may not be that one.</returns>
    public Answer<string> SourceFor(string method, string field, string asked)
    {
        if (CallScopes.Find(method).Any(scope => scope != KeyScope.RecordsWrite && Has(scope)))
            return asked;
        if (asked.Length == 0 && Source is { } own)
            return own;
        return Owns(asked)
            ? asked
            : new Refusal(field, asked.Length > 40 ? asked[..40] : asked, Reasons.SourceNotYours, "must be the source that the key belongs to");
    }

    /// <summary>The source that a call may be about, or the exception that ends it.</summary>
    /// <exception cref="RpcException">PERMISSION_DENIED, SOURCE_NOT_YOURS.</exception>
    public static string SourceFor(ServerCallContext context, string field, string asked) =>
        Read(context).SourceFor(context.Method, field, asked).OrThrow();
}
