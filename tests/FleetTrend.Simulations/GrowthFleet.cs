using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Simulations;

/// <summary>Findings at one kind of place that may come more and more often, between looks that are irregular.</summary>
/// <param name="Aircraft">Aircraft.</param>
/// <param name="Findings">Findings of the fleet, in the mean, where nothing changes.</param>
internal sealed record GrowthFleet(int Aircraft, double Findings)
{
    private const double Years = 3;
    private const double LatestJoin = 2;
    private const int Places = 4;
    private const double MostHoursAtEntry = 6000;
    private const double MeanHours = 450 * (Years - (LatestJoin / 4));

    /// <summary>Whether all aircraft have one level; else it is gamma with shape 4.</summary>
    public bool IsAlike { get; init; }

    /// <summary>Whether findings come in bunches, of two in the mean.</summary>
    public bool IsBunched { get; init; }

    /// <summary>The spans of each aircraft by calendar time in years before the end, and by its hours.</summary>
    /// <param name="random">The source of chance.</param>
    /// <param name="yearly">Growth of the rate a year.</param>
    /// <param name="exponent">Exponent of the mean count in hours.</param>
    public (IReadOnlyList<IReadOnlyList<GrowthSpan>> Calendar, IReadOnlyList<IReadOnlyList<GrowthSpan>> Hours) Draw(
        Random random, double yearly, double exponent)
    {
        var (calendar, hours) = (new List<IReadOnlyList<GrowthSpan>>(), new List<IReadOnlyList<GrowthSpan>>());
        for (var i = 0; i < Aircraft; i++)
        {
            var (byTime, byHours) = One(random, yearly, exponent, i % 2 == 0 ? 0 : LatestJoin * random.NextDouble());
            calendar.Add(byTime);
            hours.Add(byHours);
        }

        return (calendar, hours);
    }

    private (List<GrowthSpan> Calendar, List<GrowthSpan> Hours) One(Random random, double yearly, double exponent, double join)
    {
        var level = Findings / (Aircraft * MeanHours) * (IsAlike ? 1 : Draws.Frailty(random, 4));
        var (pace, entry) = (Draws.Between(random, 250, 650), Draws.Between(random, 0, MostHoursAtEntry));
        var (byTime, byHours) = (new List<GrowthSpan>(), new List<GrowthSpan>());
        for (var (time, at) = (join, entry); ;)
        {
            var step = Draws.Between(random, 70, 130);
            var next = time + (step / pace);
            if (next > Years) return (byTime, byHours);
            // The rate at the middle of the look interval: it moves little within.
            var rate = level * Math.Exp(yearly * (((time + next) / 2) - (Years / 2))) * Course(at, at + step, exponent);
            var found = 0;
            for (var come = Draws.Count(random, rate * step / (IsBunched ? 2 : 1)); come > 0; come--)
                found += IsBunched ? 1 + Draws.Count(random, 1) : 1;
            byTime.Add(new GrowthSpan(time - Years, next - Years, Places * step, found));
            byHours.Add(new GrowthSpan(at, at + step, Places * step, found));
            (time, at) = (next, at + step);
        }
    }

    /// <summary>Mean of a power law's rate, over its mean at half of the most hours.</summary>
    private static double Course(double from, double to, double exponent) =>
        exponent == 1 ? 1 : (Math.Pow(to, exponent) - Math.Pow(from, exponent)) / ((to - from) * exponent * Math.Pow(MostHoursAtEntry / 2, exponent - 1));
}
