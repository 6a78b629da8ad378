using FleetTrend.Observations.Lives;
using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.FailureChances;

/// <summary>
/// Life distributions of the kinds of part of a type group: the law that fits all of them better, as the part lives show it. A base where parts of a kind
/// last differently (one of its two tests at the false-discovery rate, taken alone) has a fit of its own, and the others one without it.
/// </summary>
internal sealed class LifeLaws
{
    /// <summary>Beyond so many different lives a tenth of an hour costs much time and shows nothing.</summary>
    private const int MostLivesToTheTenth = 2000;

    private readonly Dictionary<(string Kind, string? Base), LifeLaw> laws = [];

    private LifeLaws()
    {
    }

    /// <summary>All of them, by kind, that of all bases first.</summary>
    public IReadOnlyList<LifeLaw> All =>
        [.. laws.Values.OrderBy(l => l.Kind, StringComparer.Ordinal).ThenBy(l => l.Base is not null).ThenBy(l => l.Base, StringComparer.Ordinal)];

    /// <summary>Fits them.</summary>
    /// <param name="inputs">The type group.</param>
    /// <param name="lives">Its lives, as they were known at some day.</param>
    public static LifeLaws Fit(TypeGroupInputs inputs, IEnumerable<ObservedLife> lives)
    {
        var found = new LifeLaws();
        var trends = inputs.PartLives.ToLookup(t => t.Kind, StringComparer.Ordinal);
        foreach (var kind in lives.GroupBy(l => l.Kind.Name, StringComparer.Ordinal))
        {
            if (trends[kind.Key].FirstOrDefault(t => t.Base is null)?.Shown is not { } shown)
                continue;
            var different = trends[kind.Key]
                .Where(t => t is { Base: not null, Shown: not null })
                .Where(t => BaseContrasts.Tests(t.Contrast).Any(c => c.PValue <= inputs.Parameters.FalseDiscoveryRate))
                .ToDictionary(t => t.Base!, t => t.Shown!.Distribution, StringComparer.Ordinal);
            found.Add(inputs, kind.Key, null, shown.Distribution, kind.Where(l => !different.ContainsKey(l.Base)));
            foreach (var (name, distribution) in different)
                found.Add(inputs, kind.Key, name, distribution, kind.Where(l => l.Base == name));
        }

        return found;
    }

    /// <summary>That of a kind at a base; null where too few have failed.</summary>
    public LifeLaw? Of(string kind, string atBase) => laws.GetValueOrDefault((kind, atBase)) ?? laws.GetValueOrDefault((kind, null));

    private void Add(TypeGroupInputs inputs, string kind, string? atBase, string distribution, IEnumerable<ObservedLife> lives)
    {
        var fitted = FittedLives.From(lives);
        if (fitted.Failures < inputs.Parameters.MinimumFailuresForFit)
            return;
        var counted = fitted.Lives.Count > MostLivesToTheTenth ? fitted.InWholeHours() : fitted.Lives;
        if (LifeFit.Fit(LifeFits.Family(distribution), counted, inputs.Parameters.Confidence).TryGetValue(out var fit))
        {
            laws.Add(
                (kind, atBase),
                new LifeLaw(kind, atBase, distribution, fitted.Failures, fitted.Count) { Fit = fit, Estimate = fit.Estimate, Behind = fitted });
        }
    }
}
