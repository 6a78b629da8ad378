using FleetTrend.Records.Findings;
using static FleetTrend.Records.Findings.Condition;

namespace FleetTrend.Trends.AuthorityDrafts;

/// <summary>
/// The paragraphs as data. Which conditions may fall under them is a choice, and a wide one: whether a finding does is for the certificate holder to judge.
/// </summary>
public static class ReportingParagraphs
{
    /// <summary>Hot gas, or a piece, may have left the pipes.</summary>
    private static readonly Condition[] LetsGasOut = [Crack, LeakTrace, Erosion, MissingPiece, Distortion, Looseness, Other];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<ReportingParagraph> All { get; } =
    [
        new(
            "14 CFR 121.703(a)(4), 135.415(a)(4)", "certificate holder under part 121 or 135",
            "an exhaust system that in flight damages the engine, structure beside it, equipment or components", null,
            ["exhaust"], ["78"], LetsGasOut),
        new(
            "14 CFR 121.703(a)(5), 135.415(a)(5)", "certificate holder under part 121 or 135",
            "a component that in flight brings smoke, vapour, or toxic or noxious fumes into the crew or passenger compartment", null,
            ["exhaust"], ["78", "2140"], LetsGasOut),
        new(
            "14 CFR 121.703(a)(5), 135.415(a)(5)", "certificate holder under part 121 or 135",
            "a component that in flight brings smoke, vapour, or toxic or noxious fumes into the crew or passenger compartment", null,
            ["induction"], ["7160", "8530"], [LeakTrace]),
        new(
            "14 CFR 145.221", "certificated repair station",
            "a serious failure, malfunction or defect of an article", "within 96 hours of its discovery",
            [], [""], [Crack, LeakTrace, Erosion, MissingPiece, Distortion]),
    ];

    /// <summary>Those under which a finding may fall, each citation once.</summary>
    /// <param name="path">Path of the location.</param>
    /// <param name="jascCode">Its JASC code; null where it has none.</param>
    /// <param name="condition">The condition.</param>
    public static IReadOnlyList<ReportingParagraph> For(string path, string? jascCode, Condition condition) =>
        [.. All.Where(p => p.MayConcern(path, jascCode, condition)).DistinctBy(p => p.Citation, StringComparer.Ordinal)];

    /// <summary>The conditions that they may concern at a location.</summary>
    /// <param name="path">Path of the location.</param>
    /// <param name="jascCode">Its JASC code; null where it has none.</param>
    public static IReadOnlyList<Condition> ConditionsAt(string path, string? jascCode) =>
        [.. All.Where(p => p.IsAt(path, jascCode)).SelectMany(p => p.Conditions).Distinct().Order()];
}
