using System.Globalization;
using FleetTrend.Records.Words;
using FleetTrend.Trends.Changes;

namespace FleetTrend.Trends.Words;

/// <summary>How a change reads: what happened, beside its like, how sure.</summary>
public static class ChangeWords
{
    /// <summary>
    /// What happened and beside its like: <c>7 cracks on ZZ-A07 since about March 2026, 5 of them at cyl 3 flange weld. Similar aircraft would give
    /// 1.2 in the same looks. Before that it had 3 where they would give 2.8</c>; then how sure.
    /// </summary>
    /// <param name="change">The change.</param>
    /// <param name="title">Title of its kind of part; null for a condition.</param>
    public static string Statement(Change change, string? title) =>
        $"{What(change, title, change.FoundSince)} {Unit(change)} since about {Month(change.SinceDate)}{Most(change)}. "
        + $"{Like(change)} would give {NumberWords.Rounded(change.ExpectedSince)} in the same looks. "
        + $"Before that {(change.Part.Length > 0 ? $"the {LocationWords.Name(change.Part)} had" : "it had")} {NumberWords.Count(change.FoundBefore)} where "
        + $"{FirstLetter.Small(Like(change))} would give {NumberWords.Rounded(change.ExpectedBefore)}. {HowSure(change)}";

    /// <summary>How sure, in one fixed form: <c>Chance alone would raise a call like this about once in 400 aircraft-years.</c></summary>
    public static string HowSure(Change change)
    {
        ArgumentNullException.ThrowIfNull(change);
        var years = ChanceWords.ToTwoDigits(Math.Max(1, change.AircraftYearsPerFalseCall));
        return change.IsAircraftYearsCapped
            ? $"Chance alone would raise a call like this less than once in {years} aircraft-years."
            : $"Chance alone would raise a call like this about once in {years} aircraft-years.";
    }

    /// <summary>A headline without its subject: <c>has had 7.9 times the cracks of similar aircraft since about March 2026</c>.</summary>
    /// <param name="change">The change.</param>
    /// <param name="title">Title of its kind of part; null for a condition.</param>
    public static string Predicate(Change change, string? title) =>
        (change.RatioSince.Value is { } ratio
            ? $"has had {NumberWords.Rounded(ratio)} times the {Many(change, title)} of {FirstLetter.Small(Like(change))}"
            : $"has had {What(change, title, change.FoundSince)}, {FirstLetter.Small(Like(change))} none,")
        + $" since about {Month(change.SinceDate)}{(change.Locations is [var worst, ..] ? $", most at {LocationWords.Name(worst.Location)}" : "")}";

    private static string What(Change change, string? title, int count) => change.Condition is { } condition
        ? ConditionWords.Count(count, condition)
        : $"{NumberWords.Count(count)} failed {(count == 1 ? LocationWords.Kind(title, change.Kind!) : LocationWords.Plural(LocationWords.Kind(title, change.Kind!)))}";

    private static string Many(Change change, string? title) => change.Condition is { } condition
        ? ConditionWords.Many(condition)
        : $"failed {LocationWords.Plural(LocationWords.Kind(title, change.Kind!))}";

    private static string Unit(Change change) => change.Registration is { } registration
        ? $"on {registration}"
        : $"on aircraft of {change.TypeGroup} at {change.Base}";

    private static string Most(Change change) => change.Locations switch
    {
        [] => "",
        [var only] => $", {(only.Found == 1 ? "" : "all ")}at {LocationWords.Name(only.Location)}",
        [var first, ..] => $", {NumberWords.Count(first.Found)} of them at {LocationWords.Name(first.Location)}",
    };

    private static string Like(Change change) => change.Registration is null ? "The other bases" : "Similar aircraft";

    private static string Month(DateOnly date) => date.ToString("MMMM yyyy", CultureInfo.InvariantCulture);
}
