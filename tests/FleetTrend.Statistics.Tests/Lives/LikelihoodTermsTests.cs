using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

public sealed class LikelihoodTermsTests
{
    // Definition of each term; complex-step derivatives in R (tests/reference/weibull-terms).
    [Fact]
    public void Weibull_terms_and_scores_equal_the_definition()
    {
        var source = ReferenceCase.Load("weibull-terms");
        var (mu, tau) = (Math.Log(source.Parameter("scale")), Math.Log(source.Parameter("shape")));
        var points = source.Lives()
            .Select(l => StandardDistribution.Select(LifeDistribution.Weibull).LogLikelihood(new LifeArrays([l]), mu, tau)).ToList();
        source.Equal(points.Select(p => p.Value), "loglik");
        source.Equal(points.Select(p => p.Mu), "score_logscale");
        source.Equal(points.Select(p => p.Tau), "score_logshape");
    }

    // By hand: a short interval has the probability density times width, to a relative error of about width squared.
    [Theory]
    [InlineData(LifeDistribution.Weibull)]
    [InlineData(LifeDistribution.Lognormal)]
    [InlineData(LifeDistribution.Loglogistic)]
    public void A_short_interval_is_density_times_width(LifeDistribution distribution)
    {
        foreach (var width in (double[])[1 / 8.0, 1 / 1024.0, 1 / 1048576.0])
        {
            var model = new LifeModel(distribution, 900, 2.2);
            var interval = new LifeArrays([new Life(700 - (width / 2), 700 + (width / 2))]);
            var value = StandardDistribution.Select(distribution).LogLikelihood(interval, model.Mu, Math.Log(2.2)).Value;
            Assert.Equal(Math.Log(model.Density(700) * width), value, width > 0.1 ? 7 : 9);
        }
    }

    // Central differences of the value, and of the gradient: every kind of life, shapes from flat to steep, near and far in the tails.
    [Theory]
    [InlineData(LifeDistribution.Weibull)]
    [InlineData(LifeDistribution.Lognormal)]
    [InlineData(LifeDistribution.Loglogistic)]
    public void Derivatives_equal_differences(LifeDistribution distribution)
    {
        Life[][] kinds =
        [
            [Life.FailedAt(500)], [Life.GoodAt(500)], [Life.FailedBetween(0, 500)], [Life.FailedBetween(400, 500)],
            [Life.FailedBetween(499.9, 500)], [Life.FailedBetween(300, 700, 250)], [Life.GoodAt(900, 600)],
        ];
        foreach (var shape in (double[])[0.3, 1, 3, 12])
        {
            foreach (var scale in (double[])[350.0, 500, 800])
            {
                foreach (var kind in kinds) AssertDerivatives(distribution, new LifeArrays(kind), Math.Log(scale), Math.Log(shape));
            }
        }
    }

    private static void AssertDerivatives(LifeDistribution distribution, LifeArrays lives, double mu, double tau)
    {
        const double H = 1e-5;
        var family = StandardDistribution.Select(distribution);
        var at = family.LogLikelihood(lives, mu, tau);
        var (left, right) = (family.LogLikelihood(lives, mu - H, tau), family.LogLikelihood(lives, mu + H, tau));
        var (below, above) = (family.LogLikelihood(lives, mu, tau - H), family.LogLikelihood(lives, mu, tau + H));
        Near((right.Value - left.Value) / (2 * H), at.Mu, at.Value);
        Near((above.Value - below.Value) / (2 * H), at.Tau, at.Value);
        Near((right.Mu - left.Mu) / (2 * H), at.MuMu, at.Mu);
        Near((above.Mu - below.Mu) / (2 * H), at.MuTau, at.Mu);
        Near((right.Tau - left.Tau) / (2 * H), at.MuTau, at.Tau);
        Near((above.Tau - below.Tau) / (2 * H), at.TauTau, at.Tau);
    }

    private static void Near(double expected, double actual, double scale) =>
        Assert.InRange(actual, expected - Tolerance(expected, scale), expected + Tolerance(expected, scale));

    private static double Tolerance(double expected, double scale) => 1e-6 * (1 + Math.Abs(expected) + Math.Abs(scale));
}
