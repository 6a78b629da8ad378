namespace FleetTrend.Statistics.Decisions;

/// <summary>
/// How long one may wait between looks that find a failure (a leak) if it is there. The life is taken as known: give the
/// ends of its interval as well as its estimate to see how far the answer is known. It supports a decision; makers'
/// instructions and rules that ask for an earlier look stand.
/// </summary>
public static class LookInterval
{
    /// <summary>Longest wait until the next look of a part found good at an age.</summary>
    /// <param name="life">The part's life.</param>
    /// <param name="age">Age at which it was found good, hours, zero or more.</param>
    /// <param name="risk">Allowed chance of a failure that goes unfound for longer than tolerated, in (0, 1).</param>
    /// <param name="toleratedHours">Hours that a failure may go unfound, zero or more.</param>
    /// <returns>Hours to the next look.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>
    /// Source: inversion of the conditional failure probability, IEC 61649. A failure goes unfound for more than h hours
    /// exactly when it comes more than h hours before the look.
    /// </remarks>
    public static double Longest(WeibullLife life, double age, double risk, double toleratedHours = 0)
    {
        Check(risk, toleratedHours);
        ArgumentOutOfRangeException.ThrowIfNegative(age);
        return life.AgeAtHazard(life.CumulativeHazard(age) - ElementaryFunctions.LogP1(-risk)) - age + toleratedHours;
    }

    /// <summary>Longest equal interval, from new to an age, of which none has a higher risk than allowed.</summary>
    /// <param name="life">The part's life.</param>
    /// <param name="lastAge">Age up to which the part stays in service, hours, above zero.</param>
    /// <param name="risk">Allowed chance, per interval and given a good part at its start, in (0, 1).</param>
    /// <param name="toleratedHours">Hours that a failure may go unfound, zero or more.</param>
    /// <returns>Hours between looks; at most the last age plus the tolerated hours.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>
    /// Source: as <see cref="Longest"/>; with a rising hazard the last interval is the worst, with a falling one the first.
    /// </remarks>
    public static double LongestEqual(WeibullLife life, double lastAge, double risk, double toleratedHours = 0)
    {
        Check(risk, toleratedHours);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(lastAge);
        var allowed = -ElementaryFunctions.LogP1(-risk);
        var whole = life.CumulativeHazard(lastAge);
        if (whole <= allowed)
            return lastAge + toleratedHours;
        return toleratedHours + (life.Shape >= 1 ? lastAge - life.AgeAtHazard(whole - allowed) : life.AgeAtHazard(allowed));
    }

    private static void Check(double risk, double toleratedHours)
    {
        if (!(risk is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(risk), risk, "A risk lies strictly between 0 and 1.");
        ArgumentOutOfRangeException.ThrowIfNegative(toleratedHours);
    }
}
