using System.Text.Json.Serialization;
using FleetTrend.Records.Words;
using FleetTrend.Statistics;
using FleetTrend.Statistics.Rates;
using FleetTrend.Statistics.Recurrences;
using ScottPlot;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace FleetTrend.Cli.Analysis;

/// <summary>Recurrences of units: mean by age, trend, rate.</summary>
internal sealed class RecurrenceResult : IAnalysisResult
{
    /// <summary>Rows of the printed table; the JSON has every point.</summary>
    private const int PrintedPoints = 40;

    private readonly double confidence;
    private readonly MeanCumulativeFunction? mean;

    private RecurrenceResult(IReadOnlyList<RecurrenceUnit> units, double confidence)
    {
        this.confidence = confidence;
        Units = units.Count;
        Events = units.Sum(u => u.EventTimes.Count);
        Exposure = units.Sum(u => u.ExposureHours);
        var function = MeanCumulativeFunction.Estimate(units, confidence);
        mean = function.IsEstimated ? function.Value : Missing<MeanCumulativeFunction>("meanCumulative", function.Reason);
        MeanCumulative = [.. (mean?.Points ?? []).Select(p => new MeanCumulativeRow(p.Time, p.Value, p.StandardError, p.Lower, p.Upper))];
        if (mean is { Variance: McfVariance.Poisson })
            Notes.Add(new AnalysisNote("meanCumulative", "SingleUnit", "One unit shows no spread between units: its standard errors are Poisson."));
        PowerLaw = PowerLawProcess.Fit(units, confidence).Match(PowerLawValues.Build, r => Missing<PowerLawValues>("powerLaw", r));
        Laplace = LaplaceTest.Test(units).Match(t => new LaplaceValues(t.Statistic, t.PValue), r => Missing<LaplaceValues>("laplace", r));
        Rate = RateEstimate.Estimate(Events, Exposure, confidence)
            .Match(r => new RateValues(r.Rate, r.Interval.Lower, r.Interval.Upper), r => Missing<RateValues>("rate", r));
    }

    /// <summary>Units, those without events included.</summary>
    [JsonPropertyName("units")]
    public int Units { get; }

    /// <summary>Events.</summary>
    [JsonPropertyName("events")]
    public int Events { get; }

    /// <summary>Time under observation, summed over units.</summary>
    [JsonPropertyName("exposure")]
    public double Exposure { get; }

    /// <summary>Mean cumulative function at each event age.</summary>
    [JsonPropertyName("meanCumulative")]
    public IReadOnlyList<MeanCumulativeRow> MeanCumulative { get; }

    /// <summary>Power-law process.</summary>
    [JsonPropertyName("powerLaw")]
    public PowerLawValues? PowerLaw { get; }

    /// <summary>Laplace trend test.</summary>
    [JsonPropertyName("laplace")]
    public LaplaceValues? Laplace { get; }

    /// <summary>Rate with exact limits.</summary>
    [JsonPropertyName("rate")]
    public RateValues? Rate { get; }

    /// <summary>What is missing and why.</summary>
    [JsonPropertyName("notes")]
    public List<AnalysisNote> Notes { get; } = [];

    /// <summary>Analyses the units.</summary>
    public static RecurrenceResult Estimate(IReadOnlyList<RecurrenceUnit> units, double confidence) => new(units, confidence);

    /// <inheritdoc/>
    public string Json() => JsonOutput.Write(this);

    /// <inheritdoc/>
    public IEnumerable<IRenderable> Tables()
    {
        yield return new Text($"{Events} events on {Units} units in {Words.Format(Exposure)} of exposure.");
        if (Rate is { } rate)
            yield return new Text($"Rate: {Words.Format(rate.Value)} ({Words.Format(rate.Lower)} to {Words.Format(rate.Upper)}, {NumberWords.PercentInFull(confidence)}, exact Poisson).");
        if (PowerLaw is { } process)
        {
            yield return new Text(
                $"Power law: exponent {Words.Format(process.Exponent)} ({Words.Format(process.Intervals.Exponent)}, "
                + $"{process.Intervals.Method}), scale {Words.Format(process.Scale)}; above 1 the rate rises with age, below 1 it falls.");
        }
        if (Laplace is { } laplace)
        {
            var p = laplace.PValue < 0.001 ? "below 0.001" : Words.Format(laplace.PValue); // the normal approximation is rough further out
            yield return new Text($"Laplace trend test: {Words.Format(laplace.Statistic)}, p {p} (two-sided, approximate).");
        }
        var table = Words.Table("Mean cumulative number of events per unit", "age", "at risk", "mean", "error", NumberWords.PercentInFull(confidence));
        var points = mean?.Points ?? [];
        var every = Math.Max(1, (int)Math.Ceiling(points.Count / (double)PrintedPoints));
        foreach (var p in points.Where((_, i) => (points.Count - 1 - i) % every == 0))
            table.Row(Words.Format(p.Time), $"{p.AtRisk}", Words.Format(p.Value), Words.Format(p.StandardError), $"{Words.Format(p.Lower)} to {Words.Format(p.Upper)}");
        yield return table;
        if (every > 1)
            yield return new Text($"One of every {every} ages is printed; --json has all {points.Count}.");
        foreach (var line in Words.Format(Notes))
            yield return line;
        yield return new Text("Mean cumulative function: Nelson 1995; standard errors from the spread between units, Lawless and Nadeau 1995; limits on the logarithm with Student's t.");
        yield return new Text(Words.Caution);
    }

    /// <inheritdoc/>
    public Plot Draw()
    {
        var plot = AnalysisPlot.New("Mean cumulative number of events", "age", "events per unit");
        if (mean is not null)
        {
            AnalysisPlot.Steps(plot, [.. mean.Points.Select(p => (p.Time, p.Value))], mean.To, Colors.Black, 2, "mean");
            AnalysisPlot.Steps(plot, [.. mean.Points.Select(p => (p.Time, p.Lower))], mean.To, Colors.Gray, 1, $"{NumberWords.PercentInFull(confidence)} limits");
            AnalysisPlot.Steps(plot, [.. mean.Points.Select(p => (p.Time, p.Upper))], mean.To, Colors.Gray, 1, "");
            plot.ShowLegend(Alignment.UpperLeft);
        }
        return plot;
    }

    private T? Missing<T>(string about, NotEstimable reason)
        where T : class
    {
        Notes.Add(AnalysisNote.Describe(about, reason));
        return null;
    }
}
