namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Newton's direction where the envelope is too large for a Cholesky factor: exact ages among intervals, each of which spans thousands
/// of them. Conjugate gradients with the diagonal as preconditioner; one product with the Hessian is a pass over the intervals.
/// </summary>
/// <remarks>
/// An exact age adds 1/step squared to the diagonal, an interval over a share d of the cumulative hazard only 1/d squared to each step in
/// it, so that the preconditioned Hessian's condition is about the share of what the intervals hide, whatever the number of rows.
/// Source: Hestenes and Stiefel 1952; stopping short of the solution, Dembo, Eisenstat and Steihaug 1982.
/// </remarks>
internal sealed class TurnbullConjugateGradient
{
    private const int StepsMax = 300;
    private const double Reduction = 1e-4;

    private readonly int n;
    private readonly double[] alone; // diagonal from ranges that hold one free step
    private readonly double[] diagonal;
    private readonly int[] from;
    private readonly int[] to;
    private readonly double[] stiffness;
    private readonly double[] sums;
    private readonly double[] ends;

    internal TurnbullConjugateGradient(TurnbullProblem problem, double[] cumulative, int freeCount, int[] freeBefore)
    {
        n = freeCount;
        (alone, sums, ends) = (new double[n], new double[n + 1], new double[n + 1]);
        var (a, b, c) = (new List<int>(), new List<int>(), new List<double>());
        for (var i = 0; i < problem.First.Length; i++)
        {
            var (first, end) = (freeBefore[problem.First[i]], freeBefore[problem.End[i]]);
            if (end <= first) continue;
            var gone = ElementaryFunctions.OneMinusExp(cumulative[problem.End[i]] - cumulative[problem.First[i]]);
            var value = problem.Weight[i] * (1 - gone) / (gone * gone);
            if (end == first + 1)
            {
                alone[first] += value;
                continue;
            }

            a.Add(first);
            b.Add(end);
            c.Add(value);
            ends[first] += value;
            ends[end] -= value;
        }

        (from, to, stiffness) = ([.. a], [.. b], [.. c]);
        diagonal = new double[n];
        double running = 0, largest = 0;
        for (var k = 0; k < n; k++)
        {
            running += ends[k];
            diagonal[k] = alone[k] + Math.Max(0, running);
            largest = Math.Max(largest, diagonal[k]);
        }

        for (var k = 0; k < n; k++) diagonal[k] += 1e-15 * largest;
    }

    /// <summary>Multiplications so far, about.</summary>
    internal double Work { get; private set; }

    /// <summary>The change of each free step for the given slopes.</summary>
    internal double[] Direction(double[] slopes)
    {
        var (solution, residual) = (new double[n], (double[])slopes.Clone());
        var (scaled, along, product) = (new double[n], new double[n], new double[n]);
        for (var k = 0; k < n; k++) along[k] = scaled[k] = residual[k] / diagonal[k];
        var size = Vectors.Dot(residual, scaled);
        var enough = Reduction * Reduction * size;
        for (var taken = 0; taken < StepsMax && size > enough; taken++)
        {
            Work += (8.0 * n) + (4.0 * from.Length);
            Multiply(along, product);
            var curvature = Vectors.Dot(along, product);
            if (!(curvature > 0)) break;
            var step = size / curvature;
            for (var k = 0; k < n; k++)
            {
                solution[k] += step * along[k];
                residual[k] -= step * product[k];
                scaled[k] = residual[k] / diagonal[k];
            }

            var next = Vectors.Dot(residual, scaled);
            var share = next / size;
            size = next;
            for (var k = 0; k < n; k++) along[k] = scaled[k] + (share * along[k]);
        }

        return solution;
    }

    private void Multiply(double[] x, double[] product)
    {
        double sum = 0;
        for (var k = 0; k < n; k++)
        {
            sums[k] = sum;
            sum += x[k];
        }

        sums[n] = sum;
        Array.Clear(ends);
        for (var i = 0; i < from.Length; i++)
        {
            var force = stiffness[i] * (sums[to[i]] - sums[from[i]]);
            ends[from[i]] += force;
            ends[to[i]] -= force;
        }

        double running = 0;
        for (var k = 0; k < n; k++)
        {
            running += ends[k];
            product[k] = (alone[k] * x[k]) + running;
        }
    }
}
