using FleetTrend.Statistics.Changes;
using FleetTrend.Statistics.Quiet;

namespace FleetTrend.Simulations;

/// <summary>Who is asked about for having too few findings, looking every four weeks with what is known then.</summary>
internal sealed class QuietStudy
{
    private const double PeriodDays = 28;
    private readonly Lock gate = new();
    private readonly List<double> weeks = [];

    /// <summary>Years of ordinary units.</summary>
    public double Years { get; private set; }

    /// <summary>New questions about ordinary units: on the list, and not four weeks before.</summary>
    public int False { get; private set; }

    /// <summary>Units of which too little is written down.</summary>
    public int QuietUnits { get; private set; }

    public double Per50 => False / Years * 50;

    public double Per50Error => Math.Sqrt(False) / Years * 50;

    /// <summary>Share of the quiet units that were asked about within so many weeks.</summary>
    public double AskedWithin(double within) => (double)weeks.Count(w => w <= within) / QuietUnits;

    /// <summary>Studies fleets.</summary>
    /// <param name="classes">One fleet per class of condition, alike but for rates and levels; each class has levels and looks of its own.</param>
    /// <param name="replications">Fleets.</param>
    /// <param name="quietFromYear">From when the fleet's ratio holds for the units that change.</param>
    public static QuietStudy Run(IReadOnlyList<CallFleet> classes, int replications, double quietFromYear)
    {
        var study = new QuietStudy();
        Parallel.For(0, replications, r => study.Add(classes, new Random(unchecked(71 * 10_007 + r)), quietFromYear * 365.25));
        return study;
    }

    private void Add(IReadOnlyList<CallFleet> classes, Random random, double quietFrom)
    {
        List<(WatchedPanel Units, WatchedPanel? Members)> drawn = [.. classes.Select(c => c.Draw(random, quietFrom))];
        var quiet = drawn[0].Units.Units.Take(classes[0].ChangingUnits).Select(u => u.Name).ToHashSet(StringComparer.Ordinal);
        var asked = new HashSet<string>(StringComparer.Ordinal);
        var first = quiet.ToDictionary(q => q, _ => double.PositiveInfinity, StringComparer.Ordinal);
        var (years, calls) = (0.0, 0);
        for (var p = 0; p < classes[0].Periods; p++)
        {
            var panel = CombinedPanel.Build([.. drawn.Select(d => d.Units)], p);
            var members = classes[0].AircraftOfABase > 0 ? RateSpread.Estimate(CombinedPanel.Build([.. drawn.Select(d => d.Members!)], p)) : null;
            var spread = RateSpread.Estimate(panel, members);
            var watch = new QuietWatch(panel, spread);
            foreach (var (i, unit) in panel.Units.Index())
            {
                var isAsked = watch.At(i) is { IsAsked: true };
                var isNew = isAsked && asked.Add(unit.Name);
                if (!isAsked)
                    asked.Remove(unit.Name);
                if (!quiet.Contains(unit.Name))
                    (years, calls) = (years + panel.PeriodYears, calls + (isNew ? 1 : 0));
                else if (isNew && (p + 1) * PeriodDays > quietFrom)
                    first[unit.Name] = Math.Min(first[unit.Name], ((p + 1) * PeriodDays - Math.Max(0, quietFrom)) / 7);
            }
        }

        lock (gate)
        {
            (Years, False, QuietUnits) = (Years + years, False + calls, QuietUnits + quiet.Count);
            weeks.AddRange(first.Values);
        }
    }
}
