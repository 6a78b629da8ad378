namespace FleetTrend.Store.Recipients;

/// <summary>Who gets the report of a base.</summary>
/// <param name="Base">The base; <c>*</c> for the whole fleet.</param>
/// <param name="Addresses">Mail addresses, in ordinal order.</param>
public sealed record BaseRecipients(string Base, IReadOnlyList<string> Addresses);
