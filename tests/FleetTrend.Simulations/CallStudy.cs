using FleetTrend.Statistics.Changes;

namespace FleetTrend.Simulations;

/// <summary>What calls do on many fleets of one kind, with norm, spread, bunches and limits estimated from each fleet.</summary>
internal sealed class CallStudy
{
    private const double PeriodDays = 28;
    private const double DaysPerYear = 365.25;
    private static readonly double[] Allowed = [1.0 / 50, 5.0 / 50];

    private readonly Lock gate = new();
    private readonly List<double>[] weeks = [[], []];

    /// <summary>New calls on aircraft that do not change, by tier.</summary>
    public int[] False { get; } = [0, 0];

    /// <summary>Years of those aircraft.</summary>
    public double FalseYears { get; private set; }

    public int Changes { get; private set; }

    /// <summary>Called changes whose part was named right, by tier.</summary>
    public int[] RightScope { get; } = [0, 0];

    /// <summary>Called changes whose day was told within eight weeks, by tier.</summary>
    public int[] RightWeek { get; } = [0, 0];

    public double MeanShape { get; private set; }

    public double MeanDispersion { get; private set; }

    public IReadOnlyList<double>[] Weeks => weeks;

    public static CallStudy Run(CallFleet fleet, int replications, int seed, double unitYears = 3000)
    {
        var study = new CallStudy();
        Parallel.For(0, replications, r => study.Add(fleet, new Random(unchecked(seed * 10_007 + r)), r, unitYears));
        study.MeanShape /= replications;
        study.MeanDispersion /= replications;
        return study;
    }

    public double FoundWithin(int tier, double within) => (double)weeks[tier].Count(w => w <= within) / Changes;

    public double Per50(int tier) => False[tier] / FalseYears * 50;

    public double Per50Error(int tier) => Math.Sqrt(False[tier]) / FalseYears * 50;

    private void Add(CallFleet fleet, Random random, int number, double unitYears)
    {
        var changeDay = Draws.Between(random, fleet.Years - 2, fleet.Years - 1.05) * DaysPerYear;
        var (panel, members) = fleet.Draw(random, changeDay);
        var spread = RateSpread.Estimate(panel, members is null ? null : RateSpread.Estimate(members));
        var prior = new ChangePrior();
        // Bases have findings in every period, which costs time; a third of the unit-years does for them.
        var limits = CallLimits.Simulate([panel], [spread], prior, Allowed, fleet.AircraftOfABase > 0 ? unitYears / 3 : unitYears, number + 1);
        var watch = new ChangeWatch(panel, spread, prior);
        var changing = fleet.ChangingUnits;
        lock (gate)
        {
            MeanShape += spread.Shape;
            MeanDispersion += spread.Dispersion;
            for (var i = 0; i < panel.Units.Count; i++)
            {
                if (i < changing)
                    Changes++;
                else if (IsCounted(fleet, i))
                    FalseYears += (panel.Units[i].LastPeriod - panel.Units[i].FirstPeriod + 1) * panel.PeriodYears;
            }
        }

        for (var i = 0; i < panel.Units.Count; i++)
        {
            for (var tier = 0; tier < Allowed.Length; tier++)
                Follow(fleet, watch, panel, i, i < changing ? changeDay : null, limits.Tiers[tier].LogLimit, Math.Log(prior.LowerLine), tier);
        }
    }

    private void Follow(
        CallFleet fleet, ChangeWatch watch, WatchedPanel panel, int unit, double? changeDay, double limit, double lowerLine, int tier)
    {
        var called = watch.Calls(unit, limit, lowerLine);
        if (changeDay is not { } day)
        {
            lock (gate)
                False[tier] += IsCounted(fleet, unit) ? called.Count : 0;
            return;
        }

        // A call that stood before the change does not find it.
        if (called.Select(c => c.From).FirstOrDefault(from => (from + 0.5) * PeriodDays >= day, -1) is not (>= 0 and var period))
            return;
        var late = Math.Max(0, (period + 0.5) * PeriodDays - day) / 7;
        var score = watch.At(unit, period)!;
        lock (gate)
        {
            weeks[tier].Add(late);
            if (late > 52)
                return;
            if (score.Scope.Name == fleet.Scopes[fleet.Scope].Name)
                RightScope[tier]++;
            if (Math.Abs((score.Since * PeriodDays) - day) <= 56)
                RightWeek[tier]++;
        }
    }

    // Where one aircraft runs high from the start, its own calls are what is asked for.
    private static bool IsCounted(CallFleet fleet, int unit) => fleet.LevelOfFirst == 0 || unit == 0;
}
