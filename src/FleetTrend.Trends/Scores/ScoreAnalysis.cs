namespace FleetTrend.Trends.Scores;

/// <summary>
/// How right the product was: forecasts as they were published, held against what then happened by the records known now, a quarter at a time. A quarter is
/// judged once it is over, together with the one before.
/// </summary>
public sealed class ScoreAnalysis : Analysis<Score>
{
    /// <summary>Makes the analysis.</summary>
    public ScoreAnalysis()
        : base("scores")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(Score item) => new();

    /// <summary>The newest quarter first, its type groups by name.</summary>
    public override IEnumerable<Score> Order(IEnumerable<Score> items) =>
        items.OrderByDescending(s => s.Quarter.StartDate).ThenBy(s => s.TypeGroup, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<Score> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        var (chances, spares, dues, calls) = (new ChanceScores(inputs), new SpareScores(inputs), new DueScores(inputs), new CallScores(inputs));
        DateOnly?[] firsts = [chances.FirstDate, spares.FirstDate, dues.FirstDate, calls.FirstDate];
        if (firsts.Min() is not { } first)
            yield break;
        var running = Quarter.Of(inputs.AsOfDate);
        var quarter = running;
        for (var i = 0; i <= FalseVerdicts.Quarters && quarter.EndDate >= first; i++, quarter = quarter.Previous)
        {
            var isOver = quarter != running;
            yield return new Score
            {
                TypeGroup = inputs.TypeGroup,
                Quarter = quarter,
                IsOver = isOver,
                Chances = chances.Of(quarter),
                ChancesOfTwo = isOver ? chances.OfTwo(quarter) : null,
                Spares = spares.Of(quarter),
                SparesOfTwo = isOver ? spares.OfTwo(quarter) : null,
                DueLooks = dues.Of(quarter),
                Calls = calls.Calls(quarter),
                Effects = calls.Effects(quarter),
            };
        }
    }
}
