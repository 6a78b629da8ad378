using FleetTrend.Statistics.Changes;
using FleetTrend.Statistics.Effects;

namespace FleetTrend.Simulations;

/// <summary>First verdicts after an action, looked for every week of two years.</summary>
internal sealed class EffectStudy
{
    public const int Weeks = 104;
    private readonly Lock gate = new();

    public List<(EffectVerdict Verdict, double Week, double Hours)> Verdicts { get; } = [];

    public void Add(EffectVerdict verdict, double week, double hours)
    {
        lock (gate)
            Verdicts.Add((verdict, week, hours));
    }

    public double Share(EffectVerdict verdict, double weeks = double.PositiveInfinity, double hours = double.PositiveInfinity) =>
        (double)Verdicts.Count(v => v.Verdict == verdict && v.Week <= weeks && v.Hours <= hours) / Verdicts.Count;

    /// <summary>A tail that is acted on after its flag.</summary>
    /// <param name="fleet">The fleet; its first aircraft gets worse by the ratio, where that is not one.</param>
    /// <param name="ratioAfter">Times the rate after the action.</param>
    /// <param name="isAtLook">Whether the action is at a look; else some days after the call.</param>
    /// <param name="othersAfter">Times the rate of all others after the action.</param>
    /// <param name="replications">Fleets.</param>
    public static EffectStudy OfTail(CallFleet fleet, double ratioAfter, bool isAtLook, double othersAfter, int replications)
    {
        var study = new EffectStudy();
        var limit = LimitOf(fleet);
        Parallel.For(0, replications, r =>
        {
            var random = new Random(unchecked(31 * 10_007 + r));
            var begins = Draws.Between(random, 1.5, 2.5) * 365.25;
            var tails = Enumerable.Range(0, fleet.Aircraft).Select(i => EffectTail.Draw(fleet, random, i)).ToList();
            if (fleet.Ratio != 1)
                tails[0] = tails[0].Redraw(fleet, random, begins, day => day > begins ? fleet.Ratio : 1);
            var panel = new WatchedPanel(fleet.Periods, CallFleet.PeriodYears, fleet.Scopes, [.. tails.Select((t, i) => t.ToUnit(fleet, i))]);
            var spread = RateSpread.Estimate(panel);
            var watch = new ChangeWatch(panel, spread, new ChangePrior());
            // Where nothing changes, every tail that is called falsely is acted on.
            for (var i = 0; i < (fleet.Ratio == 1 ? tails.Count : 1); i++)
            {
                var called = watch.Calls(i, limit, Math.Log(new ChangePrior().LowerLine))
                    .Select(c => (c.From + 1) * 28.0).FirstOrDefault(day => day >= begins && day <= begins + 365, -1);
                if (called < 0)
                    continue;
                var action = isAtLook ? tails[i].Looks.First(l => l.Day >= called).Day : called + Draws.Between(random, 3, 60);
                study.Follow(fleet, tails, i, begins, action, ratioAfter, othersAfter, spread, random);
            }
        });
        return study;
    }

    private void Follow(
        CallFleet fleet, List<EffectTail> tails, int index, double begins, double action, double ratioAfter, double othersAfter, RateSpread spread,
        Random random)
    {
        List<EffectTail> acted = [.. tails];
        for (var i = 0; i < acted.Count; i++)
        {
            if (i == index)
                acted[i] = acted[i].Redraw(fleet, random, action, day => day > action ? ratioAfter : day > begins ? fleet.Ratio : 1);
            else if (othersAfter != 1)
                acted[i] = acted[i].Redraw(fleet, random, action, day => day > action ? othersAfter : 1);
        }

        var (verdict, at) = (EffectVerdict.TooEarly, (double)Weeks);
        for (var week = 1; week <= Weeks && verdict == EffectVerdict.TooEarly; week++)
        {
            verdict = Judge(fleet, acted, index, action, action + 7 * week, spread);
            at = verdict == EffectVerdict.TooEarly ? at : week;
        }

        Add(verdict, at, at * 7 * acted[index].PerDay);
    }

    private static EffectVerdict Judge(CallFleet fleet, List<EffectTail> tails, int index, double action, double until, RateSpread spread)
    {
        var others = EffectLooks.Others(tails.Index().Where(t => t.Index != index).SelectMany(t => EffectLooks.Of(t.Item, action, until)), fleet.Locations);
        var norm = EffectNorm.Estimate(others, spread.Dispersion)!;
        var looks = norm.Expect(EffectLooks.Of(tails[index], action, until));
        return ActionOdds.Estimate(looks, norm, (int)action, fleet.Scopes, spread, new ChangePrior()) is { } odds
            ? EffectRules.JudgeAction(odds.Log, norm.Move * looks.Sum(l => l.After))
            : EffectVerdict.TooEarly;
    }

    /// <summary>The limit of a flag, from one ordinary fleet of that kind.</summary>
    private static double LimitOf(CallFleet fleet)
    {
        var (panel, _) = (fleet with { Ratio = 1 }).Draw(new Random(7), double.PositiveInfinity);
        return CallLimits.Simulate([panel], [RateSpread.Estimate(panel)], new ChangePrior(), [1.0 / 50], 10_000, 7).Tiers[0].LogLimit;
    }
}
