using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Practices;
using FleetTrend.Records.Readings;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Spares;

namespace FleetTrend.Store.Histories;

/// <summary>How the content of every kind of record is read and written.</summary>
internal static class ContentTables
{
    public static readonly ContentColumns<Airframe> Airframes = new(
        RecordKind.Airframe, "airframes", "content.watch_start_date, content.meter_offset_hours, content.retired_date",
        row => new Airframe
        {
            Registration = row.Registration,
            WatchStartDate = row.Day(0),
            Assignments = row.Assignments,
            MeterOffset = row.Time(1),
            RetiredDate = row.DayOrNull(2),
        },
        airframe => [airframe.WatchStartDate, Number(airframe.MeterOffset), airframe.RetiredDate],
        airframe => airframe.WatchStartDate);

    public static readonly ContentColumns<MeterReading> Readings = new(
        RecordKind.MeterReading, "meter_readings", "content.reading_date, content.meter_hours",
        row => new MeterReading(row.Registration, row.Day(0), row.Time(1)),
        reading => [reading.ReadingDate, Number(reading.MeterHours)],
        reading => reading.ReadingDate);

    public static readonly ContentColumns<MeterChange> MeterChanges = new(
        RecordKind.MeterChange, "meter_changes", "content.change_date, content.old_meter_hours, content.new_meter_hours",
        row => new MeterChange(row.Registration, row.Day(0), row.Time(1), row.Time(2)),
        change => [change.ChangeDate, Number(change.OldMeterHours), Number(change.NewMeterHours)],
        change => change.ChangeDate);

    public static readonly ContentColumns<Installation> Installations = new(
        RecordKind.Installation, "installations",
        "content.location, content.installation_date, content.time_in_service_hours, content.part_hours, content.serial_number, content.part_number",
        row => new Installation
        {
            Registration = row.Registration,
            Location = row.Text(0),
            InstallationDate = row.Day(1),
            TimeInService = row.Time(2),
            PartHours = row.TimeOrNull(3),
            SerialNumber = row.TextOrNull(4),
            PartNumber = row.TextOrNull(5),
        },
        item =>
        [
            item.Location, item.InstallationDate, Number(item.TimeInService), Number(item.PartHours), item.SerialNumber, item.PartNumber,
        ],
        installation => installation.InstallationDate);

    public static readonly ContentColumns<Removal> Removals = new(
        RecordKind.Removal, "removals",
        "content.location, content.removal_date, content.time_in_service_hours, content.reason, content.examined_good, content.serial_number",
        row => new Removal
        {
            Registration = row.Registration,
            Location = row.Text(0),
            RemovalDate = row.Day(1),
            TimeInService = row.Time(2),
            Reason = (RemovalReason)row.Code(3),
            ExaminedGood = row.Flag(4),
            SerialNumber = row.TextOrNull(5),
        },
        item =>
        [
            item.Location, item.RemovalDate, Number(item.TimeInService), (short)item.Reason, item.ExaminedGood, item.SerialNumber,
        ],
        removal => removal.RemovalDate);

    public static readonly ContentColumns<Inspection> Inspections = new(
        RecordKind.Inspection, "inspections", "content.inspection_date, content.time_in_service_hours, content.occasion",
        row => new Inspection
        {
            Registration = row.Registration,
            InspectionDate = row.Day(0),
            TimeInService = row.Time(1),
            Occasion = (Occasion)row.Code(2),
            Looks = row.Looks,
        },
        item => [item.InspectionDate, Number(item.TimeInService), (short)item.Occasion],
        inspection => inspection.InspectionDate);

    public static readonly ContentColumns<Finding> Findings = new(
        RecordKind.Finding, "findings",
        "content.location, content.found_date, content.time_in_service_hours, content.condition, content.grade, content.size_mm, "
        + "content.trace_colour, content.method, content.same_event_as, content.note",
        row => new Finding
        {
            Registration = row.Registration,
            Location = row.Text(0),
            FoundDate = row.Day(1),
            TimeInService = row.Time(2),
            Condition = (Condition)row.Code(3),
            Grade = (FindingGrade)row.Code(4),
            SizeMillimetres = row.NumberOrNull(5),
            TraceColour = (TraceColour)row.Code(6),
            Method = (LookMethod)row.Code(7),
            SameEventAs = row.TextOrNull(8),
            Note = row.TextOrNull(9),
        },
        item =>
        [
            item.Location, item.FoundDate, Number(item.TimeInService), (short)item.Condition, (short)item.Grade, item.SizeMillimetres,
            (short)item.TraceColour, (short)item.Method, item.SameEventAs, item.Note,
        ],
        finding => finding.FoundDate);

    public static readonly ContentColumns<CorrectiveAction> Actions = new(
        RecordKind.Action, "actions",
        "content.location, content.action_date, content.time_in_service_hours, content.kind, content.part_hours, content.note",
        row => new CorrectiveAction
        {
            Registration = row.Registration,
            Location = row.Text(0),
            ActionDate = row.Day(1),
            TimeInService = row.Time(2),
            Kind = (ActionKind)row.Code(3),
            PartHours = row.TimeOrNull(4),
            Note = row.TextOrNull(5),
        },
        item => [item.Location, item.ActionDate, Number(item.TimeInService), (short)item.Kind, Number(item.PartHours), item.Note],
        action => action.ActionDate);

    public static readonly ContentColumns<Retraction> Retractions = new(
        RecordKind.Retraction, "retractions", "content.reason",
        row => new Retraction(row.Text(0)), retraction => [retraction.Reason], _ => default);

    public static readonly ContentColumns<PracticeChange> PracticeChanges = new(
        RecordKind.PracticeChange, "practice_changes",
        "content.change_date, content.base, content.type_group, content.locations, content.part_number, content.what, content.why",
        row => new PracticeChange
        {
            ChangeDate = row.Day(0),
            Base = row.TextOrNull(1),
            TypeGroup = row.TextOrNull(2),
            Locations = row.Texts(3),
            PartNumber = row.TextOrNull(4),
            What = row.Text(5),
            Why = row.TextOrNull(6),
        },
        item => [item.ChangeDate, item.Base, item.TypeGroup, item.Locations.ToArray(), item.PartNumber, item.What, item.Why],
        change => change.ChangeDate);

    public static readonly ContentColumns<StockCount> StockCounts = new(
        RecordKind.StockCount, "stock_counts", "content.count_date, content.base, content.part_number, content.quantity, content.lead_time_days",
        row => new StockCount
        {
            CountDate = row.Day(0),
            Base = row.Text(1),
            PartNumber = row.Text(2),
            Quantity = row.Whole(3),
            LeadTimeDays = row.WholeOrNull(4),
        },
        item => [item.CountDate, item.Base, item.PartNumber, item.Quantity, item.LeadTimeDays],
        count => count.CountDate);

    /// <summary>That of a kind.</summary>
    public static ContentColumns Get(RecordKind kind) => kind switch
    {
        RecordKind.Airframe => Airframes,
        RecordKind.MeterReading => Readings,
        RecordKind.MeterChange => MeterChanges,
        RecordKind.Installation => Installations,
        RecordKind.Removal => Removals,
        RecordKind.Inspection => Inspections,
        RecordKind.Finding => Findings,
        RecordKind.Action => Actions,
        RecordKind.Retraction => Retractions,
        RecordKind.PracticeChange => PracticeChanges,
        RecordKind.StockCount => StockCounts,
    };

    private static decimal Number(Hours hours) => hours.Tenths / 10m;

    private static decimal? Number(Hours? hours) => hours is { } known ? Number(known) : null;
}
