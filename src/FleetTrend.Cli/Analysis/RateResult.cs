using System.Text.Json.Serialization;
using FleetTrend.Records.Words;
using FleetTrend.Statistics;
using FleetTrend.Statistics.Norms;
using FleetTrend.Statistics.Rates;
using ScottPlot;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace FleetTrend.Cli.Analysis;

/// <summary>Rates of units, each against the others.</summary>
internal sealed class RateResult : IAnalysisResult
{
    private readonly double confidence;

    private RateResult(IReadOnlyList<UnitCount> counts, double confidence)
    {
        this.confidence = confidence;
        var events = counts.Sum(c => c.Events);
        CountExposure[] pairs = [.. counts.Select(c => new CountExposure(c.Events, c.ExposureHours))];
        Pooled = ClusteredRate.Estimate(pairs, confidence).Match(
            r => new PooledRate(r.Rate, r.Interval.Lower, JsonOutput.Finite(r.Interval.Upper), r.Dispersion),
            reason => Missing<PooledRate>("pooled", reason));
        var between = pairs.Length == 1
            ? new NotEstimable(NotEstimableKind.NoInformation, events, "One unit has no others to differ from.")
            : HierarchicalRates.Estimate(pairs, confidence, RatePrior.UniformShrinkage);
        BetweenUnits = between.Match(l => new RatesBetweenUnits(l.MeanRate, l.CoefficientOfVariation), reason => Missing<RatesBetweenUnits>("betweenUnits", reason));
        Units = Measured(counts, between);
    }

    /// <summary>All units together.</summary>
    [JsonPropertyName("pooled")]
    public PooledRate? Pooled { get; }

    /// <summary>What the units' rates are like, from the posterior that gives the shrunk rates; null where there is none.</summary>
    [JsonPropertyName("betweenUnits")]
    public RatesBetweenUnits? BetweenUnits { get; }

    /// <summary>Units in the order of the file.</summary>
    [JsonPropertyName("units")]
    public IReadOnlyList<RateRow> Units { get; }

    /// <summary>What is missing and why.</summary>
    [JsonPropertyName("notes")]
    public List<AnalysisNote> Notes { get; } = [];

    /// <summary>Analyses the units.</summary>
    public static RateResult Estimate(IReadOnlyList<UnitCount> counts, double confidence) => new(counts, confidence);

    /// <inheritdoc/>
    public string Json() => JsonOutput.Write(this);

    /// <inheritdoc/>
    public IEnumerable<IRenderable> Tables()
    {
        var table = Words.Table(
            "Rates, each unit against the others", "unit", "events", "exposure", "rate", NumberWords.PercentInFull(confidence), "shrunk", NumberWords.PercentInFull(confidence),
            "p", "q");
        foreach (var u in Units)
        {
            table.Row(
                u.Unit, $"{u.Events}", Words.Format(u.Exposure), Optional(u.Rate), Range(u.Lower, u.Upper), Optional(u.ShrunkRate),
                Range(u.ShrunkLower, u.ShrunkUpper), Optional(u.PValue), Optional(u.QValue));
        }
        yield return table;
        if (Pooled is { } pooled)
        {
            yield return new Text(
                $"Pooled: {Words.Format(pooled.Rate)} per unit of exposure ({Range(pooled.Lower, pooled.Upper)}, {NumberWords.PercentInFull(confidence)}), "
                + $"{Units.Sum(u => u.Events)} events in {Words.Format(Units.Sum(u => u.Exposure))}{Spread(pooled.Dispersion)}.");
        }
        if (BetweenUnits is { } between)
        {
            yield return new Text(
                $"Between units: mean rate {Words.Format(between.MeanRate)}, coefficient of variation {Words.Format(between.CoefficientOfVariation)} (posterior means).");
        }
        foreach (var line in Words.Format(Notes))
            yield return line;
        yield return new Text(
            "Limits of a unit: exact Poisson (Garwood 1936); pooled: units as clusters, Student's t (Mancl and DeRouen 2001), dispersion near 1 where they have one rate. p: chance of so many events or more at the others' rate, exact given the total; "
            + "q: false discovery rate over the units (Benjamini and Hochberg 1995). Shrunk: median and equal-tailed limits of one posterior, "
            + $"averaged over the distributions of rates that the counts allow (George, Makov and Smith 1993; {RatePrior.UniformShrinkage.Description}).");
        yield return new Text(Words.Caution);
    }

    /// <inheritdoc/>
    public Plot Draw()
    {
        var plot = AnalysisPlot.New("Rate by unit, with limits", "events per unit of exposure", "");
        var known = Units.Where(u => u.Rate is not null).ToList();
        for (var i = 0; i < known.Count; i++)
        {
            var y = known.Count - i;
            AnalysisPlot.Segment(plot, known[i].Lower!.Value, known[i].Upper!.Value, y);
            plot.Add.Marker(known[i].Rate!.Value, y, MarkerShape.FilledCircle, 7, Colors.Black);
        }
        AnalysisPlot.Labels(plot, [.. known.Select(u => u.Unit)]);
        if (Pooled is { } pooled)
            plot.Add.VerticalLine(pooled.Rate, 1, Colors.Gray);
        return plot;
    }

    private RateRow[] Measured(IReadOnlyList<UnitCount> counts, Outcome<HierarchicalRates> between)
    {
        var test = LeaveOneOutTest.Test([new NormStratum("all", counts)]);
        var q = FalseDiscovery.QValues([.. test.Standings.Select(s => s.UpperPValue)]);
        var standing = test.Standings.Zip(q).ToDictionary(s => s.First.Unit, s => (P: s.First.UpperPValue, Q: s.Second), StringComparer.Ordinal);
        var shrunk = between.TryGetValue(out var rates) ? rates.Units : null;
        foreach (var unit in test.NotComparable)
            Notes.Add(new AnalysisNote("units", nameof(NotEstimableKind.NothingObserved), $"Unit {unit} has no exposure or no others to be compared with."));
        return [.. counts.Select((c, i) =>
        {
            var rate = RateEstimate.Estimate(c.Events, c.ExposureHours, confidence);
            var compared = standing.TryGetValue(c.Unit, out var values);
            return new RateRow(
                c.Unit, c.Events, c.ExposureHours,
                rate.IsEstimated ? rate.Value.Rate : null, rate.IsEstimated ? rate.Value.Interval.Lower : null,
                rate.IsEstimated ? rate.Value.Interval.Upper : null,
                shrunk?[i].MedianRate, shrunk?[i].RateInterval.Lower, shrunk?[i].RateInterval.Upper, compared ? values.P : null, compared ? values.Q : null);
        })];
    }

    private T? Missing<T>(string about, NotEstimable reason)
        where T : class
    {
        Notes.Add(AnalysisNote.Describe(about, reason));
        return null;
    }

    private static string Spread(double? dispersion) => dispersion is { } d ? $", dispersion {Words.Format(d)}" : "";

    private static string Optional(double? value) => value is { } v ? Words.Format(v) : "not known";

    private static string Range(double? lower, double? upper) => lower is { } l ? $"{Words.Format(l)} to {Optional(upper)}" : "not known";
}
