namespace FleetTrend.Store.People;

/// <summary>Who a session is of, as he stands now.</summary>
/// <param name="Id">His number.</param>
/// <param name="Name">His name.</param>
/// <param name="Role">What he may do.</param>
public sealed record SignedInPerson(long Id, string Name, PersonRole Role);
