using FleetTrend.Statistics.Norms;

namespace FleetTrend.Statistics.Tests.Norms;

public sealed class EqualRatesTestTests
{
    [Theory] // Ten pumps (Gaver and O'Muircheartaigh 1987) and sixty simulated aircraft (seed 20240602); pchisq in R.
    [InlineData("pump-failures", "exposure")]
    [InlineData("sim2-cracks-aircraft", "expected")]
    public void Unequal_units(string folder, string exposure)
    {
        var reference = ReferenceCase.Load(folder);
        var test = EqualRatesTest.Test(GammaPoissonFitTests.Units(reference, exposure)).Value;
        reference.Equal(test.PooledRate, "equal_rates", "rate");
        reference.Equal(test.ChiSquare, "equal_rates", "chi_square");
        reference.Equal(test.DegreesOfFreedom, "equal_rates", "degrees");
        reference.Equal(test.PValue, "equal_rates", "p");
        reference.Equal(test.Deviance, "equal_rates", "deviance");
        // The tail is far below the case's absolute tolerance: its digits count too.
        Assert.Equal(1, test.PValue / reference.Expected("equal_rates", "p"), 6);
    }

    [Fact] // By hand: 1 and 3 events in equal exposure: (1 + 1) / 2 = 1 on one degree, p = 2 (1 - Phi(1)) = 0.317311.
    public void Two_units_by_hand()
    {
        var test = EqualRatesTest.Test([new(1, 50), new(3, 50), new(0, 0)]).Value;
        Assert.Equal(1, test.ChiSquare, 12);
        Assert.Equal(1, test.DegreesOfFreedom);
        Assert.Equal(0.317311, test.PValue, 6);
        // By hand: 2 (1 log(1/2) + 3 log(3/2)).
        Assert.Equal(2 * (Math.Log(0.5) + 3 * Math.Log(1.5)), test.Deviance, 12);
        Assert.InRange(test.DeviancePValue, 0.30, 0.31);
    }

    [Fact]
    public void Data_that_cannot_tell_give_typed_reasons()
    {
        Assert.Equal(NotEstimableKind.NothingObserved, EqualRatesTest.Test([new(0, 0)]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, EqualRatesTest.Test([new(0, 10), new(0, 20)]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoInformation, EqualRatesTest.Test([new(3, 10)]).Reason?.Kind);
    }
}
