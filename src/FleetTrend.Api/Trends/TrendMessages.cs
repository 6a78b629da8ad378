using FleetTrend.Statistics.Effects;
using FleetTrend.Trends.Effects;
using FleetTrend.Trends.Levels;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.Quiet;
using FleetTrend.Trends.Rates;
using FleetTrend.Trends.Recurrences;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Trends as the contract writes them.</summary>
internal static class TrendMessages
{
    public static Wire.Rate ToWire(this RateTrend rate) => new()
    {
        TypeGroup = rate.TypeGroup,
        Kind = rate.Kind ?? "",
        Location = rate.Location ?? "",
        Condition = (Wire.Condition)rate.Condition,
        Rate_ = rate.Rate.ToWire(),
        AircraftCount = rate.AircraftCount,
        PresentAtEntryCount = rate.PresentAtEntryCount,
        RepeatCount = rate.RepeatCount,
        NotWatchedCount = rate.NotWatchedCount,
    };

    public static Wire.PartLife ToWire(this PartLifeTrend life)
    {
        var wire = Counts(life);
        if (life.FailedBeforeEntry is { } before)
            wire.FailedBeforeEntryCount = before;
        if (life.NeverExamined is { } never)
            wire.NeverExaminedCount = never;
        if (life.FailedInNoHours is { } inNoHours)
            wire.FailedInNoHoursCount = inNoHours;
        if (life.FollowedFromHours is { } from)
            wire.FollowedFromHours = from;
        if (life.FollowedToHours is { } to)
            wire.FollowedToHours = to;
        return wire;
    }

    private static Wire.PartLife Counts(PartLifeTrend life) => new()
    {
        TypeGroup = life.TypeGroup,
        Kind = life.Kind,
        Base = life.Base ?? "",
        LifeCount = life.Lives,
        FailureCount = life.Failures,
        LateEntryCount = life.LateEntries,
        AgeUnknownCount = life.AgeUnknown,
        OtherExcludedCount = life.OtherExcluded,
        Curve = { life.Curve.Select(ToWire) },
        CurveMethod = life.CurveMethod,
        Fits = { life.Fits.Select(ToWire) },
        NotEnoughData = life.NotEnoughData ?? "",
        Contrast = life.Contrast?.ToWire(),
        FailureRate = life.FailureRate.ToWire(),
        ShownDistribution = life.Shown?.Distribution ?? "",
        EarlyFailures = life.EarlyFailures?.ToWire(),
        BasesDiffer = life.BasesDiffer,
    };

    public static Wire.Recurrence ToWire(this RecurrenceTrend recurrence) => new()
    {
        TypeGroup = recurrence.TypeGroup,
        Location = recurrence.Location,
        Kind = recurrence.Kind,
        Condition = (Wire.Condition)recurrence.Condition,
        AircraftCount = recurrence.AircraftCount,
        EventCount = recurrence.Events,
        Points = { recurrence.Points.Select(ToWire) },
        Method = recurrence.Method,
        Watched = { (recurrence.Watched ?? []).Select(w => new Wire.WatchedSpan { FromHours = w.FromHours, ToHours = w.ToHours }) },
    };

    public static Wire.Level ToWire(this Level level) => new()
    {
        TypeGroup = level.TypeGroup,
        Registration = level.Registration ?? "",
        Base = level.Base ?? "",
        Location = level.Location ?? "",
        Condition = level.Condition is { } condition ? (Wire.Condition)condition : Wire.Condition.Unspecified,
        PartKind = level.Kind ?? "",
        ObservedCount = level.Found,
        ExpectedCount = level.Expected,
        Ratio = level.Ratio.ToWire(),
        ChanceAboveOneAndAHalf = level.ChanceAboveOneAndAHalf,
        Variation = level.Variation,
    };

    public static Wire.Effect ToWire(this Effect effect) => new()
    {
        PracticeChange = effect.Practice is { } key ? EvidenceMessages.ToWire(key) : null,
        What = effect.What ?? "",
        TypeGroup = effect.TypeGroup,
        Registration = effect.Registration ?? "",
        Base = effect.Base ?? "",
        Location = effect.Location ?? "",
        Condition = effect.Condition is { } condition ? (Wire.Condition)condition : Wire.Condition.Unspecified,
        PartKind = effect.Kind ?? "",
        ActionDate = effect.ActionDate.ToWire(),
        Verdict = effect.Verdict switch
        {
            EffectVerdict.Helped => Wire.EffectVerdict.Helped,
            EffectVerdict.NoBetter => Wire.EffectVerdict.NoBetter,
            _ => Wire.EffectVerdict.TooEarly,
        },
        BeforeSinceDate = effect.BeforeSinceDate.ToWire(),
        FoundBeforeCount = effect.FoundBefore,
        ExpectedBeforeCount = effect.ExpectedBefore,
        FoundAfterCount = effect.FoundAfter,
        ExpectedAfterCount = effect.ExpectedAfter,
        OthersFoundAfterCount = effect.OthersFoundAfter,
        AfterOverBefore = effect.AfterOverBefore.ToWire(),
        AfterOverNorm = effect.AfterOverNorm.ToWire(),
        Odds = Math.Exp(Math.Min(effect.LogOdds, 700)),
        Statement = effect.Statement,
    };

    public static Wire.Quietness ToWire(this Quietness quiet)
    {
        var wire = new Wire.Quietness
        {
            Registration = quiet.Registration ?? "",
            Base = quiet.Base,
            TypeGroup = quiet.TypeGroup,
            Verdict = (Wire.QuietVerdict)quiet.Verdict,
            SinceDate = quiet.SinceDate.ToWire(),
            ObservedCount = quiet.Found,
            ExpectedCount = quiet.Expected,
            Ratio = quiet.Ratio.ToWire(),
            Classes = { quiet.Classes.Select(ToWire) },
            UnexaminedLocations = { quiet.Unexamined.Select(ToWire) },
            Questions = { quiet.Questions },
            RecordKeys = { quiet.Evidence.Select(EvidenceMessages.ToWire) },
        };
        if (quiet.Hours is { } hours)
            wire.Hours = hours;
        if (quiet.LogOdds is { } log)
            wire.Odds = Math.Exp(log);
        return wire;
    }

    private static Wire.QuietClass ToWire(QuietClass of) => new()
    {
        Condition = of.Condition is { } condition ? (Wire.Condition)condition : Wire.Condition.Unspecified,
        Kind = of.Kind ?? "",
        ObservedCount = of.Found,
        ExpectedCount = of.Expected,
    };

    private static Wire.UnexaminedLocation ToWire(UnexaminedLocation location) => new()
    {
        Location = location.Location,
        Kind = location.Kind,
        LastLookDate = location.LastLookDate.ToWire(),
        Hours = location.Hours,
        InspectionCount = location.InspectionCount,
        OthersExaminedCount = location.OthersExamined,
        OthersCount = location.OthersCount,
    };

    private static Wire.LifeStep ToWire(LifeStep step)
    {
        var wire = new Wire.LifeStep { LowerHours = step.Lower, Mass = step.Mass, Cumulative = step.Cdf };
        if (step.Upper is { } upper)
            wire.UpperHours = upper;
        return wire;
    }

    private static Wire.LifeFit ToWire(LifeDistributionFit fit) => new()
    {
        Distribution = fit.Distribution,
        First = fit.First.ToWire(),
        FirstName = fit.FirstName,
        Second = fit.Second.ToWire(),
        SecondName = fit.SecondName,
        LogLikelihood = fit.LogLikelihood,
        Aic = fit.Aic,
        B10 = fit.B10.ToWire(),
        Median = fit.Median.ToWire(),
        FailureWithinLookAhead = fit.FailureWithinLookAhead.ToWire(),
    };

    private static Wire.BaseContrast ToWire(this BaseContrast contrast)
    {
        var wire = new Wire.BaseContrast
        {
            MedianRatio = contrast.MedianRatio.ToWire(),
            OtherLifeCount = contrast.OtherLives,
            OtherFailureCount = contrast.OtherFailures,
            PValue = contrast.Strongest?.PValue ?? 1,
            QValue = contrast.Strongest?.QValue ?? 1,
            MedianTest = ToWire(contrast.MedianTest),
            EarlyTest = ToWire(contrast.EarlyTest),
            MedianHere = contrast.MedianHere?.ToWire(),
            MedianElsewhere = contrast.MedianElsewhere?.ToWire(),
            MedianFromHours = contrast.MedianFromHours,
            EarlyHere = contrast.EarlyHere?.ToWire(),
            EarlyElsewhere = contrast.EarlyElsewhere?.ToWire(),
            EarlyRatio = contrast.EarlyRatio?.ToWire(),
        };
        if (contrast.EarlyHours is { } hours)
            wire.EarlyHours = hours;
        return wire;
    }

    private static Wire.ContrastTest? ToWire(ContrastTest? test) => test is null ? null : new Wire.ContrastTest
    {
        PValue = test.PValue,
        QValue = test.QValue,
        Finding = (Wire.ContrastFinding)test.Finding,
    };

    private static Wire.MeanCumulativePoint ToWire(MeanCumulativePoint point) => new()
    {
        TimeInServiceHours = point.Hours,
        AtRiskCount = point.AtRisk,
        EventCount = point.Events,
        Value = point.Value,
        StandardError = point.StandardError,
        Lower = point.Lower,
        Upper = point.Upper,
    };
}
