namespace FleetTrend.Store.Histories;

/// <summary>SQL for "the newest revision known at a moment"; one place, so that every reader means the same.</summary>
internal static class NewestRevision
{
    /// <summary>
    /// A condition on <c>records record</c> with a parameter <c>@as_of</c>. A retraction is a revision like any other, so a record
    /// that was taken back has no row of its kind left. "revision &gt; 1" is implied and lets the partial index serve.
    /// </summary>
    public const string Condition =
        """
        record.accept_time <= @as_of and not exists (
            select from records later
            where later.source_id = record.source_id and later.source_record_id = record.source_record_id
              and later.revision > record.revision and later.revision > 1 and later.accept_time <= @as_of)
        """;
}
