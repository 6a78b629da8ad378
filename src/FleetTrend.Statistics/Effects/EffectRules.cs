namespace FleetTrend.Statistics.Effects;

/// <summary>When a verdict is said: the odds "it helped" over "as before" against two limits, at any number of looks.</summary>
/// <remarks>
/// Source: sequential likelihood ratio, Wald 1945, Annals of Mathematical Statistics 16. That such odds ever reach a limit where they should
/// not has a chance of at most one over it, averaged over what they are averaged over, however often one looks: Ville 1939, in Robbins 1970,
/// Annals of Mathematical Statistics 41. What that gives in flight hours stands in CALLS.md.
/// </remarks>
public static class EffectRules
{
    /// <summary>An action on a called unit "helped" from these odds on: it has one unit to go by, and the odds allow for why it was called.</summary>
    public const double OddsForHelpedAction = 6;

    /// <summary>A change of practice "helped" from these odds on: it has many units to go by.</summary>
    public const double OddsForHelpedPractice = 20;

    /// <summary>"No better" from these odds against it on.</summary>
    public const double OddsForNoBetter = 10;

    /// <summary>No action is called helped before so many findings would have come at the norm: an early quiet stretch says little.</summary>
    public const double LeastExpectedAfterAction = 0.9;

    /// <summary>The verdict on an action at the moment; who looks again and again keeps the first that is not "too early".</summary>
    /// <param name="logOdds">Logarithm of <see cref="ActionOdds"/>.</param>
    /// <param name="expectedAfter">Findings expected at the norm after the action.</param>
    public static EffectVerdict JudgeAction(double logOdds, double expectedAfter)
    {
        if (logOdds <= -Math.Log(OddsForNoBetter))
            return EffectVerdict.NoBetter;
        return logOdds >= Math.Log(OddsForHelpedAction) && expectedAfter >= LeastExpectedAfterAction ? EffectVerdict.Helped : EffectVerdict.TooEarly;
    }

    /// <summary>The verdict on a change of practice at the moment.</summary>
    /// <param name="logOdds">Logarithm of <see cref="PracticeOdds"/>.</param>
    public static EffectVerdict JudgePractice(double logOdds)
    {
        if (logOdds <= -Math.Log(OddsForNoBetter))
            return EffectVerdict.NoBetter;
        return logOdds >= Math.Log(OddsForHelpedPractice) ? EffectVerdict.Helped : EffectVerdict.TooEarly;
    }
}
