using FleetTrend.Records;
using FleetTrend.Records.Actions;

namespace FleetTrend.Observations.Recurrences;

/// <summary>An action taken while an event was open.</summary>
/// <param name="Kind">What was done; a removal or installation counts as replaced.</param>
/// <param name="Date">The day it was done.</param>
/// <param name="At">Time in service then.</param>
public sealed record EventAction(ActionKind Kind, DateOnly Date, Hours At);
