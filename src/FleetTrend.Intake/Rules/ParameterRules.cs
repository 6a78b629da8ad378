using System.Globalization;
using FleetTrend.Intake.Parameters;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of a change of the parameters.</summary>
public static class ParameterRules
{
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
        var intervals = new LinesOfKinds(reader, "look_intervals", "look_interval_hours holds for all", typeGroups, kinds);
        if (intervals.AreNotTooMany(parameters.LookIntervals.Count))
        {
            foreach (var (index, interval) in parameters.LookIntervals.Index())
                CheckNumber(intervals.At(index, interval.TypeGroup, interval.Kind), ParameterNumbers.LookInterval, interval.HasHours ? interval.Hours : null);
        }

        var limits = new LinesOfKinds(reader, "maker_limits", "no limit holds for all", typeGroups, kinds);
        if (limits.AreNotTooMany(parameters.MakerLimits.Count))
        {
            foreach (var (index, limit) in parameters.MakerLimits.Index())
                CheckLimit(limits.At(index, limit.TypeGroup, limit.Kind), limit);
        }
    }

    private static void CheckLimit(FieldReader line, Wire.MakerLimit limit)
    {
        if (!limit.HasRenewalHours && !limit.HasLookHours)
            line.Refuse("renewal_hours", "", Reasons.FieldRequired, "must be given where look_hours is not");
        if (limit.HasRenewalHours)
            CheckNumber(line, ParameterNumbers.MakerRenewal, limit.RenewalHours);
        if (limit.HasLookHours)
            CheckNumber(line, ParameterNumbers.MakerLook, limit.LookHours);
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
}
