namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Maximises the non-parametric likelihood over steps x of the cumulative hazard, x not negative. In x it is concave, whatever the
/// truncation. A few EM steps find where the mass lies; Newton steps on the steps that are free, projected on x >= 0, finish.
/// </summary>
/// <remarks>
/// Source: concavity in the hazard, Alioum and Commenges 1996; projected Newton, Bertsekas 1982; choice of new support at the
/// local maxima of the gradient, Wang 2008. The Hessian couples only steps that one interval spans, so that its Cholesky factor
/// keeps the envelope of the data.
/// </remarks>
internal sealed class TurnbullSolver
{
    private const int WarmUpSteps = 30;

    /// <summary>Support to begin with: a solution rarely has more, and a Newton step costs its size times the squared envelope.</summary>
    private const int SupportAtStart = 250;

    private const int NewtonStepsMax = 4000;

    /// <summary>Multiplications after which it stops, whatever it has reached: about half a minute.</summary>
    internal const double WorkMax = 3e10;

    /// <summary>Gap per life that is small enough.</summary>
    private const double GapMax = 1e-7;

    private readonly TurnbullProblem problem;
    private readonly int m;
    private readonly double[] gradient;
    private readonly double[] cumulative;
    private readonly double total;
    private readonly double workMax;
    private double[] steps;
    private double work;

    private TurnbullSolver(TurnbullProblem problem, double workMax)
    {
        this.problem = problem;
        this.workMax = workMax;
        m = problem.CandidateCount - 1; // the last candidate takes what is left: it has no step of its own
        gradient = new double[m];
        cumulative = new double[m + 1];
        total = problem.Weight.Sum() + problem.OpenWeight.Sum();
        steps = new double[m];
    }

    /// <summary>Where the search ended: at the maximum if its gap says so.</summary>
    internal static Solution Solve(TurnbullProblem problem, double workMax) => new TurnbullSolver(problem, workMax).Solve();

    private Solution Solve()
    {
        Array.Fill(steps, 1.0 / Math.Max(1, m));
        for (var i = 0; i < WarmUpSteps; i++) StepByExpectation();
        Prune();
        if (steps.Count(x => x > 0) > SupportAtStart && ExactAges() <= SupportAtStart) steps = TurnbullThinning.Thin(problem, steps, SupportAtStart);
        var iterations = WarmUpSteps;
        var stalls = 0;
        var value = Evaluate(steps);
        var gap = Gap();

        // Steps that gain next to nothing end it only at the maximum: with the wrong steps at zero there can be some in a row.
        while (iterations < NewtonStepsMax && work < workMax && gap > 1e-13 * total && (stalls < 3 || gap > GapMax * total))
        {
            iterations++;
            var next = StepProjected(value) ?? StepInside(value);
            if (next is { } better)
            {
                var isGain = better > value + (1e-15 * Math.Abs(value));
                value = better;
                var after = Gap();
                stalls = isGain || after < gap / 2 ? 0 : stalls + 1;
                gap = after;
            }
            else
            {
                // Nothing along Newton's direction gains: EM cannot lose.
                for (var i = 0; i < 5; i++) StepByExpectation();
                value = Evaluate(steps);
                gap = Gap();
                stalls++;
            }
        }

        return new Solution(steps, value, Math.Max(0, gap), iterations) { IsMaximum = gap <= GapMax * total };
    }

    /// <summary>The log-likelihood at given steps; fills the gradient and the cumulative hazard too.</summary>
    private double Evaluate(double[] x)
    {
        double sum = 0;
        double linear = 0;
        for (var j = 0; j < m; j++)
        {
            cumulative[j] = sum;
            sum += x[j];
            linear += problem.Linear[j] * x[j];
        }

        cumulative[m] = sum;
        var (first, end, weight) = (problem.First, problem.End, problem.Weight);
        work += m + (10.0 * first.Length);
        Array.Clear(gradient);
        double logs = 0;
        for (var i = 0; i < first.Length; i++)
        {
            var (value, odds) = LogAndOdds(cumulative[end[i]] - cumulative[first[i]]);
            logs += weight[i] * value;
            gradient[first[i]] += weight[i] * odds;
            if (end[i] < m) gradient[end[i]] -= weight[i] * odds;
        }

        double running = 0;
        for (var j = 0; j < m; j++)
        {
            running += gradient[j];
            gradient[j] = running + problem.Linear[j];
        }

        return double.IsFinite(logs) ? linear + logs : double.NegativeInfinity;
    }

    /// <summary>ln(1 - e^-d) and 1/(e^d - 1).</summary>
    private static (double Log, double Odds) LogAndOdds(double d)
    {
        var gone = ElementaryFunctions.OneMinusExp(d);
        return (Math.Log(gone), (1 - gone) / gone);
    }

    /// <summary>
    /// One EM step: each interval life had at least one event of a Poisson process with these steps somewhere in its range.
    /// </summary>
    private void StepByExpectation()
    {
        Evaluate(steps);
        var (first, end, weight) = (problem.First, problem.End, problem.Weight);
        var exposed = new double[m + 1];
        for (var i = 0; i < first.Length; i++)
        {
            exposed[first[i]] += weight[i];
            exposed[end[i]] -= weight[i];
        }

        double running = 0;
        for (var j = 0; j < m; j++)
        {
            running += exposed[j];

            // Expected events: x times the sum of w/(1 - e^-d) = x (sum of w odds + sum of w).
            var events = gradient[j] - problem.Linear[j] + running;
            var exposure = running - problem.Linear[j];
            steps[j] = running > 0 ? steps[j] * events / exposure : 0;
        }
    }

    /// <summary>Sets to zero the small steps whose gradient says that they are on their way there.</summary>
    private void Prune()
    {
        Evaluate(steps);
        var mean = cumulative[m] / Math.Max(1, m);
        var pruned = (double[])steps.Clone();
        for (var j = 0; j < m; j++)
        {
            if (gradient[j] < 0 && pruned[j] < 0.05 * mean) pruned[j] = 0;
        }

        if (double.IsFinite(Evaluate(pruned))) steps = pruned;
    }

    /// <summary>One Newton step projected on x >= 0, which can set many steps to zero at once; null where nothing along it gains.</summary>
    private double? StepProjected(double value)
    {
        var free = FreeSteps();
        return Search(value, free, Direction(free), 1, halvingsMax: 20);
    }

    /// <summary>
    /// One Newton step that stops at the first step to reach zero; slower, but the direction gains whatever the projection would do to it.
    /// </summary>
    private double? StepInside(double value)
    {
        var free = FreeSteps();
        while (true)
        {
            var direction = Direction(free);
            int[] kept = [.. free.Where((j, k) => steps[j] > 0 || direction[k] > 0)];
            if (kept.Length == free.Length)
            {
                var reach = free.Select((j, k) => direction[k] < 0 ? steps[j] / -direction[k] : double.PositiveInfinity).DefaultIfEmpty(1).Min();
                return Search(value, free, direction, Math.Min(1, reach), halvingsMax: 60);
            }

            if (work > workMax) return null;
            free = kept;
        }
    }

    private double[] Direction(int[] free)
    {
        var newton = new TurnbullNewton(problem, cumulative, gradient, free);
        var direction = newton.Direction();
        work += newton.Work;
        return direction;
    }

    /// <summary>Candidates in which some life must have failed: they keep their mass, so that the support cannot be thinned to fewer.</summary>
    private int ExactAges()
    {
        var count = 0;
        for (var i = 0; i < problem.First.Length; i++) count += problem.End[i] == problem.First[i] + 1 ? 1 : 0;
        return count;
    }

    /// <summary>The first of the sizes full, full/2, full/4 ... that gains enough along a direction, projected on x >= 0.</summary>
    private double? Search(double value, int[] free, double[] direction, double full, int halvingsMax)
    {
        var start = steps;
        var slopes = (double[])gradient.Clone();
        var trial = new double[m];
        for (var (size, halvings) = (full, 0); halvings < halvingsMax; size /= 2, halvings++)
        {
            Array.Copy(start, trial, m);
            double promised = 0;
            for (var k = 0; k < free.Length; k++)
            {
                var j = free[k];
                trial[j] = Math.Max(0, start[j] + (size * direction[k]));
                if (trial[j] < 1e-14 * start[j]) trial[j] = 0; // what rounding leaves at the boundary
                promised += slopes[j] * (trial[j] - start[j]);
            }

            var reached = Evaluate(trial);
            if (double.IsFinite(reached) && promised >= 0 && reached >= value + (1e-4 * promised) - (1e-15 * Math.Abs(value)))
            {
                steps = trial;
                return reached;
            }
        }

        Evaluate(start);
        return null;
    }

    /// <summary>Steps above zero, and between two of them the one at zero whose gradient is largest, where positive.</summary>
    private int[] FreeSteps()
    {
        var free = new List<int>();
        var best = -1;
        for (var j = 0; j < m; j++)
        {
            if (steps[j] > 0)
            {
                if (best >= 0) free.Add(best);
                free.Add(j);
                best = -1;
            }
            else if (gradient[j] > 0 && (best < 0 || gradient[j] > gradient[best]))
            {
                best = j;
            }
        }

        if (best >= 0) free.Add(best);
        return [.. free];
    }

    /// <summary>Largest derivative of the log-likelihood in a candidate's mass, at the last evaluated steps.</summary>
    private double Gap()
    {
        var per = new double[m + 2];
        var survival = new double[m + 1];
        for (var j = 0; j <= m; j++) survival[j] = Math.Exp(-cumulative[j]);
        for (var i = 0; i < problem.First.Length; i++)
        {
            var (a, b) = (problem.First[i], problem.End[i]);
            var share = problem.Weight[i] / (survival[a] * ElementaryFunctions.OneMinusExp(cumulative[b] - cumulative[a]));
            per[a] += share;
            per[b] -= share;
        }

        for (var a = 0; a <= m; a++) per[a] += (problem.OpenWeight[a] - problem.EnteredWeight[a]) / survival[a];
        double running = 0;
        var largest = double.NegativeInfinity;
        for (var j = 0; j <= m; j++)
        {
            running += per[j];
            largest = Math.Max(largest, running);
        }

        return largest;
    }

    /// <summary>Steps where the search ended.</summary>
    internal sealed class Solution
    {
        private readonly double[] cumulative;

        internal Solution(double[] steps, double logLikelihood, double gap, int iterations)
        {
            cumulative = new double[steps.Length + 1];
            for (var j = 0; j < steps.Length; j++) cumulative[j + 1] = cumulative[j] + steps[j];
            LogLikelihood = logLikelihood;
            Gap = gap;
            Iterations = iterations;
        }

        internal double LogLikelihood { get; }

        internal double Gap { get; }

        /// <summary>Whether the gap is small enough for the maximum.</summary>
        internal required bool IsMaximum { get; init; }

        internal int Iterations { get; }

        internal double Mass(int candidate) => candidate == cumulative.Length - 1
            ? Math.Exp(-cumulative[candidate])
            : Math.Exp(-cumulative[candidate]) * ElementaryFunctions.OneMinusExp(cumulative[candidate + 1] - cumulative[candidate]);

        internal double CdfAfter(int candidate) =>
            candidate == cumulative.Length - 1 ? 1 : ElementaryFunctions.OneMinusExp(cumulative[candidate + 1]);
    }
}
