using FleetTrend.Statistics.Changes;
using FleetTrend.Trends.Expectations;

namespace FleetTrend.Trends.Changes;

/// <summary>Limits of the score for the aircraft, or the bases, of a type group.</summary>
/// <remarks>
/// They are the type group's own, for all classes of its aircraft together, so that the stated rate per aircraft-year holds for the fleet,
/// however many type groups it has. Nine tenths of the calls allowed go to aircraft, one tenth to bases.
/// </remarks>
internal sealed class ChangeLimits
{
    private const double ShareOfBases = 0.1;
    private const double SimulatedYears = 2_500;

    // Bases have findings in every period: so many years as give some fifteen false flags tell the limit, and more would cost more than all aircraft.
    private const double FlagsOfBases = 15;
    private const double FewestBaseYears = 50;
    private const double MostBaseYears = 500;
    private const int Seed = 20261127;

    private readonly CallLimits limits;
    private readonly double aircraftYearsPerYear;

    private ChangeLimits(
        TrendParameters parameters, IReadOnlyList<ClassPanel> panels, IReadOnlyList<RateSpread> spreads, double simulatedYears, double aircraftYearsPerYear,
        double share)
    {
        this.aircraftYearsPerYear = aircraftYearsPerYear;
        var perUnitYear = aircraftYearsPerYear * share / 50;
        limits = CallLimits.Simulate(
            [.. panels.Select(p => p.Panel)], spreads, Prior,
            [parameters.FlagsPer50AircraftYears * perUnitYear, parameters.WatchesPer50AircraftYears * perUnitYear], simulatedYears, Seed);
    }

    /// <summary>What changes are looked for.</summary>
    public static ChangePrior Prior { get; } = new();

    /// <summary>Logarithm of the score at which a flag begins.</summary>
    public double LogFlag => limits.Tiers[0].LogLimit;

    /// <summary>Logarithm of the score at which a watch begins.</summary>
    public double LogWatch => limits.Tiers[1].LogLimit;

    /// <summary>Limits for the aircraft.</summary>
    public static ChangeLimits OfAircraft(GroupExpectations expectations, TrendParameters parameters) =>
        new(parameters, expectations.ByAircraft, expectations.AircraftSpreads, SimulatedYears, 1, expectations.ByBase.Count > 0 ? 1 - ShareOfBases : 1);

    /// <summary>Limits for the bases.</summary>
    public static ChangeLimits OfBases(GroupExpectations expectations, TrendParameters parameters)
    {
        var baseYears = MostYears(expectations.ByBase);
        var aircraftYearsOfABaseYear = baseYears > 0 ? MostYears(expectations.ByAircraft) / baseYears : 1;
        return new(
            parameters, expectations.ByBase, expectations.BaseSpreads,
            Math.Clamp(FlagsOfBases * 50 / (ShareOfBases * aircraftYearsOfABaseYear), FewestBaseYears, MostBaseYears), aircraftYearsOfABaseYear, ShareOfBases);
    }

    /// <summary>
    /// Aircraft-years in which chance alone makes one call as strong as this, all classes together, and whether it is the most that can be said.
    /// </summary>
    public (double AircraftYears, bool IsCapped) AircraftYearsPerFalseCall(double logScore)
    {
        var (years, isCapped) = limits.YearsPerFalseCall(logScore);
        return (years * aircraftYearsPerYear, isCapped);
    }

    private static double MostYears(IReadOnlyList<ClassPanel> panels) => panels.Select(p => p.Panel.UnitYears).DefaultIfEmpty(0).Max();
}
