using FleetTrend.Trends.Repairs;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Whether repairs hold, as the contract writes it.</summary>
internal static class RepairMessages
{
    public static Wire.Repair ToWire(this RepairTrend trend) => new()
    {
        TypeGroup = trend.TypeGroup,
        Kind = trend.Kind,
        Condition = (Wire.Condition)trend.Condition,
        Actions = { trend.Actions.Select(ToWire) },
        Comparisons = { trend.Comparisons.Select(ToWire) },
        Statement = RepairWords.Verdict(trend),
    };

    private static Wire.RepairedAction ToWire(RepairedAction action) => new()
    {
        Action = (Wire.ActionKind)action.Action,
        RepairCount = action.Repairs,
        AircraftCount = action.Aircraft,
        NotLookedAtCount = action.NotLookedAt,
        CameBackCount = action.CameBack,
        FollowedHours = action.FollowedHours,
        Shares =
        {
            action.Shares.Select(s => new Wire.ShareBack { Hours = s.Hours, KnownCount = s.Known, HeldCount = s.Held, Share = s.Share.ToWire() }),
        },
        RateBefore = action.Before.ToWire(),
    };

    private static Wire.RepairComparison ToWire(RepairComparison comparison)
    {
        var wire = new Wire.RepairComparison
        {
            Longer = (Wire.ActionKind)comparison.Longer,
            Shorter = (Wire.ActionKind)comparison.Shorter,
            TimesAsLong = comparison.TimesAsLong?.ToWire(),
            Counts = comparison.Counts is not { } c ? null : new Wire.RepairCounts
            {
                WithinHours = c.WithinHours,
                LongerBackCount = c.LongerBack,
                LongerCount = c.LongerOf,
                ShorterBackCount = c.ShorterBack,
                ShorterCount = c.ShorterOf,
            },
            IsCalled = comparison.Finding == RepairFinding.HoldsLonger,
        };
        if (comparison.PValue is { } p)
            wire.PValue = p;
        if (comparison.AdjustedPValue is { } adjusted)
            wire.AdjustedPValue = adjusted;
        return wire;
    }
}
