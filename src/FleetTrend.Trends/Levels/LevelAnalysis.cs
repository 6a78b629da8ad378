using FleetTrend.Statistics;
using FleetTrend.Statistics.Changes;
using FleetTrend.Statistics.Norms;
using FleetTrend.Trends.Expectations;

namespace FleetTrend.Trends.Levels;

/// <summary>
/// Levels of the aircraft, bases and locations of a type group, shrunk towards each other; ranked by the chance to run above one and a half times the norm.
/// </summary>
public sealed class LevelAnalysis : Analysis<Level>
{
    private const string Method =
        "found over expected at the rates or lives of the others, averaged over the spread between units (George, Makov and Smith 1993)";

    private const string MethodOfMany =
        "found over expected at the rates or lives of the others, shrunk by the spread between units (Gaver and O'Muircheartaigh 1987)";

    /// <summary>Beyond so many units their spread is known so well that averaging over it changes little and costs seconds.</summary>
    private const int MostUnitsAveraged = 100;

    private const double High = 1.5;
    private const double SmallestWeight = 1e-3;

    /// <summary>Of a kind with more locations than are averaged: welds of a kind differ about as much as a coefficient of variation of one half.</summary>
    private const double LocationShape = 4;

    /// <summary>Makes the analysis.</summary>
    public LevelAnalysis()
        : base("levels")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(Level item) => new(Registration: item.Registration, Base: item.Base, Location: item.Location);

    /// <inheritdoc/>
    public override Headline HeadlineOf(Level item) => Headline.From(item.Condition?.ToString() ?? item.Kind ?? "", item.Ratio);

    /// <summary>Most probably high first; the same order for the same levels.</summary>
    public override IEnumerable<Level> Order(IEnumerable<Level> items) => items
        .OrderByDescending(l => l.ChanceAboveOneAndAHalf)
        .ThenBy(l => l.TypeGroup, StringComparer.Ordinal)
        .ThenBy(l => l.Registration, StringComparer.Ordinal)
        .ThenBy(l => l.Base, StringComparer.Ordinal)
        .ThenBy(l => l.Location, StringComparer.Ordinal)
        .ThenBy(l => l.Condition).ThenBy(l => l.Kind, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<Level> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        var expectations = inputs.Expectations;
        return expectations.ByAircraft.Zip(expectations.AircraftSpreads).SelectMany(p => OfUnits(inputs, p.First, p.Second, isBase: false))
            .Concat(expectations.ByBase.Zip(expectations.BaseSpreads).SelectMany(p => OfUnits(inputs, p.First, p.Second, isBase: true)))
            .Concat(expectations.ByAircraft.Zip(expectations.AircraftSpreads).SelectMany(p => OfLocations(inputs, p.First, p.Second.Dispersion)))
            .OrderBy(l => l.Registration is null).ThenBy(l => l.Registration, StringComparer.Ordinal).ThenBy(l => l.Base, StringComparer.Ordinal)
            .ThenBy(l => l.Location, StringComparer.Ordinal).ThenBy(l => l.Condition).ThenBy(l => l.Kind, StringComparer.Ordinal);
    }

    private static IEnumerable<Level> OfUnits(TypeGroupInputs inputs, ClassPanel panel, RateSpread spread, bool isBase)
    {
        List<(string Name, int Found, double Expected)> units = [.. panel.Panel.Units.Zip(RateSpread.Expectations(panel.Panel))
            .Where(u => u.Second.Expected > 0).Select(u => (u.First.Name, u.Second.Found, u.Second.Expected))];
        return Estimate(inputs, panel, units, spread).Select(l => isBase
            ? l.Level with { Base = l.Name }
            : l.Level with { Registration = l.Name, Base = inputs.BaseOf(l.Name) });
    }

    /// <summary>Each location on all aircraft together, beside the others of its kind: is this weld bad everywhere?</summary>
    private static IEnumerable<Level> OfLocations(TypeGroupInputs inputs, ClassPanel panel, double dispersion)
    {
        var kinds = inputs.Observations.Locations.ToDictionary(l => l.Location, l => l.Kind.Name, StringComparer.Ordinal);
        var found = panel.Panel.Units.SelectMany(u => u.Findings).CountBy(f => f.Location).ToDictionary();
        var locations = panel.Locations.Select((name, i) => (Name: name, Found: found.GetValueOrDefault(i), Exposure: panel.Panel.ExposureAt(i)));
        foreach (var kind in locations.GroupBy(l => panel.Class.Kind ?? kinds[l.Name], StringComparer.Ordinal))
        {
            var (all, exposure) = (kind.Sum(l => l.Found), kind.Sum(l => l.Exposure));
            // Where the others of its kind had none, or were not watched, there is nothing to be beside.
            List<(string Name, int Found, double Expected)> beside = [.. kind.Where(l => l.Exposure > 0 && all > l.Found && exposure > l.Exposure)
                .Select(l => (l.Name, l.Found, l.Exposure * (all - l.Found) / (exposure - l.Exposure)))];
            foreach (var (name, level) in Estimate(inputs, panel, beside, new RateSpread(LocationShape, dispersion)))
                yield return level with { Location = name };
        }
    }

    private static IEnumerable<(string Name, Level Level)> Estimate(
        TypeGroupInputs inputs, ClassPanel panel, List<(string Name, int Found, double Expected)> units, RateSpread spread)
    {
        var isMany = units.Count > MostUnitsAveraged;
        var estimates = isMany ? Known(units, spread, inputs.Parameters.Confidence) : Averaged(units, spread.Dispersion, inputs.Parameters.Confidence);
        return units.Zip(estimates, (unit, estimate) => (unit.Name, new Level
        {
            TypeGroup = inputs.TypeGroup,
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
                Method = isMany ? MethodOfMany : Method,
            },
            ChanceAboveOneAndAHalf = estimate.Above,
            Variation = estimate.Variation,
        }));
    }

    // Findings in bunches tell as much as so many fewer single ones.
    private static IEnumerable<(double Ratio, Interval Interval, double Above, double Variation)> Averaged(
        List<(string Name, int Found, double Expected)> units, double dispersion, double confidence) =>
        HierarchicalRates.Estimate(
            [.. units.Select(u => new CountExposure((int)Math.Round(u.Found / dispersion), u.Expected / dispersion))], confidence,
            smallestWeight: SmallestWeight).Match(
            rates => rates.Units.Select(u => (u.Ratio, u.RatioInterval, u.ExceedanceProbability(High), rates.CoefficientOfVariation)),
            _ => []);

    private static IEnumerable<(double Ratio, Interval Interval, double Above, double Variation)> Known(
        List<(string Name, int Found, double Expected)> units, RateSpread spread, double confidence) => units
        .Select(u => new GammaPosterior(spread.Shape + u.Found / spread.Dispersion, spread.Shape + u.Expected / spread.Dispersion, confidence))
        .Select(p => (p.Mean, p.Interval, p.Above(High), 1 / Math.Sqrt(spread.Shape)));
}
