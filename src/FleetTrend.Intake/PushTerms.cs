using FleetTrend.Intake.HeldRecords;

namespace FleetTrend.Intake;

/// <summary>For whom records are pushed, and how.</summary>
/// <param name="OwnSource">The source that the caller may push for; a record of another one is refused. Null for every source: only
/// for records that were let in before.</param>
/// <param name="Missing">What becomes of records about an aircraft, or a location of it, that is not there. A record with a code that
/// has no meaning yet is held in any case.</param>
public sealed record PushTerms(string? OwnSource, MissingPlace Missing = MissingPlace.Refuse);
