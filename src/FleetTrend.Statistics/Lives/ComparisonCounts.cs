namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Expected failures and lives at risk per candidate interval and group under the pooled estimate, the weighted differences, and their
/// covariance with the missing information taken off.
/// </summary>
internal sealed class ComparisonCounts
{
    private readonly int groups;
    private readonly int cells;
    private readonly double[] mass;
    private readonly double[] survival; // before each cell
    private readonly double[][] failed;
    private readonly double[][] atRisk;
    private readonly double[] allFailed;
    private readonly double[] allAtRisk;
    private readonly double[] weight;

    internal ComparisonCounts(TurnbullEstimate pooled, IReadOnlyList<IReadOnlyList<Life>> lives, ComparisonWeight kind)
    {
        groups = lives.Count;
        cells = pooled.Problem.CandidateCount;
        mass = [.. Enumerable.Range(0, cells).Select(pooled.Solution.Mass)];
        survival = new double[cells + 1];
        for (var j = cells - 1; j >= 0; j--) survival[j] = survival[j + 1] + mass[j];
        failed = [.. lives.Select(_ => new double[cells])];
        atRisk = [.. lives.Select(_ => new double[cells])];
        for (var g = 0; g < groups; g++) Count(g, lives[g], pooled.Problem);
        allFailed = Total(failed);
        allAtRisk = Total(atRisk);
        weight = [.. Enumerable.Range(0, cells).Select(j => WeightOf(kind, j))];
        Observed = [.. failed.Select(f => f.Sum())];
        Expected = [.. Enumerable.Range(0, groups).Select(g => Sum(j => Share(g, j) * allFailed[j]))];
        Difference = [.. Enumerable.Range(0, groups).Select(g => Sum(j => weight[j] * (failed[g][j] - (Share(g, j) * allFailed[j]))))];
        Covariance = CovarianceOfCounts();
        for (var g = 0; g < groups; g++) TakeOffMissing(g, lives[g], pooled.Problem);
    }

    internal double[] Observed { get; }

    internal double[] Expected { get; }

    internal double[] Difference { get; }

    internal double[,] Covariance { get; }

    private double Share(int group, int cell) => allAtRisk[cell] > 0 ? atRisk[group][cell] / allAtRisk[cell] : 0;

    private double Sum(Func<int, double> term) => Enumerable.Range(0, cells).Sum(term);

    private double WeightOf(ComparisonWeight kind, int cell) => kind switch
    {
        ComparisonWeight.PetoPeto => survival[cell],
        ComparisonWeight.Gehan => allAtRisk[cell],
        ComparisonWeight.TaroneWare => Math.Sqrt(allAtRisk[cell]),
        _ => 1,
    };

    /// <summary>A life is at risk from its entry through the cell in which it fails, or through the cells before it was last good.</summary>
    private void Count(int group, IReadOnlyList<Life> lives, TurnbullProblem problem)
    {
        var (sure, share, shareEnd) = (new double[cells + 1], new double[cells + 1], new double[cells + 1]);
        foreach (var life in lives)
        {
            var (entry, first, end) = problem.RangeOf(life);
            sure[entry] += life.Count;
            sure[first] -= life.Count;
            if (!life.Failed) continue;
            var each = life.Count / (survival[first] - survival[end]);
            share[first] += each;
            share[end] -= each;
            shareEnd[first] += each * survival[end];
            shareEnd[end] -= each * survival[end];
        }

        double known = 0, open = 0, openEnd = 0;
        for (var j = 0; j < cells; j++)
        {
            (known, open, openEnd) = (known + sure[j], open + share[j], openEnd + shareEnd[j]);
            failed[group][j] = mass[j] * open;
            atRisk[group][j] = known + Math.Max(0, (survival[j] * open) - openEnd);
        }
    }

    private double[,] CovarianceOfCounts()
    {
        var covariance = new double[groups, groups];
        for (var j = 0; j < cells; j++)
        {
            var (d, n) = (allFailed[j], allAtRisk[j]);
            if (!(d > 0 && n > 1)) continue;
            var factor = weight[j] * weight[j] * d * Math.Max(0, n - d) / (n - 1);
            for (var g = 0; g < groups; g++)
            {
                for (var h = 0; h < groups; h++) covariance[g, h] += factor * Share(g, j) * ((g == h ? 1 : 0) - Share(h, j));
            }
        }

        return covariance;
    }

    /// <summary>
    /// Takes off the variance that a life's part of the differences still has when only its range is known: for group h that part is
    /// (own - share of h) at the age less the hazard gathered to it.
    /// </summary>
    private void TakeOffMissing(int group, IReadOnlyList<Life> lives, TurnbullProblem problem)
    {
        var parts = Enumerable.Range(0, groups).Select(h => PartByAge(group, h)).ToArray();
        var first = parts.Select(p => Prefix(j => mass[j] * p[j])).ToArray();
        var second = parts.Select(p => parts.Select(q => Prefix(j => mass[j] * p[j] * q[j])).ToArray()).ToArray();
        foreach (var life in lives)
        {
            if (!life.Failed) continue;
            var (_, from, end) = problem.RangeOf(life);
            var total = survival[from] - survival[end];
            for (var g = 0; g < groups; g++)
            {
                for (var h = 0; h < groups; h++)
                {
                    var product = (second[g][h][end] - second[g][h][from]) / total;
                    var means = (first[g][end] - first[g][from]) * (first[h][end] - first[h][from]) / (total * total);
                    Covariance[g, h] -= life.Count * (product - means);
                }
            }
        }
    }

    private double[] PartByAge(int own, int other)
    {
        var part = new double[cells];
        double gathered = 0;
        for (var j = 0; j < cells; j++)
        {
            var gap = (own == other ? 1 : 0) - Share(other, j);
            if (allAtRisk[j] > 0) gathered += weight[j] * gap * allFailed[j] / allAtRisk[j];
            part[j] = (weight[j] * gap) - gathered;
        }

        return part;
    }

    private double[] Prefix(Func<int, double> term)
    {
        var sums = new double[cells + 1];
        for (var j = 0; j < cells; j++) sums[j + 1] = sums[j] + term(j);
        return sums;
    }

    private double[] Total(double[][] byGroup) => [.. Enumerable.Range(0, cells).Select(j => byGroup.Sum(g => g[j]))];
}
