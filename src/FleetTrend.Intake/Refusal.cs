namespace FleetTrend.Intake;

/// <summary>One broken rule: which field, what it must be, what it held.</summary>
/// <param name="Field">Path of the field as in the contract: <c>finding.time_in_service_hours</c>, <c>inspection.looks[3].location</c>.</param>
/// <param name="Value">What it held, as the caller writes it; kept as far as an answer repeats it: 120 characters, hidden ones as
/// \uXXXX. Empty where it was absent.</param>
/// <param name="Reason">Why it was refused.</param>
/// <param name="Rule">What it must be: <c>must be a registered aircraft</c>. No full stop; the value follows it.</param>
public sealed record Refusal(string Field, string Value, Reason Reason, string Rule)
{
    /// <summary>Path of the field, as far as an answer repeats it.</summary>
    public string Field { get; } = ShownText.Clean(Field);

    /// <summary>What the field held, as far as an answer repeats it.</summary>
    public string Value { get; } = ShownText.Clean(Value);

    /// <summary>True for a value that is written without quotes: a number, a date, a count, a word of the contract.</summary>
    public bool IsBare { get; init; }

    /// <summary>The nearest right value; null where none is near.</summary>
    public string? Nearest { get; init; }

    /// <summary>What the field must be, and what it held: <c>must be a registered aircraft; got "ZZ-A1"; did you mean ZZ-A01?</c></summary>
    public string Words => $"{Rule}; got {Shown}{(Nearest is null ? "" : $"; did you mean {Nearest}?")}";

    private string Shown => Value.Length == 0 ? "nothing" : IsBare ? Value : $"\"{Value}\"";
}
