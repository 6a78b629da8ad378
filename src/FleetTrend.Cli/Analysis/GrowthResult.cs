using System.Text.Json.Serialization;
using FleetTrend.Records.Words;
using FleetTrend.Statistics;
using FleetTrend.Statistics.Recurrences;
using ScottPlot;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace FleetTrend.Cli.Analysis;

/// <summary>Whether events of units come more or less often.</summary>
internal sealed class GrowthResult : IAnalysisResult
{
    private readonly double confidence;
    private readonly IReadOnlyList<GrowthSpan> spans;

    private GrowthResult(IReadOnlyList<IReadOnlyList<GrowthSpan>> units, double confidence)
    {
        this.confidence = confidence;
        spans = [.. units.SelectMany(u => u)];
        Units = units.Count;
        Events = spans.Sum(s => s.Events);
        Exposure = spans.Sum(s => s.Exposure);
        LogLinear = Told("logLinear", GrowthFit.Estimate(units, GrowthLaw.LogLinear, GrowthLevels.Own, confidence));
        PowerLaw = Told("powerLaw", spans.Any(s => s.Start < 0)
            ? new NotEstimable(NotEstimableKind.NoInformation, Events, "A start is below zero: there is no age to count from.")
            : GrowthFit.Estimate(units, GrowthLaw.PowerLaw, GrowthLevels.Common, confidence));
    }

    /// <summary>Units, those without events included.</summary>
    [JsonPropertyName("units")]
    public int Units { get; }

    /// <summary>Events.</summary>
    [JsonPropertyName("events")]
    public int Events { get; }

    /// <summary>Exposure, summed over units.</summary>
    [JsonPropertyName("exposure")]
    public double Exposure { get; }

    /// <summary>Growth of the logarithm of the rate per unit of time, each unit with a level of its own; null where it can't be told.</summary>
    [JsonPropertyName("logLinear")]
    public GrowthValues? LogLinear { get; }

    /// <summary>Exponent of the mean count in age, levels of units scattered about one; null where it can't be told.</summary>
    [JsonPropertyName("powerLaw")]
    public GrowthValues? PowerLaw { get; }

    /// <summary>What is missing and why.</summary>
    [JsonPropertyName("notes")]
    public List<AnalysisNote> Notes { get; } = [];

    /// <summary>Analyses the units.</summary>
    public static GrowthResult Estimate(IReadOnlyList<IReadOnlyList<GrowthSpan>> units, double confidence) => new(units, confidence);

    /// <inheritdoc/>
    public string Json() => JsonOutput.Write(this);

    /// <inheritdoc/>
    public IEnumerable<IRenderable> Tables()
    {
        yield return new Text($"{Events} events on {Units} units in {Words.Format(Exposure)} of exposure.");
        var table = Words.Table("Growth", "law", "growth", NumberWords.PercentInFull(confidence), "none at", "p");
        foreach (var (law, growth, none) in new[] { ("log-linear, per unit of time", LogLinear, "0"), ("power law, exponent", PowerLaw, "1") })
        {
            if (growth is { } told)
                table.Row(law, Words.Format(told.Growth), $"{Words.Format(told.Lower)} to {Words.Format(told.Upper)}", none, told.PValue < 0.001 ? "below 0.001" : Words.Format(told.PValue));
        }

        yield return table;
        foreach (var line in Words.Format(Notes))
            yield return line;
        yield return new Text(
            "Log-linear: each unit given how many events it had (Cox and Lewis 1966). Power law: levels of units scattered about one (Crow 1975; MIL-HDBK-189). "
            + "Limits with units as clusters, Student's t (Liang and Zeger 1986; Kauermann and Carroll 2001; Mancl and DeRouen 2001).");
        yield return new Text(Words.Caution);
    }

    /// <inheritdoc/>
    public Plot Draw()
    {
        var plot = AnalysisPlot.New("Events so far, all units together", "time", "events");
        var sum = 0;
        AnalysisPlot.Steps(
            plot, [.. spans.Where(s => s.Events > 0).OrderBy(s => s.Stop).Select(s => (s.Stop, (double)(sum += s.Events)))],
            spans.Count == 0 ? 0 : spans.Max(s => s.Stop), Colors.Black, 2, "events");
        return plot;
    }

    private GrowthValues? Told(string about, Outcome<GrowthFit> fit)
    {
        if (fit.IsEstimated)
            return GrowthValues.Build(fit.Value);
        Notes.Add(AnalysisNote.Describe(about, fit.Reason));
        return null;
    }
}
