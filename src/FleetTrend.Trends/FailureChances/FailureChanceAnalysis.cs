using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.FailureChances;

/// <summary>
/// The chance that each part in service fails before its next look, at its age, given that it was last seen good; and how many of an aircraft's parts will.
/// </summary>
public sealed class FailureChanceAnalysis : Analysis<FailureChance>
{
    private const int Digits = 8;

    /// <summary>Makes the analysis.</summary>
    public FailureChanceAnalysis()
        : base("failure-chances")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(FailureChance item) => new(item.Registration, Base: item.Base);

    /// <inheritdoc/>
    public override Headline HeadlineOf(FailureChance item) => new("", item.Expected, item.Lower, item.Upper, 0);

    /// <summary>The most failures first.</summary>
    public override IEnumerable<FailureChance> Order(IEnumerable<FailureChance> items) =>
        items.OrderByDescending(c => c.Expected).ThenBy(c => c.Registration, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<FailureChance> Find(TypeGroupInputs inputs, ICollection<double> tests) =>
        inputs.Present.Where(a => a.RetiredDate is null && a.Lives.Any(l => l.Ending == LifeEnding.InService)).Select(a => Describe(inputs, a));

    private static FailureChance Describe(TypeGroupInputs inputs, AircraftObservations aircraft)
    {
        var (ageUnknown, tooFew) = (0, 0);
        List<(PartChance Part, PartAhead Ahead, ObservedLife Life)> parts = [];
        foreach (var life in aircraft.Lives.Where(l => l.Ending == LifeEnding.InService))
        {
            if (life.AgeNow is not { } now)
                ageUnknown++;
            else if (inputs.LifeLaws.Of(life.Kind.Name, life.Base) is not { Fit: { } fit })
                tooFew++;
            else
                parts.Add(Look(life, now.Value, fit, inputs.Parameters.LookIntervalHoursOf(inputs.TypeGroup, life.Kind.Name)));
        }

        parts = [.. parts.OrderByDescending(p => p.Part.Chance).ThenBy(p => p.Part.Location, StringComparer.Ordinal)];
        var sum = FailuresAhead.EstimateSum(parts.Select(p => p.Ahead), inputs.Parameters.Confidence);
        return new FailureChance
        {
            Registration = aircraft.Registration,
            Base = aircraft.Base,
            TypeGroup = aircraft.TypeGroup,
            Parts = [.. parts.Select(p => p.Part)],
            Expected = Rounded(sum.Value),
            Lower = Rounded(sum.Interval.Lower),
            Upper = Rounded(sum.Interval.Upper),
            AnyChance = Rounded(1 - parts.Aggregate(1.0, (none, p) => none * (1 - p.Part.Chance))),
            Confidence = inputs.Parameters.Confidence,
            AgeUnknown = ageUnknown,
            TooFewFailures = tooFew,
            Evidence = [.. parts.SelectMany(p => p.Life.Evidence).Distinct()],
        };
    }

    private static (PartChance Part, PartAhead Ahead, ObservedLife Life) Look(ObservedLife life, double now, LifeFit fit, double interval)
    {
        var good = life.LastGood.Value;
        var next = Math.Max(now, good + interval);
        var ahead = new PartAhead(fit, good, next - good);
        var chance = FailuresAhead.EstimateChance(ahead);
        var part = new PartChance
        {
            Location = life.Location,
            Kind = life.Kind.Name,
            GoodHours = good,
            AgeHours = now,
            NextLookHours = next,
            Chance = Rounded(chance.Value),
            Lower = Rounded(chance.Interval.Lower),
            Upper = Rounded(chance.Interval.Upper),
        };
        return (part, ahead, life);
    }

    // A row has tens of these; what is beyond eight digits says nothing.
    private static double Rounded(double value) => double.IsFinite(value) ? Math.Round(value, Digits) : value;
}
