using FleetTrend.Trends.PartNumbers;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Part numbers beside each other, as the contract writes them.</summary>
internal static class PartNumberMessages
{
    public static Wire.PartNumberTrend ToWire(this PartNumberTrend trend) => new()
    {
        TypeGroup = trend.TypeGroup,
        Kind = trend.Kind,
        Numbers = { trend.Numbers.Select(ToWire) },
        Comparisons = { trend.Comparisons.Select(ToWire) },
        NotToldCount = trend.NotTold,
        Statement = PartNumberWords.Verdict(trend),
    };

    private static Wire.PartNumberLives ToWire(PartNumberLives number) => new()
    {
        PartNumber = number.PartNumber,
        LifeCount = number.Lives,
        FailureCount = number.Failures,
        AircraftCount = number.Aircraft,
        NotCountedCount = number.NotCounted,
        FailureRate = number.FailureRate.ToWire(),
        EarlyFailures = number.EarlyFailures.ToWire(),
    };

    private static Wire.PartNumberComparison ToWire(PartNumberComparison comparison)
    {
        var wire = new Wire.PartNumberComparison
        {
            Better = comparison.Better,
            Worse = comparison.Worse,
            Measure = (Wire.PartNumberMeasure)comparison.Measure,
            Hours = comparison.Hours,
            Times = comparison.Times.ToWire(),
            IsCalled = comparison.Finding == PartNumberFinding.Better,
        };
        if (comparison.PValue is { } p)
            wire.PValue = p;
        if (comparison.AdjustedPValue is { } adjusted)
            wire.AdjustedPValue = adjusted;
        return wire;
    }
}
