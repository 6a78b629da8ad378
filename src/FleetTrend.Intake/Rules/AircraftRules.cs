using FleetTrend.Records.Aircraft;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of an aircraft.</summary>
internal static class AircraftRules
{
    private const int MaxAssignments = 100;

    public static Airframe Parse(Wire.Aircraft aircraft, FieldReader reader, ReferenceData known)
    {
        var watchStart = reader.Day("watch_start_date", aircraft.WatchStartDate);
        var retired = reader.OptionalDay("retired_date", aircraft.RetiredDate);
        if (retired < watchStart)
        {
            reader.RefuseBare(
                "retired_date", $"{retired:yyyy-MM-dd}", Reasons.DatesOutOfOrder, $"must be a day not before watch_start_date, {watchStart:yyyy-MM-dd}");
        }

        return new Airframe
        {
            Registration = PlaceRules.Mark(reader, aircraft.Registration),
            WatchStartDate = watchStart,
            Assignments = ReadAssignments(aircraft, reader, known),
            MeterOffset = reader.Hours("meter_offset_hours", given: true, aircraft.MeterOffsetHours, -FieldReader.MaxHours),
            RetiredDate = retired,
        };
    }

    private static List<Assignment> ReadAssignments(Wire.Aircraft aircraft, FieldReader reader, ReferenceData known)
    {
        const string Count = "must be a list of 1 to 100 assignments";
        if (aircraft.Assignments.Count == 0)
            reader.Refuse("assignments", "", Reasons.FieldRequired, Count);
        if (aircraft.Assignments.Count > MaxAssignments)
        {
            reader.RefuseBare("assignments", $"{aircraft.Assignments.Count}", Reasons.TooManyItems, Count);
            return [];
        }

        var assignments = new List<Assignment>();
        foreach (var (index, wire) in aircraft.Assignments.Index())
        {
            var line = reader.At($"assignments[{index}]");
            var from = line.Day("from_date", wire.FromDate);
            if (assignments.Count > 0 && from <= assignments[^1].FromDate)
            {
                line.RefuseBare(
                    "from_date", $"{from:yyyy-MM-dd}", Reasons.DatesOutOfOrder,
                    $"must be a day after that of the assignment before it, {assignments[^1].FromDate:yyyy-MM-dd}");
            }

            var group = line.Name("type_group", wire.TypeGroup, Patterns.Name, Patterns.NameRule);
            if (Patterns.Name.IsMatch(group) && !known.TypeGroups.ContainsKey(group))
                line.Refuse("type_group", group, Reasons.TypeGroupNotRegistered, "must be a registered type group", NearestName.Find(group, known.TypeGroups.Keys));
            var atBase = line.Line("base", wire.Base, 1, 60);
            if (atBase == "*")
                line.Refuse("base", atBase, Reasons.PatternMismatch, "must be a base; '*' stands for the whole fleet");
            var spelling = known.SpellingOf(atBase) ?? assignments.Find(a => a.Base.Equals(atBase, StringComparison.OrdinalIgnoreCase))?.Base;
            if (spelling is not null && spelling != atBase)
                line.Refuse("base", atBase, Reasons.BaseSpelledOtherwise, "must be spelled as that base is already", spelling);
            assignments.Add(new Assignment(from, atBase, group));
        }

        return assignments;
    }
}
