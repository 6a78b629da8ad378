using FleetTrend.Records.Words;

namespace FleetTrend.Trends.Shrouds;

/// <summary>How stop-drilled shrouds and clamp bolts read.</summary>
public static class ShroudWords
{
    /// <summary>What to make of it, for every list of them.</summary>
    public const string Meaning =
        "Stop-drilled cracks add up: judge whether the shroud is due for renewal instead of the next hole. A shroud that was opened up may have hidden cracks. Clamp bolts and "
        + "nuts erode and corrode from heat: renew them while a wrench still fits. What may be stop-drilled, and how often, the maker's instructions say.";

    /// <summary>What became of stop-drilled shrouds: <c>Of 9 shrouds with stop drills 4 were renewed, 210 to 900 h after the first one, with 3.5 stop drills on
    /// average</c>.</summary>
    public static string Shrouds(ShroudTrend trend)
    {
        ArgumentNullException.ThrowIfNull(trend);
        if (trend.Shrouds == 0)
            return "No shroud has a stop drill.";
        var of = $"Of {NumberWords.Count(trend.Shrouds, "shroud", "shrouds")} with stop drills";
        if (trend is not { StopDrillsAtRenewal: { } drills, FewestHours: { } fewest, MostHours: { } most })
            return $"{of} none has been renewed yet.";
        var after = fewest == most ? NumberWords.Hours(most) : $"{NumberWords.HoursBare(fewest)} to {NumberWords.Hours(most)}";
        return $"{of} {NumberWords.Count(trend.Renewed, "was", "were")} renewed, {after} after the first one, with {NumberWords.Rounded(drills)} stop drills on average.";
    }

    /// <summary>One that is in service: <c>ZZ-A01, shroud: 4 stop drills in 310 h since 3 Mar 2026, and 1 crack open</c>; no full stop.</summary>
    public static string Statement(StopDrilledShroud shroud)
    {
        ArgumentNullException.ThrowIfNull(shroud);
        return $"{shroud.Registration}, {LocationWords.Name(shroud.Shroud)}: {NumberWords.Count(shroud.StopDrills, "stop drill", "stop drills")}, the first "
            + $"{NumberWords.Hours(shroud.Hours)} ago on {NumberWords.Day(shroud.FirstDate)}"
            + (shroud.OpenCracks > 0 ? $", and {NumberWords.Count(shroud.OpenCracks, "crack", "cracks")} open" : "");
    }

    /// <summary>Bolts by state: <c>Of 60 clamp bolts 3 are eroded, 5 corroded, 50 good at the last look, 2 never looked at</c>; no full stop.</summary>
    public static string Bolts(ShroudTrend trend)
    {
        ArgumentNullException.ThrowIfNull(trend);
        var states = trend.Bolts.OrderByDescending(b => b.State is HexState.NeverLookedAt or HexState.Good ? 0 : (int)b.State).ThenBy(b => b.State)
            .Select(b => $"{NumberWords.Count(b.Bolts)} {Name(b.State)}");
        return $"Of {NumberWords.Count(trend.Bolts.Sum(b => b.Bolts), "clamp bolt", "clamp bolts")}: {string.Join(", ", states)}";
    }

    /// <summary>A state: <c>eroded</c>.</summary>
    public static string Name(HexState state) => state switch
    {
        HexState.Good => "good at the last look",
        HexState.Corroded => "corroded",
        HexState.Worn => "worn",
        HexState.Eroded => "eroded",
        HexState.OtherFinding => "with another finding",
        _ => "never looked at",
    };
}
