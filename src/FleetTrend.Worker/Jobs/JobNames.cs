namespace FleetTrend.Worker.Jobs;

/// <summary>Names of the recurring jobs; they are rows in the job store, so they stay as they are.</summary>
public static class JobNames
{
    /// <summary>Computes trends when records came in and things have been quiet for a while.</summary>
    public const string RefreshWhenDue = "refresh-when-due";

    /// <summary>Computes trends every night.</summary>
    public const string RefreshNightly = "refresh-nightly";

    /// <summary>Makes the reports of the schedules that are due.</summary>
    public const string WeeklyReport = "weekly-report";

    /// <summary>Makes reports that somebody asked for.</summary>
    public const string RequestedReports = "requested-reports";

    /// <summary>Removes rows that nothing needs any more.</summary>
    public const string RemoveOldRows = "remove-old-rows";

    /// <summary>Sends the mails that are owed.</summary>
    public const string SendMail = "send-mail";

    /// <summary>Queue of the jobs that compute, so that no more of them run at once than there are processors.</summary>
    public const string TrendQueue = "trends";
}
