namespace FleetTrend.Statistics.Monitoring;

/// <summary>A whole rule of practice: how the level is set, from what, and what is judged by it.</summary>
/// <param name="Name">Short name, for programs; it never changes.</param>
/// <param name="Title">What it is called in a table.</param>
/// <param name="Definition">How the level is set.</param>
/// <param name="Baseline">From what.</param>
/// <param name="MonthsInARow">So many months in a row must be above.</param>
/// <param name="Description">What it does, in words.</param>
/// <param name="Source">Where it comes from.</param>
/// <remarks>
/// A three-month definition judges the three months that end with the month, every other one the month alone; with <see cref="AlertBaseline.LikeUnits"/>
/// the twelve months that end with it.
/// </remarks>
public sealed record AlertPractice(
    string Name, string Title, AlertDefinition Definition, AlertBaseline Baseline, int MonthsInARow, string Description, string Source)
{
    private const string NoSource = "common practice, no source";
    private const string AmaAppendix = "Transport Canada AMA 571.101/1, appendix A";
    private const string UChart = "Poisson chart, NIST/SEMATECH e-Handbook 6.3.3.1";
    private const string Month = "A month of the unit against the mean of the group's last twelve monthly rates";

    /// <summary>Every rule in common use, each named.</summary>
    public static IReadOnlyList<AlertPractice> All { get; } =
    [
        Rolling("mean-2-sd", "mean + 2 SD", AlertDefinition.MeanPlusTwoDeviations, $"{Month} plus two standard deviations (divisor 11).", NoSource),
        Rolling("mean-2.5-sd", "mean + 2.5 SD", AlertDefinition.MeanPlusTwoAndAHalfDeviations, $"{Month} plus two and a half standard deviations (divisor 11).", NoSource),
        Rolling("mean-3-sd", "mean + 3 SD", AlertDefinition.MeanPlusThreeDeviations, $"{Month} plus three standard deviations (divisor 11).", NoSource),
        Rolling("mean-2-sd-n", "mean + 2 SD, divisor 12", AlertDefinition.MeanPlusTwoPopulationDeviations, $"{Month} plus two standard deviations (divisor 12).", NoSource),
        Rolling(
            "mean-2-sd-twice", "mean + 2 SD, two months", AlertDefinition.MeanPlusTwoDeviations,
            $"{Month} plus two standard deviations (divisor 11), two months in a row.", NoSource) with { MonthsInARow = 2 },
        Yearly("year-mean-2-sd", "last year's mean + 2 SD", AlertDefinition.MeanPlusTwoDeviations, "two"),
        Yearly("year-mean-3-sd", "last year's mean + 3 SD", AlertDefinition.MeanPlusThreeDeviations, "three"),
        Rolling(
            "three-month-pooled-1.3", "3-month rate x 1.3", AlertDefinition.ThreeMonthPooledRateTimesOnePointThree,
            "Three months of the unit, events over hours, against 1.3 times the average of the group's running three-month rates of twelve months.", AmaAppendix),
        Rolling(
            "three-month-average-1.3", "3-month average x 1.3", AlertDefinition.ThreeMonthAverageRateTimesOnePointThree,
            "The average of three monthly rates of the unit against 1.3 times the average of the group's running three-month averages of twelve months.", AmaAppendix),
        Rolling(
            "three-month-mean-2-sd", "3-month average, mean + 2 SD", AlertDefinition.ThreeMonthMeanPlusTwoDeviations,
            "The average of three monthly rates of the unit against the mean of the group's running three-month averages of twelve months plus two of their standard deviations.",
            NoSource),
        Rolling(
            "poisson-2-sd", "Poisson, 2 SD", AlertDefinition.PooledPlusTwoPoissonDeviations,
            "A month of the unit against the group's rate of twelve months plus two Poisson standard deviations at the unit's own hours.", UChart),
        Rolling(
            "poisson-3-sd", "Poisson, 3 SD", AlertDefinition.PooledPlusThreePoissonDeviations,
            "A month of the unit against the group's rate of twelve months plus three Poisson standard deviations at the unit's own hours.", UChart),
        Rolling(
            "poisson-exact", "Poisson, upper 2.5 %", AlertDefinition.ExactPoissonUpperTail,
            "A month of the unit with a count that the group's rate of twelve months reaches with a chance of at most 2.5 % in the unit's own hours.", NoSource),
        Like("like-mean-2-sd", "12 months, 2 SD above its like", AlertDefinition.MeanPlusTwoDeviations, "two"),
        Like("like-mean-3-sd", "12 months, 3 SD above its like", AlertDefinition.MeanPlusThreeDeviations, "three"),
    ];

    private static AlertPractice Rolling(string name, string title, AlertDefinition definition, string description, string source) =>
        new(name, title, definition, AlertBaseline.TwelveMonthsBefore, 1, description, source);

    private static AlertPractice Yearly(string name, string title, AlertDefinition definition, string deviations) => new(
        name, title, definition, AlertBaseline.CalendarYearBefore, 1,
        $"A month of the unit against the mean of the group's monthly rates of the calendar year before plus {deviations} standard deviations (divisor 11); set anew each January.",
        NoSource);

    private static AlertPractice Like(string name, string title, AlertDefinition definition, string deviations) => new(
        name, title, definition, AlertBaseline.LikeUnits, 1,
        $"Twelve months of the unit against the mean of the twelve-month rates of all units plus {deviations} standard deviations (divisor one less than units).", NoSource);
}
