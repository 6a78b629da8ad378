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
using FleetTrend.Store.Histories;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Records;

/// <summary>Stored records as the contract writes them: pushed as they stand here, they say what they said.</summary>
internal static class RecordMessages
{
    private static readonly RecordMaker Maker = new();

    public static Wire.StoredRecord ToWire(this StoredRecord stored)
    {
        var record = stored.Content.Accept(Maker);
        record.Key = new Wire.RecordKey
        {
            Source = stored.Key.Source,
            SourceRecordId = stored.Key.SourceRecordId,
            Revision = stored.Key.Revision,
        };
        return new Wire.StoredRecord { Record = record, AcceptTime = stored.AcceptTime.ToWire() };
    }

    private static Wire.MeterReading ToWire(MeterReading reading) => new()
    {
        Registration = reading.Registration,
        ReadingDate = reading.ReadingDate.ToWire(),
        MeterHours = reading.MeterHours.Value,
    };

    private static Wire.Aircraft ToWire(Airframe airframe) => new()
    {
        Registration = airframe.Registration,
        WatchStartDate = airframe.WatchStartDate.ToWire(),
        Assignments =
        {
            airframe.Assignments.Select(a => new Wire.Assignment { FromDate = a.FromDate.ToWire(), Base = a.Base, TypeGroup = a.TypeGroup }),
        },
        MeterOffsetHours = airframe.MeterOffset.Value,
        RetiredDate = airframe.RetiredDate.ToWire(),
    };

    private static Wire.MeterChange ToWire(MeterChange change) => new()
    {
        Registration = change.Registration,
        ChangeDate = change.ChangeDate.ToWire(),
        OldMeterHours = change.OldMeterHours.Value,
        NewMeterHours = change.NewMeterHours.Value,
    };

    private static Wire.Installation ToWire(Installation installation)
    {
        var wire = new Wire.Installation
        {
            Registration = installation.Registration,
            Location = installation.Location,
            InstallationDate = installation.InstallationDate.ToWire(),
            TimeInServiceHours = installation.TimeInService.Value,
            SerialNumber = installation.SerialNumber ?? "",
            PartNumber = installation.PartNumber ?? "",
        };
        if (installation.PartHours is { } hours)
            wire.PartHours = hours.Value;
        return wire;
    }

    private static Wire.Removal ToWire(Removal removal) => new()
    {
        Registration = removal.Registration,
        Location = removal.Location,
        RemovalDate = removal.RemovalDate.ToWire(),
        TimeInServiceHours = removal.TimeInService.Value,
        Reason = (Wire.RemovalReason)removal.Reason,
        ExaminedGood = removal.ExaminedGood,
        SerialNumber = removal.SerialNumber ?? "",
    };

    private static Wire.Inspection ToWire(Inspection inspection) => new()
    {
        Registration = inspection.Registration,
        InspectionDate = inspection.InspectionDate.ToWire(),
        TimeInServiceHours = inspection.TimeInService.Value,
        Occasion = (Wire.Occasion)inspection.Occasion,
        Looks =
        {
            inspection.Looks.Select(look => new Wire.LocationLook
            {
                Location = look.Location, State = (Wire.LookState)look.State, Method = (Wire.LookMethod)look.Method,
            }),
        },
    };

    private static Wire.PracticeChange ToWire(PracticeChange change) => new()
    {
        ChangeDate = change.ChangeDate.ToWire(),
        Base = change.Base ?? "",
        TypeGroup = change.TypeGroup ?? "",
        Locations = { change.Locations.Select(location => new Wire.ChangedLocation { Location = location }) },
        PartNumber = change.PartNumber ?? "",
        What = change.What,
        Why = change.Why ?? "",
    };

    private static Wire.StockCount ToWire(StockCount count)
    {
        var wire = new Wire.StockCount { CountDate = count.CountDate.ToWire(), Base = count.Base, PartNumber = count.PartNumber, Quantity = count.Quantity };
        if (count.LeadTimeDays is { } days)
            wire.LeadTimeDays = days;
        return wire;
    }

    private static Wire.Finding ToWire(Finding finding)
    {
        var wire = new Wire.Finding
        {
            Registration = finding.Registration,
            Location = finding.Location,
            FoundDate = finding.FoundDate.ToWire(),
            TimeInServiceHours = finding.TimeInService.Value,
            Condition = (Wire.Condition)finding.Condition,
            Grade = (Wire.FindingGrade)finding.Grade,
            TraceColour = (Wire.TraceColour)finding.TraceColour,
            Method = (Wire.LookMethod)finding.Method,
            SameEventAs = finding.SameEventAs ?? "",
            Note = finding.Note ?? "",
        };
        if (finding.SizeMillimetres is { } size)
            wire.SizeMm = size;
        return wire;
    }

    private static Wire.Action ToWire(CorrectiveAction action)
    {
        var wire = new Wire.Action
        {
            Registration = action.Registration,
            Location = action.Location,
            ActionDate = action.ActionDate.ToWire(),
            TimeInServiceHours = action.TimeInService.Value,
            Kind = (Wire.ActionKind)action.Kind,
            Note = action.Note ?? "",
        };
        if (action.PartHours is { } hours)
            wire.PartHours = hours.Value;
        return wire;
    }

    private sealed class RecordMaker : IRecordContentVisitor<Wire.Record>
    {
        public Wire.Record Visit(Airframe airframe) => new() { Aircraft = ToWire(airframe) };

        public Wire.Record Visit(MeterReading reading) => new() { MeterReading = ToWire(reading) };

        public Wire.Record Visit(MeterChange change) => new() { MeterChange = ToWire(change) };

        public Wire.Record Visit(Installation installation) => new() { Installation = ToWire(installation) };

        public Wire.Record Visit(Removal removal) => new() { Removal = ToWire(removal) };

        public Wire.Record Visit(Inspection inspection) => new() { Inspection = ToWire(inspection) };

        public Wire.Record Visit(Finding finding) => new() { Finding = ToWire(finding) };

        public Wire.Record Visit(CorrectiveAction action) => new() { Action = ToWire(action) };

        public Wire.Record Visit(PracticeChange change) => new() { PracticeChange = ToWire(change) };

        public Wire.Record Visit(StockCount count) => new() { StockCount = ToWire(count) };

        public Wire.Record Visit(Retraction retraction) => new() { Retraction = new() { Reason = retraction.Reason } };
    }
}
