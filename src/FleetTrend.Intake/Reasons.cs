using System.Reflection;
using Google.Rpc;

namespace FleetTrend.Intake;

/// <summary>Every reason that an answer can carry. protos/README.md has the same list.</summary>
public static class Reasons
{
    /// <summary>Domain of google.rpc.ErrorInfo.</summary>
    public const string Domain = "fleettrend";

    /// <summary>A field that must be given is absent or empty.</summary>
    public static readonly Reason FieldRequired = new("FIELD_REQUIRED", Code.InvalidArgument, "Give the field.");

    /// <summary>The call has no such field or parameter.</summary>
    public static readonly Reason FieldUnknown = new("FIELD_UNKNOWN", Code.InvalidArgument, "Correct the name, or move it to where the rule says; over JSON only.");

    /// <summary>A field or parameter is given more than once.</summary>
    public static readonly Reason FieldTwice = new("FIELD_TWICE", Code.InvalidArgument, "Give it once, by one of its two names; over JSON only.");

    /// <summary>A value has not the type of its field.</summary>
    public static readonly Reason TypeMismatch = new("TYPE_MISMATCH", Code.InvalidArgument, "Write it in the form that the rule shows; over JSON only.");

    /// <summary>This field doesn't apply here.</summary>
    public static readonly Reason FieldNotAllowed = new("FIELD_NOT_ALLOWED", Code.InvalidArgument, "Leave the field out, or correct the field it depends on.");

    /// <summary>A text has too many characters.</summary>
    public static readonly Reason TextTooLong = new("TEXT_TOO_LONG", Code.InvalidArgument, "Shorten it to the length that the rule names.");

    /// <summary>A text holds characters that do not show or that turn the direction of others, or begins or ends with a space.</summary>
    public static readonly Reason TextNotPrintable = new("TEXT_NOT_PRINTABLE", Code.InvalidArgument, "Send printable characters without a space at either end.");

    /// <summary>A name, mark or path is not built as it must be.</summary>
    public static readonly Reason PatternMismatch = new("PATTERN_MISMATCH", Code.InvalidArgument, "Build it as the rule says.");

    /// <summary>An enum value is not told, or not known here.</summary>
    public static readonly Reason EnumUnknown = new("ENUM_UNKNOWN", Code.InvalidArgument, "Send one of the values that the contract lists.");

    /// <summary>A number is NaN or infinite.</summary>
    public static readonly Reason NumberNotFinite = new("NUMBER_NOT_FINITE", Code.InvalidArgument, "Send a finite number, or leave an optional field out.");

    /// <summary>A number is below or above its range.</summary>
    public static readonly Reason NumberOutOfRange = new("NUMBER_OUT_OF_RANGE", Code.InvalidArgument, "Send a number within the range that the rule names; check the unit.");

    /// <summary>A number has too many decimals.</summary>
    public static readonly Reason TooManyDecimals = new("TOO_MANY_DECIMALS", Code.InvalidArgument, "Round to the decimals that the rule names.");

    /// <summary>A date is not a day of the calendar.</summary>
    public static readonly Reason DateInvalid = new("DATE_INVALID", Code.InvalidArgument, "Send year, month and day of a day that exists.");

    /// <summary>A date is before 1950 or more than 366 days ahead.</summary>
    public static readonly Reason DateOutOfRange = new("DATE_OUT_OF_RANGE", Code.InvalidArgument, "Check the year.");

    /// <summary>Dates are not in the order they must have.</summary>
    public static readonly Reason DatesOutOfOrder = new("DATES_OUT_OF_ORDER", Code.InvalidArgument, "Sort or correct the dates.");

    /// <summary>A list names the same thing twice.</summary>
    public static readonly Reason DuplicateLine = new("DUPLICATE_LINE", Code.InvalidArgument, "Keep one of the lines.");

    /// <summary>A list is too long.</summary>
    public static readonly Reason TooManyItems = new("TOO_MANY_ITEMS", Code.InvalidArgument, "Split it, or send less.");

    /// <summary>A record refers to itself.</summary>
    public static readonly Reason SelfReference = new("SELF_REFERENCE", Code.InvalidArgument, "Name the other finding, or leave the field empty.");

    /// <summary>The condition makes no sense at that kind of location.</summary>
    public static readonly Reason ConditionNotAtKind = new("CONDITION_NOT_AT_KIND", Code.InvalidArgument, "ListLocationKinds says which conditions a kind takes.");

    /// <summary>The page token is not one that this call gave for this question.</summary>
    public static readonly Reason PageTokenInvalid = new("PAGE_TOKEN_INVALID", Code.InvalidArgument, "Start again without a token.");

    /// <summary>A message is larger than a call takes.</summary>
    public static readonly Reason MessageTooLarge = new("MESSAGE_TOO_LARGE", Code.ResourceExhausted, "Send fewer records per call. Repeating the same call does not help.");

    /// <summary>A JSON body is compressed.</summary>
    public static readonly Reason ContentEncodingNotTaken = new("CONTENT_ENCODING_NOT_TAKEN", Code.InvalidArgument, "Send the body as it is; over gRPC a message may be compressed with gzip or deflate.");

    /// <summary>A record is larger than any honest one.</summary>
    public static readonly Reason RecordTooLarge = new("RECORD_TOO_LARGE", Code.InvalidArgument, "Shorten its texts or lists; fields that the contract does not have count too.");

    /// <summary>The bytes are no message of the call.</summary>
    public static readonly Reason MessageMalformed = new("MESSAGE_MALFORMED", Code.InvalidArgument, "Encode the message with code made from these protos; over JSON, send JSON in UTF-8.");

    /// <summary>The source is not registered.</summary>
    public static readonly Reason SourceNotRegistered = new("SOURCE_NOT_REGISTERED", Code.FailedPrecondition, "Register the source with CreateSource, then send the record again.");

    /// <summary>The aircraft is not registered.</summary>
    public static readonly Reason AircraftNotRegistered = new("AIRCRAFT_NOT_REGISTERED", Code.FailedPrecondition, "Check the registration mark, or push the aircraft first; then send the record again.");

    /// <summary>A base differs only in case from one that other aircraft have.</summary>
    public static readonly Reason BaseSpelledOtherwise = new("BASE_SPELLED_OTHERWISE", Code.FailedPrecondition, "Write the base as its other aircraft have it. To respell it, push all of its aircraft in one call.");

    /// <summary>No registered aircraft has the base.</summary>
    public static readonly Reason BaseNotKnown = new("BASE_NOT_KNOWN", Code.FailedPrecondition, "Check the base, or push an aircraft of it first; then send the record again.");

    /// <summary>The type group is not registered.</summary>
    public static readonly Reason TypeGroupNotRegistered = new("TYPE_GROUP_NOT_REGISTERED", Code.FailedPrecondition, "Register it with CreateTypeGroup, then send the record again.");

    /// <summary>The layouts of the aircraft's type groups do not have the location.</summary>
    public static readonly Reason LocationNotInLayout = new("LOCATION_NOT_IN_LAYOUT", Code.FailedPrecondition, "GetLayout has the paths; map your own codes to them, or correct the aircraft's assignments.");

    /// <summary>A code of the source has no meaning yet; the record is held.</summary>
    public static readonly Reason CodeNotMapped = new("CODE_NOT_MAPPED", Code.FailedPrecondition, "Give the code its meaning with SetCode; the record is then accepted on its own.");

    /// <summary>The layout is not registered.</summary>
    public static readonly Reason LayoutNotRegistered = new("LAYOUT_NOT_REGISTERED", Code.FailedPrecondition, "Create the layout first.");

    /// <summary>A location path has another kind in an earlier layout.</summary>
    public static readonly Reason PathHasOtherKind = new("PATH_HAS_OTHER_KIND", Code.FailedPrecondition, "Take the kind that the path has, or another path.");

    /// <summary>There is no location kind of that name.</summary>
    public static readonly Reason LocationKindUnknown = new("LOCATION_KIND_UNKNOWN", Code.InvalidArgument, "ListLocationKinds has the names.");

    /// <summary>No trends have been computed yet.</summary>
    public static readonly Reason NoTrendsYet = new("NO_TRENDS_YET", Code.FailedPrecondition, "Wait for the first refresh, which follows the first records by itself, or ask for one with RequestRefresh.");

    /// <summary>The flag cannot go from its state to the one asked for.</summary>
    public static readonly Reason FlagIsClosed = new("FLAG_IS_CLOSED", Code.FailedPrecondition, "Reopen a closed flag, or wait: a new one is raised if the numbers ask for it.");

    /// <summary>The step does not lead on from where the flag stands.</summary>
    public static readonly Reason FlagStepNotNow = new("FLAG_STEP_NOT_NOW", Code.FailedPrecondition, "ListFlags says where the flag stands; answer that.");

    /// <summary>A newer flag is about the same.</summary>
    public static readonly Reason FlagRaisedAgain = new("FLAG_RAISED_AGAIN", Code.FailedPrecondition, "Answer the newer flag; this one stays as it is.");

    /// <summary>Another step of the flag came before the answer.</summary>
    public static readonly Reason FlagChanged = new("FLAG_CHANGED", Code.Aborted, "Read the flag again, and send your answer with its etag if it still fits.");

    /// <summary>The data check was answered before, or has ended.</summary>
    public static readonly Reason CheckNotOpen = new("CHECK_NOT_OPEN", Code.FailedPrecondition, "A check that was closed or has ended stays as it is; ListDataChecks says how it stands.");

    /// <summary>The two findings cannot be one event.</summary>
    public static readonly Reason FindingsNotAlike = new("FINDINGS_NOT_ALIKE", Code.FailedPrecondition, "Only findings of one aircraft, location and condition are one event; correct the record that is wrong.");

    /// <summary>The finding is merged into another one.</summary>
    public static readonly Reason FindingIsMerged = new("FINDING_IS_MERGED", Code.FailedPrecondition, "Merge into the finding that stands, or take the earlier merge back with UnmergeFindings.");

    /// <summary>The finding was not merged into another.</summary>
    public static readonly Reason FindingNotMerged = new("FINDING_NOT_MERGED", Code.FailedPrecondition, "ListFindingMerges has the merges that hold.");

    /// <summary>There is no such record, or none was known at that moment.</summary>
    public static readonly Reason RecordNotFound = new("RECORD_NOT_FOUND", Code.NotFound, "Check source, source_record_id and as_of_time.");

    /// <summary>No aircraft has that registration mark.</summary>
    public static readonly Reason AircraftNotFound = new("AIRCRAFT_NOT_FOUND", Code.NotFound, "Check the registration mark; ListRecords with kind RECORD_KIND_AIRCRAFT has the aircraft.");

    /// <summary>There is no type group of that name.</summary>
    public static readonly Reason TypeGroupNotFound = new("TYPE_GROUP_NOT_FOUND", Code.NotFound, "ListTypeGroups has the names.");

    /// <summary>No layout, or not that of the type group, has that location.</summary>
    public static readonly Reason LocationNotFound = new("LOCATION_NOT_FOUND", Code.NotFound, "GetLayout has the paths.");

    /// <summary>There is no location kind of that name.</summary>
    public static readonly Reason LocationKindNotFound = new("LOCATION_KIND_NOT_FOUND", Code.NotFound, "ListLocationKinds has the names.");

    /// <summary>No aircraft has or had that base.</summary>
    public static readonly Reason BaseNotFound = new("BASE_NOT_FOUND", Code.NotFound, "Check the name of the base; it is written as in the assignments of the aircraft.");

    /// <summary>There is no source of that name.</summary>
    public static readonly Reason SourceNotFound = new("SOURCE_NOT_FOUND", Code.NotFound, "ListSources has the names.");

    /// <summary>There is no layout of that name.</summary>
    public static readonly Reason LayoutNotFound = new("LAYOUT_NOT_FOUND", Code.NotFound, "ListLayouts has the names.");

    /// <summary>The code has no meaning.</summary>
    public static readonly Reason CodeNotFound = new("CODE_NOT_FOUND", Code.NotFound, "ListCodes has the codes of a source that have a meaning.");

    /// <summary>There is no such flag.</summary>
    public static readonly Reason FlagNotFound = new("FLAG_NOT_FOUND", Code.NotFound, "ListFlags has the identifiers.");

    /// <summary>There is no such data check.</summary>
    public static readonly Reason CheckNotFound = new("CHECK_NOT_FOUND", Code.NotFound, "ListDataChecks has the identifiers.");

    /// <summary>There is no such finding, or it was taken back.</summary>
    public static readonly Reason FindingNotFound = new("FINDING_NOT_FOUND", Code.NotFound, "Check source and source_record_id.");

    /// <summary>There is no such mail.</summary>
    public static readonly Reason MailNotFound = new("MAIL_NOT_FOUND", Code.NotFound, "ListMails has the identifiers.");

    /// <summary>There is no such report.</summary>
    public static readonly Reason ReportNotFound = new("REPORT_NOT_FOUND", Code.NotFound, "ListReports has the identifiers.");

    /// <summary>There is no such schedule of reports.</summary>
    public static readonly Reason ReportScheduleNotFound = new("REPORT_SCHEDULE_NOT_FOUND", Code.NotFound, "ListReportSchedules has the names.");

    /// <summary>No report was asked for under that identifier.</summary>
    public static readonly Reason ReportRequestNotFound = new("REPORT_REQUEST_NOT_FOUND", Code.NotFound, "ListReportRequests has the identifiers; answered requests are kept for a time that the operator sets.");

    /// <summary>The key was used before with other content.</summary>
    public static readonly Reason RevisionReused = new("REVISION_REUSED", Code.AlreadyExists, "To correct a record, send it with a higher revision.");

    /// <summary>The parameters are not those that the caller has read.</summary>
    public static readonly Reason ParametersChanged = new("PARAMETERS_CHANGED", Code.Aborted, "Read them with GetParameters, and send your change with their revision if it still fits.");

    /// <summary>The name is in use for something else.</summary>
    public static readonly Reason NameInUse = new("NAME_IN_USE", Code.AlreadyExists, "Take another name; what is stored under a name does not change.");

    /// <summary>The call came without a key.</summary>
    public static readonly Reason KeyRequired = new("KEY_REQUIRED", Code.Unauthenticated, "Send the header authorization: Bearer KEY with the call.");

    /// <summary>There is no such key.</summary>
    public static readonly Reason KeyUnknown = new("KEY_UNKNOWN", Code.Unauthenticated, "Check that the whole key was copied, and that it belongs to this server.");

    /// <summary>The key was revoked.</summary>
    public static readonly Reason KeyRevoked = new("KEY_REVOKED", Code.Unauthenticated, "Ask whoever runs the server for a new key.");

    /// <summary>The key does not allow the call.</summary>
    public static readonly Reason ScopeRequired = new("SCOPE_REQUIRED", Code.PermissionDenied, "Use a key with one of the scopes in the metadata; GetOwnKey says which yours has.");

    /// <summary>The source is not the key's own.</summary>
    public static readonly Reason SourceNotYours = new("SOURCE_NOT_YOURS", Code.PermissionDenied, "Name the source that the key belongs to; GetOwnKey says which that is.");

    /// <summary>Name and password do not fit, or the account is locked or disabled; on pages only.</summary>
    public static readonly Reason SignInRefused = new("SIGN_IN_REFUSED", Code.Unauthenticated, "Check both; an administrator can give you a link for a new password.");

    /// <summary>A one-time link is used up, too old, or not whole; on pages only.</summary>
    public static readonly Reason LinkNotGood = new("LINK_NOT_GOOD", Code.NotFound, "Ask an administrator for a new one.");

    /// <summary>The key has made too many calls within a second.</summary>
    public static readonly Reason CallsPerSecond = new("CALLS_PER_SECOND", Code.ResourceExhausted, "Send the same again after the RetryInfo; for bulk use PushRecords or StreamRecords.");

    /// <summary>The key has too many calls or streams open at once.</summary>
    public static readonly Reason CallsAtOnce = new("CALLS_AT_ONCE", Code.ResourceExhausted, "Wait for calls that are under way to end, then send the same again.");

    /// <summary>Too many refused calls came from this address.</summary>
    public static readonly Reason RefusedCalls = new("REFUSED_CALLS", Code.ResourceExhausted, "Fix the key, then try again; a call with a good key is not held up by this.");

    /// <summary>The server was called by a name that is not its own.</summary>
    public static readonly Reason HostNotAllowed = new("HOST_NOT_ALLOWED", Code.PermissionDenied, "Call the server by the name or address that whoever runs it gave you.");

    /// <summary>There is no key of that identifier.</summary>
    public static readonly Reason KeyNotFound = new("KEY_NOT_FOUND", Code.NotFound, "ListKeys has the identifiers.");

    /// <summary>The database does not answer.</summary>
    public static readonly Reason DatabaseUnavailable = new("DATABASE_UNAVAILABLE", Code.Unavailable, "Send the same again later, with growing pauses: nothing is doubled.");

    /// <summary>A fault on our side.</summary>
    public static readonly Reason InternalFault = new("INTERNAL_FAULT", Code.Internal, "Report the trace_id to whoever runs the server.");

    /// <summary>All of them, in the order above.</summary>
    public static IReadOnlyList<Reason> All { get; } =
        [.. typeof(Reasons).GetFields(BindingFlags.Public | BindingFlags.Static).Select(f => f.GetValue(null)).OfType<Reason>()];
}
