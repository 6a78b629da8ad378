using FleetTrend.Statistics.Decisions;
using FleetTrend.Trends.FailureChances;

namespace FleetTrend.Trends.Scores;

/// <summary>Chances before the next look held against the looks of quarters.</summary>
internal sealed class ChanceScores
{
    private const int MostGroups = 10;
    private const int FewestLooksInAGroup = 20;

    private readonly TypeGroupInputs inputs;
    private readonly ScoredLooks looks;

    /// <summary>Scores the chances that were kept.</summary>
    public ChanceScores(TypeGroupInputs inputs)
    {
        this.inputs = inputs;
        looks = ScoredLooks.Find(inputs, inputs.Forecasts.Laws);
        FirstDate = inputs.Forecasts.Laws.Count > 0 ? inputs.Forecasts.Laws[0].Date.AddDays(1) : null;
    }

    /// <summary>The first day whose looks count; null where nothing was kept.</summary>
    public DateOnly? FirstDate { get; }

    /// <summary>A quarter; null before the first forecast.</summary>
    public ChanceScore? Of(Quarter quarter) => Compare([.. looks.In(quarter)], quarter, quarter).Score;

    /// <summary>A quarter that is over and the one before, with the verdict; null before the first forecast.</summary>
    public ChanceScore? OfTwo(Quarter quarter)
    {
        var (score, all, groups) = Compare([.. looks.In(quarter.Previous), .. looks.In(quarter)], quarter.Previous, quarter);
        if (score is null || all is null || all.Count < FewestLooksInAGroup)
            return score;
        var once = FalseVerdicts.ChancesAtOnce(inputs);
        return score with { IsOff = all.IsOff(1 - once / 2) || groups.Any(g => g.IsOff(1 - once / 2 / groups.Count)) };
    }

    private (ChanceScore? Score, CountScore? All, IReadOnlyList<CountScore> Groups) Compare(IReadOnlyList<ScoredChance> chances, Quarter first, Quarter last)
    {
        if (FirstDate is not { } day || day > last.EndDate)
            return (null, null, []);
        var (all, groups) = CountScore.Compare(chances, Math.Clamp(chances.Count / FewestLooksInAGroup, 1, MostGroups));
        var confidence = inputs.Parameters.Confidence;
        var (lower, upper) = all.Limits(confidence);
        var score = new ChanceScore
        {
            FromDate = day > first.StartDate ? day : first.StartDate,
            Looks = all.Count,
            Expected = Math.Round(all.Expected, 6),
            Found = all.Found,
            Lower = lower,
            Upper = upper,
            Groups = chances.Count < FewestLooksInAGroup ? [] : [.. groups.Select(g => ToGroup(g, g.Limits(confidence)))],
        };
        return (score, all, chances.Count < FewestLooksInAGroup ? [] : groups);
    }

    private static ChanceGroup ToGroup(CountScore group, (int Lower, int Upper) limits) => new(
        Math.Round(group.Chances.From, 6), Math.Round(group.Chances.To, 6), group.Count, Math.Round(group.Expected, 6), group.Found, limits.Lower,
        limits.Upper);
}
