using System.Text.Json.Serialization;
using FleetTrend.Records.Words;
using FleetTrend.Statistics.Lives;
using ScottPlot;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace FleetTrend.Cli.Analysis;

/// <summary>Lives: non-parametric estimate and fitted distributions.</summary>
internal sealed class LifeResult : IAnalysisResult
{
    /// <summary>Rows of the printed table; the JSON has every interval.</summary>
    private const int PrintedMasses = 40;

    private readonly double confidence;
    private readonly List<LifeFit> fits = [];

    private LifeResult(IReadOnlyList<Life> lives, double confidence)
    {
        this.confidence = confidence;
        Lives = lives.Sum(l => (long)l.Count);
        Failures = lives.Where(l => l.Failed).Sum(l => (long)l.Count);
        var estimate = TurnbullEstimate.Estimate(lives);
        if (!estimate.IsEstimated)
            Notes.Add(AnalysisNote.Describe("nonparametric", estimate.Reason));
        Nonparametric = estimate.IsEstimated
            ? [.. estimate.Value.Masses.Select(m => new LifeMassRow(m.Lower, JsonOutput.Finite(m.Upper), m.Mass, m.Cdf))]
            : [];
        foreach (var distribution in Enum.GetValues<LifeDistribution>())
        {
            var fit = LifeFit.Fit(distribution, lives, confidence);
            if (fit.IsEstimated)
                fits.Add(fit.Value);
            else
                Notes.Add(AnalysisNote.Describe($"fits.{LifeFitValues.Name(distribution)}", fit.Reason));
        }
        Fits = [.. fits.Select(LifeFitValues.Build)];
    }

    /// <summary>Lives, counts included.</summary>
    [JsonPropertyName("lives")]
    public long Lives { get; }

    /// <summary>Failures among them.</summary>
    [JsonPropertyName("failures")]
    public long Failures { get; }

    /// <summary>Non-parametric estimate: intervals that carry mass.</summary>
    [JsonPropertyName("nonparametric")]
    public IReadOnlyList<LifeMassRow> Nonparametric { get; }

    /// <summary>Fitted distributions; one without a finite maximum is in the notes instead.</summary>
    [JsonPropertyName("fits")]
    public IReadOnlyList<LifeFitValues> Fits { get; }

    /// <summary>What is missing and why.</summary>
    [JsonPropertyName("notes")]
    public List<AnalysisNote> Notes { get; } = [];

    /// <summary>Analyses the lives.</summary>
    public static LifeResult Estimate(IReadOnlyList<Life> lives, double confidence) => new(lives, confidence);

    /// <inheritdoc/>
    public string Json() => JsonOutput.Write(this);

    /// <inheritdoc/>
    public IEnumerable<IRenderable> Tables()
    {
        yield return new Text($"{Failures} failures among {Lives} lives.");
        var table = Words.Table(
            $"Fitted distributions, {NumberWords.PercentInFull(confidence)} profile-likelihood limits", "distribution", "parameter", "value", "limits", "AIC", "log-likelihood");
        foreach (var fit in fits)
        {
            foreach (var parameter in fit.Parameters)
            {
                var first = ReferenceEquals(parameter.Name, fit.Parameters[0].Name);
                table.Row(
                    first ? LifeFitValues.Name(fit.Distribution) : "", parameter.Name, Words.Format(parameter.Value), Words.Format(parameter.Interval),
                    first ? Words.Format(fit.Aic) : "", first ? Words.Format(fit.LogLikelihood) : "");
            }
            foreach (var quantile in LifeFitValues.Build(fit).Quantiles)
                table.Row("", $"age by which {NumberWords.PercentInFull(quantile.P)} fail", Words.Format(quantile.Value), $"{Words.Format(quantile.Lower ?? 0)} to {Words.Format(quantile.Upper ?? double.PositiveInfinity)}", "", "");
        }
        yield return table;
        var masses = Words.Table("Non-parametric estimate (Turnbull)", "after", "by", "mass", "failed by then");
        var every = Math.Max(1, (int)Math.Ceiling(Nonparametric.Count / (double)PrintedMasses));
        foreach (var m in Nonparametric.Where((_, i) => (Nonparametric.Count - 1 - i) % every == 0))
            masses.Row(Words.Format(m.Lower), m.Upper is { } u ? Words.Format(u) : "later", Words.Format(m.Mass), Words.Format(m.Cdf));
        yield return masses;
        foreach (var line in Words.Format(Notes))
            yield return line;
        yield return new Text("Maximum likelihood on lives known to lie between two looks, with late entry: IEC 61649, Turnbull 1976. Smaller AIC is better; differences below 2 mean little.");
        yield return new Text(Words.Caution);
    }

    /// <inheritdoc/>
    public Plot Draw()
    {
        var plot = AnalysisPlot.New("Share failed by age", "age", "share failed");
        var known = Nonparametric.Where(m => m.Upper is not null).ToList();
        var end = known.Count > 0 ? known[^1].Upper!.Value * 1.05 : fits.Count > 0 ? fits[0].Model.Quantile(0.9) : 1;
        AnalysisPlot.Steps(plot, [.. known.Select(m => (m.Upper!.Value, m.Cdf))], end, Colors.Black, 2, "non-parametric, at the later end");
        ScottPlot.Color[] colors = [Colors.Blue, Colors.Red, Colors.Gray, Colors.Green];
        for (var k = 0; k < fits.Count; k++)
        {
            double[] ages = [.. Enumerable.Range(1, 200).Select(i => end * i / 200)];
            AnalysisPlot.Curve(plot, ages, Array.ConvertAll(ages, fits[k].Model.Cdf), colors[k], 1, LifeFitValues.Name(fits[k].Distribution));
        }
        plot.ShowLegend(Alignment.UpperLeft);
        return plot;
    }
}
