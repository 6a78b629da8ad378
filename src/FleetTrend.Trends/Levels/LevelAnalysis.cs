using FleetTrend.Statistics;
using FleetTrend.Statistics.Changes;
using FleetTrend.Statistics.Norms;
using FleetTrend.Trends.Expectations;

namespace FleetTrend.Trends.Levels;

/// <summary>
/// Levels of the aircraft and bases of a type group, shrunk towards each other; ranked by the chance to run above one and a half times the norm.
/// </summary>
public sealed class LevelAnalysis : Analysis<Level>
{
    private const string Method =
        "found over expected at the rates or lives of the others, averaged over the spread between units (George, Makov and Smith 1993)";

    private const string MethodOfMany =
        "found over expected at the rates or lives of the others, shrunk by the spread between units (Gaver and O'Muircheartaigh 1987)";

    /// <summary>Beyond so many units their spread is known so well that averaging over it changes little and costs seconds.</summary>
    private const int MostUnitsAveraged = 20;

    private const double High = 1.5;

    /// <summary>Makes the analysis.</summary>
    public LevelAnalysis()
        : base("levels")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(Level item) => new(Registration: item.Registration, Base: item.Base);

    /// <inheritdoc/>
    public override Headline HeadlineOf(Level item) => Headline.From(item.Condition?.ToString() ?? item.Kind ?? "", item.Ratio);

    /// <summary>Most probably high first; the same order for the same levels.</summary>
    public override IEnumerable<Level> Order(IEnumerable<Level> items) => items
        .OrderByDescending(l => l.ChanceAboveOneAndAHalf)
        .ThenBy(l => l.TypeGroup, StringComparer.Ordinal)
        .ThenBy(l => l.Registration, StringComparer.Ordinal)
        .ThenBy(l => l.Base, StringComparer.Ordinal)
        .ThenBy(l => l.Condition).ThenBy(l => l.Kind, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<Level> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        var expectations = inputs.Expectations;
        return expectations.ByAircraft.Zip(expectations.AircraftSpreads).SelectMany(p => Estimate(inputs, p.First, p.Second, isBase: false))
            .Concat(expectations.ByBase.Zip(expectations.BaseSpreads).SelectMany(p => Estimate(inputs, p.First, p.Second, isBase: true)))
            .OrderBy(l => l.Registration is null).ThenBy(l => l.Registration, StringComparer.Ordinal).ThenBy(l => l.Base, StringComparer.Ordinal)
            .ThenBy(l => l.Condition).ThenBy(l => l.Kind, StringComparer.Ordinal);
    }

    private static IEnumerable<Level> Estimate(TypeGroupInputs inputs, ClassPanel panel, RateSpread spread, bool isBase)
    {
        List<(string Name, int Found, double Expected)> units = [.. panel.Panel.Units.Zip(RateSpread.Expectations(panel.Panel))
            .Where(u => u.Second.Expected > 0).Select(u => (u.First.Name, u.Second.Found, u.Second.Expected))];
        var estimates = units.Count > MostUnitsAveraged
            ? Known(units, spread, inputs.Parameters.Confidence)
            : Averaged(units, spread.Dispersion, inputs.Parameters.Confidence);
        return units.Zip(estimates, (unit, estimate) => new Level
        {
            TypeGroup = inputs.TypeGroup,
            Registration = isBase ? null : unit.Name,
            Base = isBase ? unit.Name : inputs.BaseOf(unit.Name),
            Condition = panel.Class.Condition,
            Kind = panel.Class.Kind,
            Found = unit.Found,
            Expected = unit.Expected,
            Ratio = new Figure
            {
                Value = estimate.Ratio,
                Lower = estimate.Interval.Lower,
                Upper = estimate.Interval.Upper,
                Confidence = inputs.Parameters.Confidence,
                Unit = "",
                Events = unit.Found,
                Method = units.Count > MostUnitsAveraged ? MethodOfMany : Method,
            },
            ChanceAboveOneAndAHalf = estimate.Above,
            Variation = estimate.Variation,
        });
    }

    // Findings in bunches tell as much as so many fewer single ones.
    private static IEnumerable<(double Ratio, Interval Interval, double Above, double Variation)> Averaged(
        List<(string Name, int Found, double Expected)> units, double dispersion, double confidence) =>
        HierarchicalRates.Estimate(
            [.. units.Select(u => new CountExposure((int)Math.Round(u.Found / dispersion), u.Expected / dispersion))], confidence).Match(
            rates => rates.Units.Select(u => (u.Ratio, u.RatioInterval, u.ExceedanceProbability(High), rates.CoefficientOfVariation)),
            _ => []);

    private static IEnumerable<(double Ratio, Interval Interval, double Above, double Variation)> Known(
        List<(string Name, int Found, double Expected)> units, RateSpread spread, double confidence) => units
        .Select(u => new GammaPosterior(spread.Shape + u.Found / spread.Dispersion, spread.Shape + u.Expected / spread.Dispersion, confidence))
        .Select(p => (p.Mean, p.Interval, p.Above(High), 1 / Math.Sqrt(spread.Shape)));
}
