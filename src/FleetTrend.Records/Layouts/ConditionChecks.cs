using FleetTrend.Records.Findings;

namespace FleetTrend.Records.Layouts;

/// <summary>What to check where one condition keeps coming back at one place of a kind.</summary>
/// <param name="Condition">The condition.</param>
/// <param name="Lines">A line each, in a mechanic's words.</param>
public sealed record ConditionChecks(Condition Condition, IReadOnlyList<string> Lines)
{
    /// <inheritdoc/>
    public bool Equals(ConditionChecks? other) => other is not null && Condition == other.Condition && Lines.SequenceEqual(other.Lines, StringComparer.Ordinal);

    /// <inheritdoc/>
    public override int GetHashCode() => (int)Condition;
}
