using System.Globalization;
using FleetTrend.Cli.RecordFiles;
using FleetTrend.Contracts.V1;
using FleetTrend.Trends.BackTests;

namespace FleetTrend.Cli.BackTests;

/// <summary>A call for programs: an element of the JSON document and a line of the CSV file.</summary>
internal sealed record BackTestRow(
    string Method, string TypeGroup, string? Registration, string Base, string? Condition, string? Kind, DateOnly Date, DateOnly? EndedDate, string? Part,
    DateOnly? SinceDate, double? Ratio, int? FoundSince, double? ExpectedSince, double? PerThousandHours, double? LevelPerThousandHours)
{
    /// <summary>The header of the CSV file.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        "method", "type_group", "registration", "base", "condition", "kind", "date", "ended_date", "part", "since_date", "ratio", "found_since",
        "expected_since", "per_thousand_hours", "level_per_thousand_hours",
    ];

    /// <summary>A call, in the words of files.</summary>
    public static BackTestRow From(BackTestCall call) => new(
        call.Method, call.TypeGroup, call.Registration, call.Base, Word(call.Condition), call.Kind, call.Date, call.EndedDate, call.Part, call.SinceDate,
        call.Ratio, call.FoundSince, call.ExpectedSince, call.PerThousandHours, call.LevelPerThousandHours);

    /// <summary>The cells of a line; what does not apply is empty.</summary>
    public string[] Cells() =>
    [
        Method, FormulaGuard.On(TypeGroup), FormulaGuard.On(Registration ?? ""), FormulaGuard.On(Base), Condition ?? "", Kind ?? "", Day(Date), Day(EndedDate),
        FormulaGuard.On(Part ?? ""), Day(SinceDate), Number(Ratio), FoundSince?.ToString(CultureInfo.InvariantCulture) ?? "", Number(ExpectedSince),
        Number(PerThousandHours), Number(LevelPerThousandHours),
    ];

    /// <summary>As records have it: <c>leak-trace</c>.</summary>
    private static string? Word(Records.Findings.Condition? condition)
    {
        if (condition is not { } known)
            return null;
        var field = Finding.Descriptor.FindFieldByNumber(Finding.ConditionFieldNumber);
        return field.EnumType.Values.Skip(1).Select(v => Cell.Word(field, v))
            .First(w => w.Replace("-", "", StringComparison.Ordinal).Equals(known.ToString(), StringComparison.OrdinalIgnoreCase));
    }

    private static string Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    private static string Number(double? value) => value?.ToString("R", CultureInfo.InvariantCulture) ?? "";
}
