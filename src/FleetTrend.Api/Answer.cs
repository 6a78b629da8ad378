using FleetTrend.Intake;

namespace FleetTrend.Api;

/// <summary>What came of something that was asked for: a value, or every rule that it broke. Calls and pages ask alike.</summary>
internal sealed class Answer<T>
    where T : class
{
    private readonly T? value;

    private Answer(T? value, IReadOnlyList<Refusal> refusals)
    {
        this.value = value;
        Refusals = refusals;
    }

    /// <summary>Broken rules; empty where there is a value.</summary>
    public IReadOnlyList<Refusal> Refusals { get; }

    /// <summary>The value; null where a rule was broken.</summary>
    public T? Value => Refusals.Count == 0 ? value : null;

    public static implicit operator Answer<T>(T value) => new(value, []);

    public static implicit operator Answer<T>(Refusal refusal) => new(null, [refusal]);

    /// <summary>An answer that refuses.</summary>
    /// <param name="refusals">At least one.</param>
    public static Answer<T> Refuse(IReadOnlyList<Refusal> refusals)
    {
        ArgumentOutOfRangeException.ThrowIfZero(refusals.Count, nameof(refusals));
        return new(null, refusals);
    }

    /// <summary>The value.</summary>
    /// <exception cref="Grpc.Core.RpcException">A rule was broken.</exception>
    public T OrThrow() => Value ?? throw Refusals.ToException();
}
