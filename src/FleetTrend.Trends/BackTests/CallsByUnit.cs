using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.BackTests;

/// <summary>Watches and flags by what they call, to be compared with those of another method.</summary>
internal sealed class CallsByUnit
{
    private readonly ILookup<(string?, string?, Condition?, string?), BackTestCall> all;
    private readonly HashSet<BackTestCall> counted;

    /// <summary>Makes it.</summary>
    /// <param name="counted">Those of the days that are counted.</param>
    /// <param name="all">All: a call of before may still stand.</param>
    public CallsByUnit(IEnumerable<BackTestCall> counted, IEnumerable<BackTestCall> all)
    {
        this.counted = [.. counted];
        this.all = all.ToLookup(UnitOf);
    }

    /// <summary>Of other calls, those made here too; of the flags and watches counted, those made there too.</summary>
    public (int Also, int Flags, int Watches) Share(IEnumerable<BackTestCall> others)
    {
        var also = 0;
        var named = new HashSet<BackTestCall>();
        foreach (var other in others)
        {
            var shared = all[UnitOf(other)].Where(c => HasCommonDay(c, other)).ToList();
            also += shared.Count > 0 ? 1 : 0;
            named.UnionWith(shared);
        }

        named.IntersectWith(counted);
        return (also, named.Count(c => c.Method == BackTestMethod.Flag), named.Count(c => c.Method == BackTestMethod.Watch));
    }

    // An alert is known at the end of the month it is about: from the first day of that month on it is the same call.
    private static bool HasCommonDay(BackTestCall call, BackTestCall alert) =>
        (alert.EndedDate is not { } ended || call.Date <= ended)
        && (call.EndedDate is not { } gone || gone > new DateOnly(alert.Date.Year, alert.Date.Month, 1));

    private static (string?, string?, Condition?, string?) UnitOf(BackTestCall call) =>
        (call.Registration, call.Registration is null ? call.Base : null, call.Condition, call.Kind);
}
