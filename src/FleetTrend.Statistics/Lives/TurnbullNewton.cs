namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Newton's direction for the free hazard steps. In the cumulative hazard after each free step the negative Hessian is the sum of
/// c (e_b - e_a)(e_b - e_a)' over intervals: a network of springs, positive definite up to a ridge, with a narrow envelope.
/// </summary>
internal sealed class TurnbullNewton
{
    private const double Ridge = 1e-9;

    /// <summary>Sum of squared row lengths up to which the Cholesky factor is the quicker way: about a tenth of a second.</summary>
    private const double FactorMax = 2e8;

    private readonly int[] free;
    private readonly double[] gradient;
    private readonly int[] start; // first column of each row's envelope
    private readonly double[][] rows = []; // lower triangle, rows[k][c - start[k]]
    private readonly TurnbullConjugateGradient? conjugate; // in place of the factor, where that would take too long

    internal TurnbullNewton(TurnbullProblem problem, double[] cumulative, double[] gradient, int[] free)
    {
        this.free = free;
        this.gradient = gradient;
        var before = CountBefore(free, problem.CandidateCount);
        var (first, end, weight) = (problem.First, problem.End, problem.Weight);
        start = new int[free.Length];
        for (var k = 0; k < free.Length; k++) start[k] = k;
        for (var i = 0; i < first.Length; i++)
        {
            var (a, b) = (before[first[i]] - 1, before[end[i]] - 1);
            if (a >= 0 && b > a) start[b] = Math.Min(start[b], a);
        }

        for (var k = 0; k < free.Length; k++) Work += (double)(k - start[k] + 1) * (k - start[k] + 1);
        if (Work > FactorMax)
        {
            conjugate = new TurnbullConjugateGradient(problem, cumulative, free.Length, before);
            return;
        }

        rows = new double[free.Length][];
        for (var k = 0; k < free.Length; k++) rows[k] = new double[k - start[k] + 1];
        for (var i = 0; i < first.Length; i++)
        {
            var (a, b) = (before[first[i]] - 1, before[end[i]] - 1);
            if (b <= a) continue;
            var gone = ElementaryFunctions.OneMinusExp(cumulative[end[i]] - cumulative[first[i]]);
            var stiffness = weight[i] * (1 - gone) / (gone * gone);
            rows[b][^1] += stiffness;
            if (a < 0) continue;
            rows[a][^1] += stiffness;
            rows[b][a - start[b]] -= stiffness;
        }
    }

    /// <summary>Multiplications that the direction takes, about.</summary>
    internal double Work { get; private set; }

    /// <summary>The change of each free step.</summary>
    internal double[] Direction()
    {
        if (conjugate is not null)
        {
            var direction = conjugate.Direction(Array.ConvertAll(free, j => gradient[j]));
            Work = conjugate.Work;
            return direction;
        }

        Factor();
        var n = free.Length;
        var solution = new double[n];
        for (var k = 0; k < n; k++) solution[k] = gradient[free[k]] - (k + 1 < n ? gradient[free[k + 1]] : 0);
        for (var k = 0; k < n; k++)
        {
            var row = rows[k];
            var sum = solution[k] - Dot(row, solution.AsSpan(start[k]), row.Length - 1);
            solution[k] = sum / row[^1];
        }

        for (var k = n - 1; k >= 0; k--)
        {
            var row = rows[k];
            var value = solution[k] /= row[^1];
            for (var c = 0; c < row.Length - 1; c++) solution[start[k] + c] -= row[c] * value;
        }

        for (var k = n - 1; k > 0; k--) solution[k] -= solution[k - 1];
        return solution;
    }

    /// <summary>Cholesky factor in place, each row only from its first entry on.</summary>
    private void Factor()
    {
        double scale = 0;
        foreach (var row in rows) scale = Math.Max(scale, row[^1]);
        for (var k = 0; k < rows.Length; k++)
        {
            var row = rows[k];
            var from = start[k];
            row[^1] += Ridge * (row[^1] + (scale * 1e-6));
            for (var c = from; c < k; c++)
            {
                var other = rows[c];
                var shared = Math.Max(from, start[c]);
                var sum = Dot(row.AsSpan(shared - from), other.AsSpan(shared - start[c]), c - shared);
                row[c - from] = (row[c - from] - sum) / other[^1];
            }

            var rest = row[^1] - Dot(row, row, row.Length - 1);
            row[^1] = Math.Sqrt(Math.Max(rest, Ridge * row[^1]));
        }
    }

    private static double Dot(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int count) =>
        Vectors.Dot(x[..count], y[..count]);

    private static int[] CountBefore(int[] free, int candidates)
    {
        var before = new int[candidates + 1];
        foreach (var j in free) before[j + 1]++;
        for (var j = 1; j <= candidates; j++) before[j] += before[j - 1];
        return before;
    }
}
