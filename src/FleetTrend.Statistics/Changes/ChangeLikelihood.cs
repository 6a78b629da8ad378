namespace FleetTrend.Statistics.Changes;

/// <summary>How much better findings fit a change of rate than a rate that stayed as it was, for a unit whose own level is not known.</summary>
public static class ChangeLikelihood
{
    /// <summary>
    /// Logarithm of the likelihood ratio "part of the unit has had <paramref name="ratio"/> times its rate since a look" over "nothing changed", the
    /// unit's own level integrated out of both.
    /// </summary>
    /// <param name="shape">Shape k of the gamma distribution of units' levels, mean one.</param>
    /// <param name="found">Findings on the whole unit, ever.</param>
    /// <param name="expected">Findings expected on it at the norm, ever.</param>
    /// <param name="foundSince">Of the findings, those in the changed part since the look.</param>
    /// <param name="expectedSince">Of those expected, the same share.</param>
    /// <param name="ratio">Times the rate before.</param>
    /// <returns>Above zero where the change fits better.</returns>
    /// <remarks>
    /// Derived here: with level z ~ Gamma(k, k) and Poisson counts, the integral of z^(k+N-1) exp(-z (k + E)) over z is Gamma(k+N) / (k+E)^(k+N);
    /// a change puts r^N_s before it and E + (r - 1) E_s in place of E. Source of the conjugacy: Gelman et al. 2013, Bayesian Data Analysis, section 2.6.
    /// </remarks>
    public static double LogRatio(double shape, double found, double expected, double foundSince, double expectedSince, double ratio) =>
        foundSince * Math.Log(ratio) + (shape + found) * Math.Log((shape + expected) / (shape + expected + (ratio - 1) * expectedSince));
}
