using FleetTrend.Observations;
using FleetTrend.Records.Findings;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.Tests;

/// <summary>
/// Published inspections and recurrences, built as the observations of a fleet, give the published figures. Full-precision
/// values: tests/reference, made by the R scripts there.
/// </summary>
public sealed class PublishedFleetsTests
{
    [Fact] // Nelson 1982 p. 409; Meeker and Escobar 1998 p. 135: 432 wheels, 106 cracked, each looked at once; here in hours, not hundreds.
    public void Turbine_wheels_looked_at_once()
    {
        var reference = ReferenceValues.Load("turbine-wheels");
        var trend = PartTrend(reference, 100);
        Assert.Equal((432, 106), (trend.Lives, trend.Failures));

        Assert.Equal(["Weibull", "lognormal"], trend.Fits.Select(f => f.Distribution));
        var (weibull, lognormal) = (trend.Fits[0], trend.Fits[1]);
        Close(reference.Expected("shape"), weibull.First.Value);
        Close(reference.Expected("scale") * 100, weibull.Second.Value);
        Close(reference.Expected("loglik"), weibull.LogLikelihood);
        Close(reference.Expected("aic"), weibull.Aic);
        Close(reference.ExpectedAll("quantile")[1] * 100, weibull.Median.Value);
        Close(reference.ExpectedAll("quantile_interval_0.1")[0] * 100, weibull.B10.Lower);
        Close(reference.ExpectedAll("quantile_interval_0.1")[1] * 100, weibull.B10.Upper);
        Close(reference.Expected("lognormal_mu") + Math.Log(100), lognormal.First.Value);
        Close(reference.Expected("lognormal_sigma"), lognormal.Second.Value);
        Assert.Equal(reference.Published("lognormal_mu"), lognormal.First.Value!.Value - Math.Log(100), 4);
        Assert.Equal(reference.Published("lognormal_sigma"), lognormal.Second.Value!.Value, 4);
        Assert.Equal(reference.Published("lognormal_loglik"), lognormal.LogLikelihood, 2);

        var cdf = reference.ExpectedAll("cdf");
        Assert.All(reference.ExpectedAll("look"), (look, i) => Assert.Equal(cdf[i], CdfBy(trend, look * 100), 6));
    }

    [Fact] // The same wheels with the age found taken as the age of failure (facts of the R script: shape 4.79): we never give that.
    public void The_age_found_is_not_the_age_of_failure()
    {
        var reference = ReferenceValues.Load("turbine-wheels");
        var weibull = PartTrend(reference, 100).Fits[0];
        Assert.True(reference.Expected("wrong_shape") > weibull.First.Upper);
    }

    [Fact] // Nelson 1982 p. 415: 167 parts at eight looks; in days mu 7.6880, log scale -0.3953, log-likelihood -309.6.
    public void Parts_looked_at_eight_times()
    {
        var reference = ReferenceValues.Load("crack-inspections");
        var days = reference.ExpectedAll("days");
        var months = reference.Rows.Select(r => r.Number("upper")).OfType<double>().ToList();
        var trend = PartTrend(reference, month => month == 0 ? 0 : days[months.IndexOf(month)]);
        Assert.Equal((167, 94), (trend.Lives, trend.Failures));

        var weibull = trend.Fits.Single(f => f.Distribution == "Weibull");
        Close(reference.Expected("in_days", "shape"), weibull.First.Value);
        Close(reference.Expected("in_days", "scale"), weibull.Second.Value);
        Close(reference.ExpectedAll("in_days", "shape_interval")[0], weibull.First.Lower);
        Close(reference.ExpectedAll("in_days", "scale_interval")[1], weibull.Second.Upper);
        Close(reference.ExpectedAll("in_days", "quantile_interval_0.5")[1], weibull.Median.Upper);
        Assert.Equal(reference.Published("mu_days"), Math.Log(weibull.Second.Value!.Value), 4);
        Assert.Equal(reference.Published("log_sigma"), -Math.Log(weibull.First.Value!.Value), 4);
        Assert.InRange(weibull.LogLikelihood, reference.Published("loglik") - 0.05, reference.Published("loglik") + 0.05);
        Assert.Equal(479.3, weibull.B10.Value!.Value, 1);
        Assert.Equal(1704.7, weibull.Median.Value!.Value, 1);

        var cdf = reference.ExpectedAll("cdf");
        Assert.All(days, (day, i) => Assert.Equal(cdf[i], CdfBy(trend, day), 6));
    }

    [Fact] // Nelson 1995: valve seats of 41 engines, 48 replacements; the function, not minus the logarithm of a survival curve.
    public void Valve_seats_of_41_engines()
    {
        var reference = ReferenceValues.Load("valve-seat-mcf");
        var fleet = reference.Rows.GroupBy(r => r.Text("unit")).Select(g =>
        {
            var engine = new FleetBuilder("ENGINE-" + g.Key, typeGroup: "diesel");
            foreach (var row in g.Where(r => r.Text("what") == "window"))
                engine.Watched("engine/valve-seat", "place", row.Number("start")!.Value, row.Number("stop")!.Value);
            foreach (var row in g.Where(r => r.Text("what") == "event"))
                engine.Found("engine/valve-seat", "place", row.Number("start")!.Value, Condition.Wear);
            return engine.Build();
        }).ToList();
        var snapshot = FleetBuilder.Compute(fleet, new TrendParameters(), FleetBuilder.AsOf, "test");
        var trend = Assert.Single(snapshot.Recurrences);
        Assert.Equal((41, 48), (trend.AircraftCount, trend.Events));
        Assert.Equal(reference.ExpectedAll("time"), trend.Points.Select(p => p.Hours));
        Assert.Equal(reference.ExpectedAll("at_risk"), trend.Points.Select(p => (double)p.AtRisk));
        Assert.All(reference.ExpectedAll("value"), (value, i) => Close(value, trend.Points[i].Value));
        Assert.All(reference.ExpectedAll("var_robust"), (v, i) => Close(Math.Sqrt(v), trend.Points[i].StandardError));
        Assert.Equal(1.5427, trend.Points[^1].Value, 4);

        // 48 over 25,363 engine-days: 1.8925 per 1,000.
        Assert.Equal(1.8925, snapshot.Rates.Single(r => r.Location is not null).Rate.Value!.Value, 4);
    }

    private static PartLifeTrend PartTrend(ReferenceValues reference, double scale) => PartTrend(reference, age => age * scale);

    /// <summary>Each life on an aircraft of its own, since a wheel is looked at and not moved.</summary>
    private static PartLifeTrend PartTrend(ReferenceValues reference, Func<double, double> age)
    {
        var fleet = new List<AircraftObservations>();
        foreach (var row in reference.Rows)
        {
            for (var k = 0; k < row.Number("count"); k++)
            {
                fleet.Add(new FleetBuilder($"UNIT-{fleet.Count:0000}", typeGroup: "wheels").Life(
                    "wheel", "part", Tenth(age(row.Number("lower")!.Value)), row.Number("upper") is { } upper ? Tenth(age(upper)) : null).Build());
            }
        }
        return FleetBuilder.Compute(fleet, new TrendParameters(), FleetBuilder.AsOf, "test").PartLives.Single(t => t.Base is null);
    }

    private static double Tenth(double age) => Math.Round(age * 10) / 10;

    private static double CdfBy(PartLifeTrend trend, double age) =>
        trend.Curve.Where(s => s.Upper <= age).Select(s => s.Cdf).LastOrDefault();

    private static void Close(double expected, double? actual) =>
        Assert.InRange(actual!.Value, expected - 1e-5 * Math.Abs(expected), expected + 1e-5 * Math.Abs(expected));
}
