using FleetTrend.Intake;
using FleetTrend.Store.Keys;
using FleetTrend.Store.People;
using Grpc.Core;

namespace FleetTrend.Api.Access;

/// <summary>Who makes a call or sends a form: a program with its key, or a person who has signed in.</summary>
internal sealed record Caller
{
    private static readonly KeyScope[] Reads = [KeyScope.TrendsRead];
    private static readonly KeyScope[] Answers = [KeyScope.TrendsRead, KeyScope.Answer];
    private static readonly KeyScope[] Administers = [KeyScope.TrendsRead, KeyScope.Answer, KeyScope.Administer];

    private Caller(string id, string name, IReadOnlyList<KeyScope> scopes) => (Id, Name, Scopes) = (id, name, scopes);

    /// <summary>Nobody: may do nothing.</summary>
    public static Caller Nobody { get; } = new("nobody", "nobody", []);

    /// <summary>Who visits the demo without signing in.</summary>
    public static Caller DemoDirector { get; } = new("demo-director", "Demo director (synthetic)", Answers) { Role = PersonRole.Director };

    /// <summary>For limits and logs: the key's identifier, or <c>person-7</c>. No secret.</summary>
    public string Id { get; }

    /// <summary>The key's name, or the person's: what stands beside an answer.</summary>
    public string Name { get; }

    /// <summary>What the caller may do.</summary>
    public IReadOnlyList<KeyScope> Scopes { get; }

    /// <summary>The source whose records the caller may push and see; null for none.</summary>
    public string? Source => Key?.Source;

    /// <summary>The key; null where a person signed in.</summary>
    public ApiKey? Key { get; private init; }

    /// <summary>The person's role; null for a program.</summary>
    public PersonRole? Role { get; private init; }

    /// <summary>The person's number; null for a program, and for the demo's visitor, who is not stored.</summary>
    public long? PersonId { get; private init; }

    /// <summary>For logs: <c>key abcdefghijkl</c>, <c>person-7</c>.</summary>
    public string LogName => Key is null ? Id : $"key {Id}";

    /// <summary>The holder of a key.</summary>
    public static Caller Of(ApiKey key) => new(key.Id, key.Name, key.Scopes) { Key = key };

    /// <summary>Somebody who has signed in: the scopes are those of the role.</summary>
    public static Caller Of(SignedInPerson person) =>
        new($"person-{person.Id}", person.Name, ScopesOf(person.Role)) { Role = person.Role, PersonId = person.Id };

    /// <summary>What a role allows, in the scopes that keys have: one mechanism decides about both.</summary>
    public static IReadOnlyList<KeyScope> ScopesOf(PersonRole role) => role switch
    {
        PersonRole.Reader => Reads,
        PersonRole.Director => Answers,
        PersonRole.Administrator => Administers,
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "Not a role."),
    };

    /// <summary>Whether the caller has this scope.</summary>
    public bool Has(KeyScope scope) => Scopes.Contains(scope);

    /// <summary>Whether the source is the caller's own.</summary>
    public bool Owns(string source) => Source is not null && Source == source;

    /// <summary>The caller of an admitted call.</summary>
    public static Caller Read(ServerCallContext context) =>
        context.GetHttpContext().Features.Get<Caller>() ?? throw new InvalidOperationException($"{context.Method} was let in without a caller.");

    /// <summary>The source that a call may be about. A caller with a scope beyond <see cref="KeyScope.RecordsWrite"/> that opens the call
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
