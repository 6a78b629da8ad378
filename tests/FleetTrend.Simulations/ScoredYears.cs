using FleetTrend.Trends;
using FleetTrend.Trends.Scores;

namespace FleetTrend.Simulations;

/// <summary>Three years of a simulated operator through the analyses of the product: forecasts kept on the fourth day of each quarter, scores at the
/// end.</summary>
internal static class ScoredYears
{
    /// <summary>The first quarter with a forecast: two years of records are known by then.</summary>
    public static Quarter First { get; } = Quarter.Of(new DateOnly(2023, 1, 1));

    /// <summary>Days that an operator has to be drawn for.</summary>
    public static int Days { get; } = new DateOnly(2026, 1, 4).DayNumber - SimulatedOperator.Start.DayNumber;

    /// <summary>The quarter after three years of forecasts.</summary>
    public static Quarter Until { get; } = Quarter.Of(new DateOnly(2026, 1, 1));

    /// <summary>The scores of quarters that are over, the newest first.</summary>
    /// <param name="fleet">The operator.</param>
    /// <param name="first">The first quarter with a forecast.</param>
    /// <param name="until">The quarter at whose beginning the scores are told.</param>
    public static IReadOnlyList<Score> Run(SimulatedOperator fleet, Quarter first, Quarter until)
    {
        List<(string Name, DateTimeOffset AsOf, string Detail)> kept = [];
        for (var quarter = first; quarter != until; quarter = quarter.Next)
        {
            var inputs = Inputs(quarter);
            var written = KeptForecasts.Write(
                Answers(Analyses.Fleet, inputs), Answers(Analyses.ChanceCalibrations, inputs), Answers(Analyses.Spares, inputs),
                Answers(Analyses.DueLooks, inputs));
            kept.AddRange(written.Select(f => (f.Name, AsOf(quarter), f.Detail)));
        }

        return [.. Analyses.Scores.Order(Answers(Analyses.Scores, Inputs(until))).Where(s => s.IsOver)];

        TypeGroupInputs Inputs(Quarter at) => new("four", fleet.KnownOn(DateOnly.FromDateTime(AsOf(at).UtcDateTime)), AsOf(at), new TrendParameters())
        {
            Forecasts = KeptForecasts.Read(kept),
        };
    }

    private static DateTimeOffset AsOf(Quarter quarter) => new(quarter.StartDate.AddDays(3), new TimeOnly(6, 0), TimeSpan.Zero);

    private static IEnumerable<T> Answers<T>(Analysis<T> analysis, TypeGroupInputs inputs)
        where T : notnull => analysis.Compute(inputs).Subjects.Cast<SubjectResult<T>>().SelectMany(s => s.Items);
}
