using Microsoft.Extensions.Logging;

namespace FleetTrend.Results.Refreshes;

/// <summary>All log messages of a refresh.</summary>
internal static partial class RefreshLog
{
    [LoggerMessage(5001, LogLevel.Information, "Refreshed trends as of {AsOf:O}: {Aircraft} aircraft, {Flags} flags ({Raised} new)")]
    internal static partial void TrendsRefreshed(ILogger log, DateTimeOffset asOf, int aircraft, int flags, int raised);

    [LoggerMessage(5002, LogLevel.Information, "Checked records as of {AsOf:O}: {Problems} data problems ({Opened} new)")]
    internal static partial void DataChecked(ILogger log, DateTimeOffset asOf, int problems, int opened);

    [LoggerMessage(5003, LogLevel.Information, "Computed type group {TypeGroup} as of {AsOf:O} in {Seconds:0.0} s")]
    internal static partial void TypeGroupComputed(ILogger log, string typeGroup, DateTimeOffset asOf, double seconds);
}
