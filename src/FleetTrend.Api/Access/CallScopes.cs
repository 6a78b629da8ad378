using FleetTrend.Store.Keys;
using static FleetTrend.Store.Keys.KeyScope;

namespace FleetTrend.Api.Access;

/// <summary>Which scopes open which call: any one of them does. A call that is not here is open to nobody.</summary>
internal static class CallScopes
{
    private const string Package = "/fleettrend.v1.";

    private static readonly KeyScope[] Any = [RecordsWrite, TrendsRead, Administer, KeyScope.Answer];

    private static readonly KeyScope[] Answering = [KeyScope.Answer, Administer];

    private static readonly KeyScope[] OfSources = [RecordsWrite, KeyScope.Answer, Administer];

    private static readonly HashSet<string> Open = new(StringComparer.Ordinal)
    {
        "grpc.health.v1.Health", "grpc.reflection.v1.ServerReflection", "grpc.reflection.v1alpha.ServerReflection",
    };

    /// <summary>Scopes by call, written <c>Service/Call</c>.</summary>
    public static IReadOnlyDictionary<string, KeyScope[]> ByCall { get; } = new Dictionary<string, KeyScope[]>(StringComparer.Ordinal)
    {
        ["AccessService/CreateKey"] = [Administer],
        ["AccessService/ListKeys"] = [Administer],
        ["AccessService/RevokeKey"] = [Administer],
        ["AccessService/GetOwnKey"] = Any,
        ["IntakeService/PushRecord"] = [RecordsWrite],
        ["IntakeService/PushRecords"] = [RecordsWrite],
        ["IntakeService/StreamRecords"] = [RecordsWrite],
        ["IntakeService/ListHeldRecords"] = OfSources,
        ["RecordService/GetRecord"] = Any,
        ["RecordService/ListRecordRevisions"] = Any,
        ["RecordService/ListRecords"] = Any,
        ["CodeService/SetCode"] = OfSources,
        ["CodeService/DeleteCode"] = OfSources,
        ["CodeService/ListCodes"] = OfSources,
        ["CodeService/ListUnmappedCodes"] = OfSources,
        ["LayoutService/CreateLayout"] = [Administer],
        ["LayoutService/GetLayout"] = Any,
        ["LayoutService/ListLayouts"] = Any,
        ["LayoutService/CreateLocationKind"] = [Administer],
        ["LayoutService/ListLocationKinds"] = Any,
        ["LayoutService/CreateTypeGroup"] = [Administer],
        ["LayoutService/ListTypeGroups"] = Any,
        ["SourceService/CreateSource"] = [Administer],
        ["SourceService/ListSources"] = [Administer],
        ["TrendService/RequestRefresh"] = [RecordsWrite, Administer],
        ["TrendService/ListRates"] = [TrendsRead],
        ["TrendService/ListPartLives"] = [TrendsRead],
        ["TrendService/ListRecurrences"] = [TrendsRead],
        ["TrendService/ListLevels"] = [TrendsRead],
        ["TrendService/ListOpenFindings"] = [TrendsRead],
        ["TrendService/ListDueLooks"] = [TrendsRead],
        ["TrendService/GetLookList"] = [TrendsRead],
        ["TrendService/GetAuthorityDraft"] = [TrendsRead],
        ["TrendService/ListFailureChances"] = [TrendsRead],
        ["TrendService/ListChanceCalibrations"] = [TrendsRead],
        ["TrendService/ListPartNumbers"] = [TrendsRead],
        ["TrendService/ListRepairs"] = [TrendsRead],
        ["TrendService/ListSpares"] = [TrendsRead],
        ["TrendService/ListLeakErosions"] = [TrendsRead],
        ["TrendService/ListPositions"] = [TrendsRead],
        ["TrendService/ListShrouds"] = [TrendsRead],
        ["TrendService/ListRenewalAges"] = [TrendsRead],
        ["TrendService/ListGrowth"] = [TrendsRead],
        ["TrendService/ListEffects"] = [TrendsRead],
        ["TrendService/ListScores"] = [TrendsRead],
        ["TrendService/ListQuiet"] = [TrendsRead],
        ["TrendService/ListSilences"] = [TrendsRead],
        ["TrendService/ListEvidence"] = [TrendsRead],
        ["ParameterService/GetParameters"] = [TrendsRead, Administer],
        ["ParameterService/ChangeParameters"] = Answering,
        ["ParameterService/ListParameterRevisions"] = [TrendsRead, Administer],
        ["FlagService/ListFlags"] = [TrendsRead],
        ["FlagService/AcknowledgeFlag"] = Answering,
        ["FlagService/CloseFlag"] = Answering,
        ["FlagService/ActOnFlag"] = Answering,
        ["FlagService/ReopenFlag"] = Answering,
        ["FlagService/AssignFlag"] = Answering,
        ["FlagService/ListFlagSteps"] = [TrendsRead],
        ["CheckService/ListDataChecks"] = [TrendsRead],
        ["CheckService/CloseDataCheck"] = Answering,
        ["CheckService/MergeFindings"] = Answering,
        ["CheckService/UnmergeFindings"] = Answering,
        ["CheckService/ListFindingMerges"] = [TrendsRead],
        ["ReportService/ListReports"] = [TrendsRead],
        ["ReportService/GetReport"] = [TrendsRead],
        ["ReportService/ReproduceReport"] = [TrendsRead],
        ["ReportService/RequestReport"] = [Administer],
        ["ReportService/ListReportRequests"] = [Administer],
        ["ReportService/SetRecipients"] = [Administer],
        ["ReportService/ListRecipients"] = [Administer],
        ["ReportService/ListMails"] = [Administer],
        ["ReportService/RetryMail"] = [Administer],
        ["ReportScheduleService/ListReportSchedules"] = Answering,
        ["ReportScheduleService/SetReportSchedule"] = Answering,
        ["ReportScheduleService/DeleteReportSchedule"] = Answering,
        ["ReportScheduleService/SendReportNow"] = Answering,
        ["ReportScheduleService/GetReportPreview"] = Answering,
    };

    /// <summary>Scopes that open a call; empty where nobody may make it.</summary>
    /// <param name="method">As gRPC writes it: <c>/package.Service/Call</c>.</param>
    public static IReadOnlyList<KeyScope> Find(string method) =>
        method.StartsWith(Package, StringComparison.Ordinal) ? ByCall.GetValueOrDefault(method[Package.Length..], []) : [];

    /// <summary>True for health and reflection, which need no key.</summary>
    public static bool IsOpen(string method) => method.Split('/') is ["", var service, _] && Open.Contains(service);

    /// <summary>A scope as the contract writes it.</summary>
    public static string NameOf(KeyScope scope) => scope switch
    {
        RecordsWrite => "SCOPE_RECORDS_WRITE",
        TrendsRead => "SCOPE_TRENDS_READ",
        Administer => "SCOPE_ADMINISTER",
        KeyScope.Answer => "SCOPE_ANSWER",
        _ => throw new ArgumentOutOfRangeException(nameof(scope), scope, "Not a scope."),
    };
}
