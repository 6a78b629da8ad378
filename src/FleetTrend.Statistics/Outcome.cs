using System.Diagnostics.CodeAnalysis;

namespace FleetTrend.Statistics;

/// <summary>
/// An estimate, or the typed reason why there is none. Converts implicitly from either, so an estimator simply returns one of the two.
/// </summary>
/// <typeparam name="T">The estimate's type.</typeparam>
public sealed class Outcome<T>
    where T : notnull
{
    private readonly T? value;

    private Outcome(T? value, NotEstimable? reason)
    {
        this.value = value;
        Reason = reason;
    }

    /// <summary>Whether there is an estimate.</summary>
    [MemberNotNullWhen(false, nameof(Reason))]
    public bool IsEstimated => Reason is null;

    /// <summary>The estimate.</summary>
    /// <exception cref="InvalidOperationException">There is none; the message gives the reason.</exception>
    public T Value => IsEstimated ? value! : throw new InvalidOperationException($"Not estimable: {Reason.Explanation}");

    /// <summary>The reason why there is no estimate, or null where there is one.</summary>
    public NotEstimable? Reason { get; }

    /// <summary>Wraps an estimate.</summary>
    public static implicit operator Outcome<T>(T value) => new(value, null);

    /// <summary>Wraps a reason.</summary>
    public static implicit operator Outcome<T>(NotEstimable reason) => new(default, reason);

    /// <summary>Gives the estimate when there is one.</summary>
    public bool TryGetValue([MaybeNullWhen(false)] out T estimate)
    {
        estimate = value;
        return IsEstimated;
    }

    /// <summary>One function for the estimate, one for the reason.</summary>
    public TResult Match<TResult>(Func<T, TResult> estimated, Func<NotEstimable, TResult> notEstimable) =>
        IsEstimated ? estimated(Value) : notEstimable(Reason);

    /// <summary>The outcome of a further computation on the estimate; a reason passes through.</summary>
    public Outcome<TNext> Then<TNext>(Func<T, Outcome<TNext>> next)
        where TNext : notnull =>
        IsEstimated ? next(Value) : Reason;

    /// <summary>The estimate's text, or the reason's explanation.</summary>
    public override string ToString() => IsEstimated ? Value.ToString() ?? "" : Reason.Explanation;
}
