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
    public static Caller Of(ServerCallContext context) =>
        context.GetHttpContext().Features.Get<Caller>() ?? throw new InvalidOperationException($"{context.Method} was let in without a caller.");

    /// <summary>Ends a call about a source that is not the caller's own; before it is looked whether there is one.</summary>
    /// <param name="field">The field that names the source.</param>
    /// <param name="source">What it holds.</param>
    /// <exception cref="RpcException">PERMISSION_DENIED, SOURCE_NOT_YOURS.</exception>
    public void RefuseOtherSource(string field, string source)
    {
        if (!Owns(source))
            throw new Refusal(field, source.Length > 40 ? source[..40] : source, Reasons.SourceNotYours, "the source that the key belongs to.").ToException();
    }
}
