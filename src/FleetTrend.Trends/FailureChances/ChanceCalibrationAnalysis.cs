using FleetTrend.Statistics.Decisions;

namespace FleetTrend.Trends.FailureChances;

/// <summary>
/// Chances before the next look held against what then happened. A look's chance takes the ages as they were known at the look before, and the life
/// distributions of 52 weeks ago: what the looks found had no part in them. Only which bases have a distribution of their own is known from now.
/// </summary>
public sealed class ChanceCalibrationAnalysis : Analysis<ChanceCalibration>
{
    private const int HeldOutDays = 52 * 7;
    private const int MostGroups = 10;
    private const int FewestLooksInAGroup = 20;

    /// <summary>Makes the analysis.</summary>
    public ChanceCalibrationAnalysis()
        : base("chance-calibrations")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(ChanceCalibration item) => new();

    /// <inheritdoc/>
    protected override IEnumerable<ChanceCalibration> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        var lives = inputs.FollowedLives;
        if (lives.Count == 0)
            yield break;
        var day = inputs.AsOfDate.AddDays(-HeldOutDays);
        var outcomes = HeldOut(inputs, lives, day);
        var groups = Calibration.Compare(outcomes, Math.Clamp(outcomes.Count / FewestLooksInAGroup, 1, MostGroups), inputs.Parameters.Confidence);
        yield return new ChanceCalibration
        {
            TypeGroup = inputs.TypeGroup,
            FittedDate = day,
            Looks = outcomes.Count,
            Expected = groups.Sum(g => g.Expected),
            Found = groups.Sum(g => g.Found),
            Confidence = inputs.Parameters.Confidence,
            Groups = outcomes.Count < FewestLooksInAGroup
                ? []
                : [.. groups.Select(g => new ChanceGroup(g.From, g.To, g.Count, g.Expected, g.Found, g.Lower, g.Upper))],
            Laws = inputs.LifeLaws.All,
        };
    }

    /// <summary>The chance of each look after a day by what was known on it, and whether it found the part failed.</summary>
    internal static List<ForeseenOutcome> HeldOut(TypeGroupInputs inputs, IReadOnlyList<FollowedLife> lives, DateOnly day)
    {
        var laws = LifeLaws.Fit(inputs, lives.Select(l => l.AsOf(day)).OfType<Observations.Lives.ObservedLife>());
        return
        [
            .. from life in lives
               let law = laws.Of(life.Life.Kind.Name, life.Life.Base)
               where law is not null
               from look in life.LooksAfter(day)
               select new ForeseenOutcome(law.Fit!.Model.ConditionalFailure(look.Good.Value, (look.Look - look.Good).Value), look.Failed),
        ];
    }
}
