namespace FleetTrend.Records.Schedules;

/// <summary>A moment at which a weekly report is due.</summary>
/// <param name="Date">The day by the clock of the place; the report covers the seven days before it.</param>
/// <param name="Time">The moment.</param>
public sealed record DueMoment(DateOnly Date, DateTimeOffset Time);
