using FleetTrend.Trends.Spares;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Spares as the contract writes them.</summary>
internal static class SpareMessages
{
    public static Wire.SpareNeed ToWire(this SpareNeed need)
    {
        var wire = new Wire.SpareNeed
        {
            Base = need.Base,
            PartNumber = need.PartNumber ?? "",
            Kinds = { need.Kinds },
            TypeGroups = { need.TypeGroups },
            PartCount = need.Parts,
            AgeUnknownCount = need.AgeUnknown,
            TooFewFailuresCount = need.TooFewFailures,
            WaitingCount = need.Waiting,
            UsedInYearCount = need.UsedInYear,
            FailureCount = need.Failures,
            PartsPerFailure = need.PartsPerFailure,
            Horizons = { need.Horizons.Select(h => ToWire(need, h)) },
            ServiceLevel = need.ServiceLevel,
            Confidence = need.Confidence,
            Stock = need.Stock is { } stock ? ToWire(stock) : null,
            Statement = SpareWords.Statement(need),
        };
        if (need.OrderWithinDays is { } days)
            wire.OrderWithinDays = days;
        return wire;
    }

    private static Wire.SpareHorizon ToWire(SpareNeed need, SpareHorizon horizon)
    {
        var (interval, needed) = (need.IntervalOf(horizon), need.Needed(horizon));
        var wire = new Wire.SpareHorizon
        {
            Days = horizon.Days,
            MeanCount = horizon.Mean,
            LowerCount = (int)interval.Lower,
            UpperCount = (int)interval.Upper,
            NeededCount = needed,
        };
        if (need.Stock is { } stock)
            wire.MissingCount = Math.Max(0, needed - stock.OnHand);
        return wire;
    }

    private static Wire.SpareStock ToWire(SpareStock stock)
    {
        var wire = new Wire.SpareStock
        {
            CountDate = stock.CountDate.ToWire(),
            Quantity = stock.Quantity,
            UsedSinceCount = stock.UsedSince,
            OnHandCount = stock.OnHand,
            RecordKey = EvidenceMessages.ToWire(stock.Key),
        };
        if (stock.LeadTimeDays is { } days)
            wire.LeadTimeDays = days;
        return wire;
    }
}
