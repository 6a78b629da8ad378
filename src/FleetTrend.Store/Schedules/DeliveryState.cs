using FleetTrend.Store.Outbox;

namespace FleetTrend.Store.Schedules;

/// <summary>What became of a report on its way to one recipient of a schedule.</summary>
/// <param name="Address">Mail address.</param>
/// <param name="Mail">The mail of the schedule's last report; null where none was owed, or its mail is not kept any more.</param>
/// <param name="WasOwed">Whether that report is or was owed to the address.</param>
public sealed record DeliveryState(string Address, StoredMail? Mail, bool WasOwed);
