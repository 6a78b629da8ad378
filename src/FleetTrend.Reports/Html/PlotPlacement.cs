namespace FleetTrend.Reports.Html;

/// <summary>Where a rendered report has its plots.</summary>
public enum PlotPlacement
{
    /// <summary>Beside it, in a mail: <c>cid:NAME</c>.</summary>
    ContentId = 1,

    /// <summary>Inside it, as vector drawings.</summary>
    Inline = 2,
}
