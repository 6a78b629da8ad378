using FleetTrend.Records.Flags;

namespace FleetTrend.Trends.Scores;

/// <summary>What people made of the calls of a type group, and whether what helped lasted: from the steps of the flags' lives.</summary>
internal sealed class CallScores
{
    private const double YearDays = 365.25;
    private const double RateYears = 50;

    private readonly TypeGroupInputs inputs;
    private readonly List<(DateOnly RaiseDate, string Subject, IReadOnlyList<FlagStep> Steps)> flags;

    /// <summary>Sorts the steps.</summary>
    public CallScores(TypeGroupInputs inputs)
    {
        this.inputs = inputs;
        flags =
        [
            .. inputs.FlagSteps.GroupBy(s => s.FlagId).OrderBy(g => g.Key)
                .Select(g => (Day(g.First().RaiseTime), g.First().Subject, (IReadOnlyList<FlagStep>)[.. g])),
        ];
    }

    /// <summary>The day of the first call; null where there was none.</summary>
    public DateOnly? FirstDate => flags.Count == 0 ? null : flags.Min(f => f.RaiseDate);

    /// <summary>Calls raised in a quarter.</summary>
    public CallScore Calls(Quarter quarter)
    {
        var raised = flags.Where(f => Quarter.Of(f.RaiseDate) == quarter).Select(f => f.Steps).ToList();
        var (acted, settled) = (raised.Where(HasAction).ToList(), raised.Where(s => !FlagLife.IsUnsettled(s[^1].State)).ToList());
        return new CallScore
        {
            Flags = raised.Count(s => s.Any(step => step.State == FlagState.Open)),
            Watches = raised.Count(s => s.All(step => step.State != FlagState.Open)),
            ActedOn = acted.Count,
            Helped = acted.Count(s => s[^1].State == FlagState.Helped),
            NoBetter = acted.Count(s => s[^1].State == FlagState.NoBetter),
            ClosedAsNothing = settled.Count(s => !HasAction(s)),
            Open = raised.Count - settled.Count,
            ExpectedFalse = Math.Round(AircraftYears(quarter) * inputs.Parameters.WatchesPer50AircraftYears / RateYears, 2),
        };
    }

    /// <summary>Actions that were found to have helped in a quarter; null where none were.</summary>
    public EffectScore? Effects(Quarter quarter)
    {
        var helped = (from flag in flags
                      from step in flag.Steps
                      where step.State == FlagState.Helped && Quarter.Of(Day(step.StepTime)) == quarter
                      select (flag.Subject, step)).ToList();
        return helped.Count == 0 ? null : new EffectScore(helped.Count, helped.Count(h => CameBack(h.Subject, h.step)));
    }

    private bool CameBack(string subject, FlagStep helped) =>
        inputs.FlagSteps.Any(s => s.Subject == subject
            && ((s.FlagId == helped.FlagId && s.State == FlagState.Reopened && s.StepTime > helped.StepTime) || s.RaiseTime > helped.StepTime));

    private double AircraftYears(Quarter quarter)
    {
        var end = quarter.EndDate < inputs.AsOfDate ? quarter.EndDate : inputs.AsOfDate;
        return inputs.Present.Where(a => a.Hours.Days.Count > 0).Sum(a =>
        {
            var from = a.Hours.Days[0].Date is var first && first > quarter.StartDate ? first : quarter.StartDate;
            var until = a.RetiredDate is { } retired && retired < end ? retired : end;
            return Math.Max(0, until.DayNumber - from.DayNumber + 1) / YearDays;
        });
    }

    private static bool HasAction(IReadOnlyList<FlagStep> steps) => steps.Any(s => s.State == FlagState.ActedOn);

    private static DateOnly Day(DateTimeOffset moment) => DateOnly.FromDateTime(moment.UtcDateTime);
}
