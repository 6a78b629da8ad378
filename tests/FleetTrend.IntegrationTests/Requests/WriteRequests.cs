using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Access;
using FleetTrend.IntegrationTests.Intake;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Action = FleetTrend.Contracts.V1.Action;

namespace FleetTrend.IntegrationTests.Requests;

/// <summary>A good request of every call that writes, with every field told that goes with the others; all of them only check. What they name
/// is what <see cref="ShopCards.RegisterAsync"/> and <see cref="Aircraft"/> register; flags, checks, mails and keys are not there.</summary>
internal static class WriteRequests
{
    public const string Aircraft = "ZZ-A01";

    /// <summary>Every call with a request of it; <c>PushRecord</c> has one per kind of record.</summary>
    public static IEnumerable<(MethodDescriptor Call, IMessage Request)> All() =>
        Requests().Select(request => (Contract.Calls.Single(call => call.InputType == request.Descriptor), request));

    /// <summary>A record of every kind.</summary>
    public static IEnumerable<Record> Records() =>
    [
        new() { Key = ShopCards.Key("new aircraft"), Aircraft = AnAircraft() },
        new() { Key = ShopCards.Key("reading"), MeterReading = new() { Registration = Aircraft, ReadingDate = ShopCards.Day(20), MeterHours = 812.4 } },
        new()
        {
            Key = ShopCards.Key("meter"),
            MeterChange = new() { Registration = Aircraft, ChangeDate = ShopCards.Day(21), OldMeterHours = 812.4, NewMeterHours = 0 },
        },
        new() { Key = ShopCards.Key("in"), Installation = AnInstallation() },
        new() { Key = ShopCards.Key("out"), Removal = ARemoval() },
        new() { Key = ShopCards.Key("card"), Inspection = AnInspection() },
        new() { Key = ShopCards.Key("finding"), Finding = AFinding() },
        new() { Key = ShopCards.Key("action"), Action = AnAction() },
        new()
        {
            Key = ShopCards.Key("practice"),
            PracticeChange = new()
            {
                ChangeDate = ShopCards.Day(20), Base = "North", TypeGroup = ShopCards.TypeGroup,
                Locations = { new ChangedLocation { Location = ShopCards.Gasket } }, PartNumber = "gasket, three layers", What = "torque in two passes",
                Why = "gaskets leaked early",
            },
        },
        new()
        {
            Key = ShopCards.Key("stock"),
            StockCount = new() { CountDate = ShopCards.Day(20), Base = "North", PartNumber = "gasket, three layers", Quantity = 4, LeadTimeDays = 21 },
        },
        new() { Key = ShopCards.Key("finding", 2), Retraction = new() { Reason = "entered for the wrong aircraft" } },
    ];

    private static IEnumerable<IMessage> Requests() =>
    [
        .. Records().Select(record => new PushRecordRequest { Record = record, ValidateOnly = true }),
        .. Records().Select(record => new PushRecordsRequest { Records = { record, ShopCards.Aircraft("ZZ-Z99") }, ValidateOnly = true }),
        new StreamRecordsRequest { Sequence = 1, Record = Records().First(), ValidateOnly = true },
        new CreateLocationKindRequest
        {
            LocationKind = new()
            {
                Name = "ring", Title = "Ring", LookFor = "cracks", JascCode = "7810", Conditions = { "CONDITION_CRACK" },
                FailureConditions = { "CONDITION_CRACK" }, WatchedConditions = { "CONDITION_CRACK" },
                Checks = { new ConditionChecks { Condition = "CONDITION_CRACK", Lines = { "fit" } } }, BaseChecks = { "torque" },
            },
            ValidateOnly = true,
        },
        new CreateLayoutRequest
        {
            Layout = new() { Name = "wheels", Title = "Wheels", Locations = { new Location { Path = "exhaust/wheel", Kind = "part", LookFor = "cracks", JascCode = "7810" } } },
            ValidateOnly = true,
        },
        new CreateTypeGroupRequest { TypeGroup = new() { Name = "tourer", Title = "Tourer", Layout = "one-cylinder" }, ValidateOnly = true },
        new CreateSourceRequest { Source = new() { Name = "tablet", Title = "Tablet" }, ValidateOnly = true },
        new SetCodeRequest { Code = new() { Source = ShopCards.Source, Code = "EX1", Location = ShopCards.Weld }, ValidateOnly = true },
        new DeleteCodeRequest { Source = ShopCards.Source, Kind = CodeKind.Location, Code = "EX1", ValidateOnly = true },
        new CreateKeyRequest { Name = "tablet", Source = ShopCards.Source, Scopes = { Scope.TrendsRead }, ValidateOnly = true },
        new RevokeKeyRequest { KeyId = "aaaaaaaaaaaa", ValidateOnly = true },
        new AcknowledgeFlagRequest { FlagId = "7", AcknowledgedBy = "lead", Comment = "seen", ValidateOnly = true, Etag = "1" },
        new CloseFlagRequest { FlagId = "7", ClosedBy = "lead", Comment = "welded", ValidateOnly = true, Etag = "1" },
        new ActOnFlagRequest
        {
            FlagId = "7", ActedBy = "lead", ActionDate = ShopCards.Day(20), TimeInServiceHours = 812.4, Comment = "hanger moved", ValidateOnly = true, Etag = "1",
        },
        new ReopenFlagRequest { FlagId = "7", ReopenedBy = "lead", Comment = "cracked again", ValidateOnly = true, Etag = "1" },
        new AssignFlagRequest { FlagId = "7", Assignee = "shop", AssignedBy = "lead", ValidateOnly = true, Etag = "1" },
        new CloseDataCheckRequest { CheckId = "7", ClosedBy = "lead", Note = "looked at", ValidateOnly = true },
        new MergeFindingsRequest { Kept = Name(ShopCards.Source), Merged = Name("tablet"), DecidedBy = "lead", Note = "one", ValidateOnly = true },
        new UnmergeFindingsRequest { Merged = Name("tablet"), DecidedBy = "lead", Note = "two", ValidateOnly = true },
        new ChangeParametersRequest
        {
            Parameters = new()
            {
                Confidence = 0.9, FalseDiscoveryRate = 0.1, FlagsPer50AircraftYears = 2, WatchesPer50AircraftYears = 6, MinimumFailuresForFit = 5,
                LookIntervalHours = 50, SpareServiceLevel = 0.9, SpareFirstHorizonDays = 20, SpareSecondHorizonDays = 60, SpareThirdHorizonDays = 120,
                LookIntervals = { new LookInterval { TypeGroup = ShopCards.TypeGroup, Kind = "gasket", Hours = 25.5 } },
                FailureCostRatio = 7.5, UndetectedFailureChance = 0.02,
                MakerLimits = { new MakerLimit { TypeGroup = ShopCards.TypeGroup, Kind = "gasket", RenewalHours = 900, LookHours = 50 } },
            },
            Revision = 0, Note = "gaskets more often", ValidateOnly = true,
        },
        new RequestReportRequest { RequestId = "r1", ValidateOnly = true },
        new SetRecipientsRequest { Base = "*", Addresses = { "shop@example.org" }, ValidateOnly = true },
        new SetReportScheduleRequest
        {
            Schedule = new()
            {
                Name = "Mondays", Base = "*", Weekday = Weekday.Monday, Time = "06:00", TimeZone = "UTC", Paused = true,
                Recipients = { "shop@example.org" },
            },
            ValidateOnly = true,
        },
        new DeleteReportScheduleRequest { Name = "Mondays", ValidateOnly = true },
        new SendReportNowRequest { Name = "Mondays", ValidateOnly = true },
        new RetryMailRequest { MailId = "7", ValidateOnly = true },
        new RequestRefreshRequest { ValidateOnly = true },
    ];

    private static FindingName Name(string source) => new() { Source = source, SourceRecordId = "card 1" };

    private static Aircraft AnAircraft()
    {
        var aircraft = ShopCards.Aircraft("ZZ-A02").Aircraft;
        aircraft.MeterOffsetHours = 12.5;
        aircraft.RetiredDate = ShopCards.Day(300);
        return aircraft;
    }

    private static Installation AnInstallation() => new()
    {
        Registration = Aircraft,
        Location = ShopCards.Gasket,
        InstallationDate = ShopCards.Day(20),
        TimeInServiceHours = 812.4,
        PartHours = 0,
        SerialNumber = "S-1",
        PartNumber = "gasket, three layers",
    };

    private static Removal ARemoval() => new()
    {
        Registration = Aircraft,
        Location = ShopCards.Gasket,
        RemovalDate = ShopCards.Day(20),
        TimeInServiceHours = 812.4,
        Reason = RemovalReason.TimeLimit,
        ExaminedGood = true,
        SerialNumber = "S-1",
    };

    private static Inspection AnInspection() => new()
    {
        Registration = Aircraft,
        InspectionDate = ShopCards.Day(20),
        TimeInServiceHours = 812.4,
        Occasion = Occasion.HundredHour,
        Looks = { new LocationLook { Location = ShopCards.Weld, State = LookState.Examined, Method = LookMethod.Visual } },
    };

    private static Finding AFinding() => new()
    {
        Registration = Aircraft,
        Location = ShopCards.Gasket,
        FoundDate = ShopCards.Day(20),
        TimeInServiceHours = 812.4,
        Condition = Condition.LeakTrace,
        Grade = FindingGrade.Defect,
        SizeMm = 4.5,
        TraceColour = TraceColour.Grey,
        Method = LookMethod.Visual,
        SameEventAs = "card 9",
        Note = "beside the flange",
    };

    private static Action AnAction() => new()
    {
        Registration = Aircraft,
        Location = ShopCards.Gasket,
        ActionDate = ShopCards.Day(20),
        TimeInServiceHours = 812.4,
        Kind = ActionKind.Replaced,
        PartHours = 40,
        Note = "with its sisters",
    };
}
