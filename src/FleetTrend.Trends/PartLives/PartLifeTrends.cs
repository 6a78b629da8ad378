using FleetTrend.Observations.Lives;
using FleetTrend.Statistics.Lives;
using FleetTrend.Statistics.Norms;

namespace FleetTrend.Trends.PartLives;

/// <summary>Life distributions per part kind: for each type group as a whole, and for each base in it.</summary>
internal static class PartLifeTrends
{
    private const string Turnbull = "non-parametric maximum likelihood (Turnbull 1976)";

    /// <summary>Beyond so many different lives a tenth of an hour costs much time and shows nothing.</summary>
    private const int MostLivesToTheTenth = 2000;

    /// <summary>Trends by type group, kind and base, the whole group first, with q-values over all contrasts together.</summary>
    public static IReadOnlyList<PartLifeTrend> Of(IEnumerable<ObservedLife> lives, TrendParameters parameters)
    {
        var trends = lives
            .GroupBy(l => (l.TypeGroup, l.Kind))
            .OrderBy(g => g.Key.TypeGroup, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Kind, StringComparer.Ordinal)
            .SelectMany(g => OfKind(g.Key.TypeGroup, g.Key.Kind, [.. g], parameters))
            .ToList();
        var contrasts = Enumerable.Range(0, trends.Count).Where(i => trends[i].Contrast is not null).ToList();
        var q = FalseDiscovery.QValues([.. contrasts.Select(i => trends[i].Contrast!.PValue)]);
        for (var k = 0; k < contrasts.Count; k++)
            trends[contrasts[k]] = trends[contrasts[k]] with { Contrast = trends[contrasts[k]].Contrast! with { QValue = q[k] } };
        return trends;
    }

    private static IEnumerable<PartLifeTrend> OfKind(string typeGroup, string kind, List<ObservedLife> lives, TrendParameters parameters)
    {
        yield return Trend(typeGroup, kind, null, lives, null, parameters);
        foreach (var atBase in lives.GroupBy(l => l.Base, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            List<ObservedLife> here = [.. atBase];
            var elsewhere = here.Count == lives.Count ? null : lives.Where(l => l.Base != atBase.Key).ToList();
            yield return Trend(typeGroup, kind, atBase.Key, here, elsewhere, parameters);
        }
    }

    private static PartLifeTrend Trend(
        string typeGroup, string kind, string? atBase, List<ObservedLife> observed, List<ObservedLife>? elsewhere, TrendParameters parameters)
    {
        var lives = FittedLives.From(observed);
        var fits = lives.Failures >= parameters.MinimumFailuresForFit ? LifeFits.Of(lives, parameters) : [];
        var (curve, method) = Curve(lives);
        return new PartLifeTrend
        {
            TypeGroup = typeGroup,
            Kind = kind,
            Base = atBase,
            Lives = lives.Count,
            Failures = lives.Failures,
            LateEntries = lives.LateEntries,
            AgeUnknown = observed.Count(l => l.Exclusion == LifeExclusion.AgeUnknown),
            OtherExcluded = observed.Count - lives.Count - observed.Count(l => l.Exclusion == LifeExclusion.AgeUnknown),
            FailureRate = Figures.Rate(lives.Failures, lives.WatchedTenths, parameters.Confidence, "per 1,000 h on the part"),
            Curve = curve,
            CurveMethod = method,
            Fits = fits,
            NotEnoughData = fits.Count > 0 ? null : Reason(lives, parameters),
            Contrast = elsewhere is null ? null : BaseContrasts.Of(lives, FittedLives.From(elsewhere), parameters),
        };
    }

    private static (IReadOnlyList<LifeStep> Curve, string Method) Curve(FittedLives lives)
    {
        var isCoarse = lives.Lives.Count > MostLivesToTheTenth;
        var method = isCoarse ? $"{Turnbull}, ages widened to whole hours" : Turnbull;
        return TurnbullEstimate.Estimate(isCoarse ? lives.InWholeHours() : lives.Lives).Match(
            e => ((IReadOnlyList<LifeStep>)[.. e.Masses.Select(m => new LifeStep(m.Lower, Figures.Finite(m.Upper), m.Mass, m.Cdf))],
                e.ObservedFrom > 0 ? $"{method}, given survival to {e.ObservedFrom:0.0} h: no life was followed from younger" : method),
            reason => ([], $"no curve: {reason.Explanation}"));
    }

    private static string Reason(FittedLives lives, TrendParameters parameters) =>
        lives.Failures < parameters.MinimumFailuresForFit
            ? $"not enough data: {lives.Failures} {(lives.Failures == 1 ? "failure" : "failures")} among {lives.Count} lives, "
              + $"and a fit needs {parameters.MinimumFailuresForFit}"
            : $"not enough data: {lives.Failures} failures, and no distribution has a finite best fit to them";
}
