namespace FleetTrend.Intake;

/// <summary>One broken rule: which field, what it held, what the rule is.</summary>
/// <param name="Field">Path of the field as in the contract: <c>finding.time_in_service_hours</c>, <c>inspection.looks[3].location</c>.</param>
/// <param name="Value">What it held; kept as far as an answer repeats it: 120 characters, hidden ones as \uXXXX. Empty where it was absent.</param>
/// <param name="Reason">Why it was refused.</param>
/// <param name="Rule">The rule, a sentence.</param>
public sealed record Refusal(string Field, string Value, Reason Reason, string Rule)
{
    /// <summary>What the field held, as far as an answer repeats it.</summary>
    public string Value { get; } = ShownText.Of(Value);
}
