using FleetTrend.Records.Sources;

namespace FleetTrend.Intake.Rules;

/// <summary>A pushed record after the rules: its content, or why it is refused.</summary>
/// <param name="Key">Its identity; meaningful where nothing is refused.</param>
/// <param name="Content">A type of FleetTrend.Records; null where refused.</param>
/// <param name="Refusals">Every broken rule; empty where it may be stored.</param>
internal sealed record ParsedRecord(RecordKey Key, object? Content, IReadOnlyList<Refusal> Refusals);
