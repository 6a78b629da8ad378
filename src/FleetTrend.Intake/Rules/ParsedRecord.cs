using FleetTrend.Records;
using FleetTrend.Records.Sources;

namespace FleetTrend.Intake.Rules;

/// <summary>A pushed record after the rules: its content, or why it is refused.</summary>
/// <param name="Key">Its identity; meaningful where nothing is refused.</param>
/// <param name="Content">What it says; null where refused.</param>
/// <param name="Refusals">Every broken rule; empty where it may be stored.</param>
internal sealed record ParsedRecord(RecordKey Key, RecordContent? Content, IReadOnlyList<Refusal> Refusals);
