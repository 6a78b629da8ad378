using FleetTrend.Trends.Scores;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>How right forecasts were, as the contract writes it.</summary>
internal static class ScoreMessages
{
    public static Wire.Score ToWire(this Score score) => new()
    {
        TypeGroup = score.TypeGroup,
        QuarterStartDate = score.Quarter.StartDate.ToWire(),
        QuarterEndDate = score.Quarter.EndDate.ToWire(),
        IsOver = score.IsOver,
        Chances = score.Chances?.ToWire(),
        ChancesOfTwo = score.ChancesOfTwo?.ToWire(),
        Spares = score.Spares?.ToWire(),
        SparesOfTwo = score.SparesOfTwo?.ToWire(),
        DueLooks = score.DueLooks?.ToWire(),
        Calls = score.Calls?.ToWire(),
        Effects = score.Effects is { } effects ? new Wire.EffectScore { HelpedCount = effects.Helped, CameBackCount = effects.CameBack } : null,
        Statements = { ScoreWords.Statements(score) },
    };

    private static Wire.ChanceScore ToWire(this ChanceScore chances) => new()
    {
        FromDate = chances.FromDate.ToWire(),
        LookCount = chances.Looks,
        ExpectedCount = chances.Expected,
        FoundCount = chances.Found,
        LowerCount = chances.Lower,
        UpperCount = chances.Upper,
        Groups = { chances.Groups.Select(FailureChanceMessages.ToWire) },
        Verdict = ToWire(chances.IsOff),
    };

    private static Wire.SpareScore ToWire(this SpareScore spares) => new()
    {
        KeptDate = spares.KeptDate.ToWire(),
        Horizons =
        {
            spares.Horizons.Select(h => new Wire.SpareHorizonScore
            {
                Days = h.Days,
                ForecastCount = h.Forecasts,
                HeldCount = h.Held,
                AtLeastCount = h.AtLeast,
                ExpectedCount = h.Expected,
                NeededCount = h.Needed,
                LowerCount = h.Lower,
                UpperCount = h.Upper,
            }),
        },
        JudgedDays = spares.JudgedDays,
        Verdict = ToWire(spares.IsOff),
    };

    private static Wire.DueScore ToWire(this DueScore due)
    {
        var wire = new Wire.DueScore
        {
            NamedCount = due.Named,
            MetCount = due.Met,
            LateCount = due.Late,
            OpenCount = due.Open,
            FlownCount = due.Flown,
            WithinWeekCount = due.WithinWeek,
        };
        if (due.MedianDaysLate is { } late)
            wire.MedianDaysLate = late;
        return wire;
    }

    private static Wire.CallScore ToWire(this CallScore calls) => new()
    {
        FlagCount = calls.Flags,
        WatchCount = calls.Watches,
        ActedOnCount = calls.ActedOn,
        HelpedCount = calls.Helped,
        NoBetterCount = calls.NoBetter,
        ClosedAsNothingCount = calls.ClosedAsNothing,
        OpenCount = calls.Open,
        ExpectedFalseCount = calls.ExpectedFalse,
    };

    private static Wire.ScoreVerdict ToWire(bool? isOff) =>
        isOff is { } off ? off ? Wire.ScoreVerdict.Off : Wire.ScoreVerdict.Within : Wire.ScoreVerdict.NotJudged;
}
