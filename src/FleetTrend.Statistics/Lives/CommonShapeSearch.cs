using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Maximises the likelihood of groups with a mu each and one tau: for given tau each mu is sought by itself, and the profile in tau, whose
/// slope and curvature follow from the groups' derivatives, is climbed by Newton steps from every hill over a row of shapes.
/// </summary>
internal sealed class CommonShapeSearch
{
    /// <summary>Largest variance of a scale in units of z: e^20 either way.</summary>
    private const double ScaleVarianceMax = 400;

    /// <summary>So many failures in each group leave the profile one hill.</summary>
    private const int ManyFailures = 20;

    /// <summary>Step of tau in the row of shapes from which the profile is climbed.</summary>
    private const double RowStep = 0.5;

    private readonly StandardDistribution family;
    private readonly IReadOnlyList<IReadOnlyList<Life>> groups;
    private readonly LikelihoodSearch[] searches;

    internal CommonShapeSearch(StandardDistribution family, IReadOnlyList<IReadOnlyList<Life>> groups)
    {
        this.family = family;
        this.groups = groups;
        searches = [.. groups.Select(g => new LikelihoodSearch(family, new LifeArrays(g)))];
    }

    internal long Lives => searches.Sum(s => s.Lives.Lives);

    internal long Failures => searches.Sum(s => s.Lives.Failures);

    internal NotEstimable? Refusal()
    {
        foreach (var search in searches)
        {
            if (LifeFitStart.ScaleRefusal(search.Lives) is { } refusal) return refusal;
        }

        return Array.Exists(searches, s => s.Lives.LatestGood > s.Lives.EarliestFailed) ? null : new NotEstimable(
            NotEstimableKind.NoFiniteMaximum, Failures,
            "In each group all failures can have happened at one single age: the shape has no upper end.");
    }

    /// <summary>The maximum, or null when it lies at an edge of the shapes or the scales are not held.</summary>
    internal Top? Maximise() => Climb(searches) is { } top && IsHeld(top) ? top : null;

    /// <summary>The maximum uphill from a tau, which with many failures in each group is the only one; the greatest of all where they are few.</summary>
    internal Top? MaximiseFrom(double tau) =>
        Array.TrueForAll(searches, s => s.Lives.Failures >= ManyFailures)
        && At(searches, [.. searches.Select(s => s.Lives.MeanLogAge())], tau) is { } from && Climb(searches, from) is { } top && IsHeld(top) ? top : Maximise();

    /// <summary>Profile limits of mu of one group less mu of another.</summary>
    internal (double Lower, double Upper) Limits(Top top, int over, int under, double standardError, double confidence)
    {
        var drop = Quantile.NormalTwoSided(confidence);
        var estimate = top.Mus[over] - top.Mus[under];
        return (Limit(-1), Limit(+1));

        double Excess(double difference) => Math.Sqrt(Math.Max(0, 2 * (top.Value - At(difference)))) - drop;

        // With the difference given, the one group's ages divided by its exponential make the two one group.
        double At(double difference)
        {
            var factor = Math.Exp(-difference);
            Life[] joined = [.. groups[under], .. groups[over].Select(l => new Life(l.Lower * factor, l.Upper * factor, l.Entry * factor, l.Count))];
            var others = searches.Where((_, g) => g != over && g != under);
            var value = Climb([new LikelihoodSearch(family, new LifeArrays(joined)), .. others])?.Value ?? double.NegativeInfinity;
            return value - (difference * searches[over].Lives.ExactWeight); // densities are per hour
        }

        double Limit(int side)
        {
            var reach = drop * standardError;
            while (Excess(estimate + (side * reach)) < 0)
            {
                reach *= 1.5;
                if (reach > 300) return side * double.PositiveInfinity;
            }

            return RootSearch.Find(Excess, estimate, estimate + (side * reach));
        }
    }

    private bool IsHeld(Top top) =>
        top.VarianceOfTau > 0 && Enumerable.Range(0, groups.Count).All(g => top.VarianceOfMu(g) * Math.Exp(2 * top.Tau) < ScaleVarianceMax);

    /// <summary>The greatest maximum of the profile in tau: every hill over a close row of shapes is climbed.</summary>
    private static Top? Climb(IReadOnlyList<LikelihoodSearch> parts)
    {
        var row = new List<Top>();
        var mus = parts.Select(p => p.Lives.MeanLogAge()).ToArray();
        for (var tau = -LikelihoodSearch.TauLimit; tau <= LikelihoodSearch.TauLimit; tau += RowStep)
        {
            if (At(parts, mus, tau) is not { } there) continue;
            mus = there.Mus;
            row.Add(there);
        }

        Top? best = null;
        for (var i = 0; i < row.Count; i++)
        {
            if ((i > 0 && row[i].Value < row[i - 1].Value) || (i < row.Count - 1 && row[i].Value < row[i + 1].Value)) continue;
            if (best?.Value >= row[i].Value + 1) continue; // between two shapes of the row it rises by less
            if (Climb(parts, row[i]) is { } top && !(best?.Value >= top.Value)) best = top;
        }

        return best is not null && row.TrueForAll(t => t.Value <= best.Value + 1e-6) ? best : null;
    }

    /// <summary>Newton steps from one point of the profile; null where they end at an edge of the shapes.</summary>
    private static Top? Climb(IReadOnlyList<LikelihoodSearch> parts, Top from)
    {
        var best = from;
        for (var step = 0; step < 60; step++)
        {
            if (Math.Abs(best.Tau) >= LikelihoodSearch.TauLimit) return null;
            var delta = best.Curve < 0 ? -best.Slope / best.Curve : Math.Sign(best.Slope);
            delta = Math.Clamp(delta, -1, 1);
            Top? next;
            while ((next = At(parts, best.Mus, best.Tau + delta)) is null || next.Value < best.Value - (1e-12 * Math.Abs(best.Value)))
            {
                delta /= 4;
                if (Math.Abs(delta) < 1e-14) return best;
            }

            best = next;
            if (Math.Abs(delta) < 1e-9) return best;
        }

        return null;
    }

    /// <summary>The groups' maxima for a given tau.</summary>
    private static Top? At(IReadOnlyList<LikelihoodSearch> parts, double[] starts, double tau)
    {
        var points = new LikelihoodPoint[parts.Count];
        var mus = new double[parts.Count];
        for (var g = 0; g < parts.Count; g++)
        {
            if (parts[g].GreatestAt(tau, starts[g]) is not { } peak) return null;
            mus[g] = peak.Mu;
            points[g] = peak.Point;
        }

        return new Top(tau, mus, points);
    }

    /// <summary>The groups' best mus for a tau, with the likelihood's derivatives there.</summary>
    internal sealed record Top(double Tau, double[] Mus, LikelihoodPoint[] Points)
    {
        internal double Value => Points.Sum(p => p.Value);

        /// <summary>Slope of the profile in tau.</summary>
        internal double Slope => Points.Sum(p => p.Tau);

        /// <summary>Its curvature: each mu follows tau so that its own slope stays zero.</summary>
        internal double Curve => Points.Sum(p => p.TauTau - (p.MuTau * p.MuTau / p.MuMu));

        internal double VarianceOfTau => -1 / Curve;

        internal double VarianceOfMu(int group) => (-1 / Points[group].MuMu) + (Follow(group) * Follow(group) * VarianceOfTau);

        internal double LogRatioStandardError(int over, int under)
        {
            var together = Follow(over) - Follow(under);
            return Math.Sqrt((-1 / Points[over].MuMu) - (1 / Points[under].MuMu) + (together * together * VarianceOfTau));
        }

        /// <summary>How mu of a group moves with tau along the profile.</summary>
        private double Follow(int group) => -Points[group].MuTau / Points[group].MuMu;
    }
}
