using Grpc.Core;

namespace FleetTrend.Client;

/// <summary>A break that a push survives: after the pause it sends again what has no outcome.</summary>
/// <param name="Cause">What the call said.</param>
/// <param name="Attempt">Breaks in a row without an outcome between them, from 1.</param>
/// <param name="Pause">Time to the next attempt.</param>
/// <param name="Unacknowledged">Records that will be sent again.</param>
public sealed record Interruption(Status Cause, int Attempt, TimeSpan Pause, int Unacknowledged);
