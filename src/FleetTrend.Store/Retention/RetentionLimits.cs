namespace FleetTrend.Store.Retention;

/// <summary>How long rows stay that nothing needs any more.</summary>
/// <param name="Headlines">Headline figures of trends, one moment a week.</param>
/// <param name="Mails">Mails that were sent or given up.</param>
/// <param name="Answered">Requests for reports that were answered, and held records that were accepted since.</param>
public sealed record RetentionLimits(TimeSpan Headlines, TimeSpan Mails, TimeSpan Answered);
