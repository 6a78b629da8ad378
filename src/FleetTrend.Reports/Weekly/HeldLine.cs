namespace FleetTrend.Reports.Weekly;

/// <summary>Records that came in and wait at the report's moment: they take part in no number yet.</summary>
public sealed record HeldLine
{
    /// <summary>Records that wait, by registration mark.</summary>
    public required IReadOnlyDictionary<string, int> ByRegistration { get; init; }

    /// <summary>Codes of sources that have no meaning yet and that some of the records wait for.</summary>
    public required int UnmappedCodes { get; init; }
}
