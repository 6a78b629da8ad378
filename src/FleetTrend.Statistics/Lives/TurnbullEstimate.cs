namespace FleetTrend.Statistics.Lives;

/// <summary>
/// The non-parametric maximum-likelihood estimate of the life distribution from any mix of exact, right-, left-, interval-censored and
/// left-truncated lives. With exact and right-censored lives only it is the Kaplan-Meier estimate.
/// </summary>
/// <remarks>
/// Where all lives have an entry above 0, the estimate is conditional on surviving to the smallest entry.
/// Source: Turnbull 1976; candidate intervals under truncation as corrected by Frydman 1994 and Alioum and Commenges 1996. The likelihood
/// is maximised in cumulative-hazard steps, in which it is concave with truncation too; see <see cref="TurnbullSolver"/>.
/// </remarks>
public sealed class TurnbullEstimate
{
    private TurnbullEstimate(TurnbullProblem problem, TurnbullSolver.Solution solution)
    {
        Lives = problem.Lives;
        Failures = problem.Failures;
        ObservedFrom = problem.EarliestEntry;
        LogLikelihood = solution.LogLikelihood;
        Gap = solution.Gap;
        Iterations = solution.Iterations;
        Problem = problem;
        Solution = solution;
        var masses = new List<TurnbullMass>();
        for (var j = 0; j < problem.CandidateCount; j++)
        {
            var mass = solution.Mass(j);
            if (mass > 0) masses.Add(new TurnbullMass(problem.Lower[j], problem.Upper[j], mass, solution.CdfAfter(j)));
        }

        Masses = masses;
    }

    /// <summary>The candidates and the hazard steps behind the masses, for tests that compare groups.</summary>
    internal TurnbullProblem Problem { get; }

    internal TurnbullSolver.Solution Solution { get; }

    /// <summary>The intervals that carry mass, in order of age.</summary>
    public IReadOnlyList<TurnbullMass> Masses { get; }

    /// <summary>Maximised log-likelihood; an exact failure enters with the mass at its age.</summary>
    public double LogLikelihood { get; }

    /// <summary>
    /// The largest derivative of the log-likelihood in the mass of any candidate interval: 0 at the maximum. Without truncation it bounds
    /// what the log-likelihood can still gain.
    /// </summary>
    public double Gap { get; }

    /// <summary>Iterations used.</summary>
    public int Iterations { get; }

    /// <summary>Lives in the data, counts included.</summary>
    public long Lives { get; }

    /// <summary>Failures among them.</summary>
    public long Failures { get; }

    /// <summary>Smallest entry age, hours: the estimate is conditional on surviving to it. 0 when any life was followed from new.</summary>
    public double ObservedFrom { get; }

    /// <summary>Estimates the distribution. Source: see the type's remarks.</summary>
    /// <param name="lives">The lives, in any order.</param>
    /// <returns>The estimate; or the reason: nothing observed, no failure, or (with truncation) an age at which everything under
    /// observation had failed while other lives came under observation only later, or the bound on its work was met before the maximum was.</returns>
    public static Outcome<TurnbullEstimate> Estimate(IReadOnlyList<Life> lives) => Estimate(lives, TurnbullSolver.WorkMax);

    /// <summary>As above, with a bound on the work.</summary>
    internal static Outcome<TurnbullEstimate> Estimate(IReadOnlyList<Life> lives, double workMax)
    {
        var problem = new TurnbullProblem(lives);
        if (problem.Lives == 0) return new NotEstimable(NotEstimableKind.NothingObserved, 0, "There are no lives.");
        if (problem.Failures == 0)
        {
            return new NotEstimable(
                NotEstimableKind.NoEvents, 0, $"None of {problem.Lives} lives has failed: survival is 1 as far as was looked.");
        }

        if (problem.EmptyAgeBeforeLaterEntries() is { } age)
        {
            return new NotEstimable(
                NotEstimableKind.NoFiniteMaximum,
                problem.Failures,
                $"By {age} h all lives then under observation had failed, and others were first seen later: nothing links the two.");
        }

        var solution = TurnbullSolver.Solve(problem, workMax);
        return solution.IsMaximum
            ? new TurnbullEstimate(problem, solution)
            : new NotEstimable(
                NotEstimableKind.DidNotConverge,
                problem.Failures,
                $"The non-parametric estimate did not settle within the bound on its work: at the best point reached the log-likelihood still "
                + $"rises by {solution.Gap / problem.Lives:G2} per life for each unit of mass moved, and a maximum is below 1E-07.");
    }

    /// <summary>
    /// Least and greatest probability of having failed by <paramref name="age"/> that the estimate allows: they differ inside an interval
    /// that carries mass. Source: Turnbull 1976 (the estimate is not unique within an innermost interval).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The age is NaN or negative.</exception>
    public (double Least, double Greatest) CdfBounds(double age)
    {
        if (!(age >= 0)) throw new ArgumentOutOfRangeException(nameof(age), age, "An age is not negative.");
        double least = 0;
        foreach (var mass in Masses)
        {
            var isReached = mass.Lower < age || (mass.Lower == mass.Upper && mass.Lower <= age);
            if (!isReached) break;
            if (mass.Upper > age) return (least, mass.Cdf);
            least = mass.Cdf;
        }

        return (least, least);
    }
}
