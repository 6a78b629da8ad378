using System.Globalization;
using FleetTrend.Intake.Parameters;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of a change of the parameters.</summary>
public static class ParameterRules
{
    private const int MaxIntervals = 500;
    private const int MaxNoteLength = 2_000;

    /// <summary>Every rule that a change breaks.</summary>
    /// <param name="request">As sent.</param>
    /// <param name="typeGroups">Every registered type group.</param>
    /// <param name="kinds">Every kind of location.</param>
    public static IReadOnlyList<Refusal> Check(
        Wire.ChangeParametersRequest request, IReadOnlyCollection<string> typeGroups, IReadOnlyCollection<string> kinds)
    {
        var reader = new FieldReader(default);
        if (request.Parameters is { } parameters)
            CheckParameters(reader.At("parameters"), parameters, typeGroups, kinds);
        else
            reader.Refuse("parameters", "", Reasons.FieldRequired, "must be every parameter, changed or not");
        CheckRevision(reader, request);
        if (reader.Note("note", request.Note, MaxNoteLength) is null)
            reader.Refuse("note", "", Reasons.FieldRequired, "must say why");
        return reader.Refusals;
    }

    private static void CheckRevision(FieldReader reader, Wire.ChangeParametersRequest request)
    {
        const string Rule = "must be the revision that is in force, as GetParameters tells it: 0 or more";
        if (!request.HasRevision)
            reader.Refuse("revision", "", Reasons.FieldRequired, Rule);
        else if (request.Revision < 0)
            reader.RefuseBare("revision", request.Revision.ToString(CultureInfo.InvariantCulture), Reasons.NumberOutOfRange, Rule);
    }

    private static void CheckParameters(
        FieldReader reader, Wire.Parameters parameters, IReadOnlyCollection<string> typeGroups, IReadOnlyCollection<string> kinds)
    {
        foreach (var number in ParameterNumbers.All)
            CheckNumber(reader, number, number.In(parameters));
        if (parameters.LookIntervals.Count > MaxIntervals)
        {
            reader.RefuseBare("look_intervals", $"{parameters.LookIntervals.Count}", Reasons.TooManyItems, $"must be a list of up to {MaxIntervals}");
            return;
        }

        var seen = new HashSet<(string TypeGroup, string Kind)>();
        foreach (var (index, interval) in parameters.LookIntervals.Index())
        {
            var line = reader.At($"look_intervals[{index}]");
            CheckName(line, "type_group", interval.TypeGroup, typeGroups, Reasons.TypeGroupNotRegistered, "must be a registered type group, or empty for all");
            CheckName(line, "kind", interval.Kind, kinds, Reasons.LocationKindUnknown, "must be the name of a location kind, or empty for all");
            CheckNumber(line, ParameterNumbers.LookInterval, interval.HasHours ? interval.Hours : null);
            if (interval is { TypeGroup: "", Kind: "" })
                line.Refuse("type_group", "", Reasons.FieldRequired, "must be given where kind is not: look_interval_hours holds for all");
            else if (!seen.Add((interval.TypeGroup, interval.Kind)))
                line.Refuse(interval.Kind.Length > 0 ? "kind" : "type_group", interval.Kind.Length > 0 ? interval.Kind : interval.TypeGroup, Reasons.DuplicateLine, "must be a type group and kind that no other line has");
        }
    }

    private static void CheckNumber(FieldReader reader, ParameterNumber number, double? given)
    {
        if (given is not { } value)
            reader.Refuse(number.Field, "", Reasons.FieldRequired, number.Rule);
        else if (!double.IsFinite(value))
            reader.RefuseBare(number.Field, FieldReader.Number(value), Reasons.NumberNotFinite, number.Rule);
        else if (value < number.Least || value > number.Most)
            reader.RefuseBare(number.Field, FieldReader.Number(value), Reasons.NumberOutOfRange, number.Rule);
        else if (value != Math.Round(value, number.Decimals))
            reader.RefuseBare(number.Field, FieldReader.Number(value), Reasons.TooManyDecimals, number.Rule);
    }

    private static void CheckName(
        FieldReader reader, string field, string name, IReadOnlyCollection<string> known, Reason unknown, string rule)
    {
        if (name.Length > 0 && !known.Contains(name, StringComparer.Ordinal))
            reader.Refuse(field, name, unknown, rule, NearestName.Find(name, known));
    }
}
