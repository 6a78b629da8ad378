namespace FleetTrend.Statistics.Lives;

/// <summary>
/// As <see cref="FixedConditionalHazard"/> for the loglogistic, whose hazard between two ages cannot pass shape times ln(later/now) however
/// small its scale. x is the logarithm of what is left of that, so that a search cannot run into the edge, where a maximum may lie.
/// </summary>
internal sealed class FixedLoglogisticHazard(ConditionalHazard between, double logHazard) : LikelihoodPath
{
    private readonly double hazard = Math.Exp(logHazard);

    internal override double StepLimit => 3;

    /// <summary>ln of (1 - e^-hazard), which equals y times (e^excess - 1), y = (now / scale)^shape.</summary>
    private double LogFailed => Accurate.LogOneMinusExpOfMinus(hazard);

    internal override Position At(double x)
    {
        // mu = ln now + rise / shape, with rise = -ln y; shape and rise by the chain rule.
        var excess = Math.Exp(x);
        var shape = (hazard + excess) / between.Width;
        var shape1 = excess / between.Width; // and its second derivative
        var rise1 = excess > 0 ? excess / Accurate.OneMinusExpOfMinus(excess) : 1;
        var rise2 = rise1 * (1 + excess - rise1);
        var lift = (Accurate.LogExpMinusOne(excess) - LogFailed) / shape;
        var lift1 = (rise1 - (lift * shape1)) / shape;
        var lift2 = (rise2 - (2 * lift1 * shape1) - (lift * shape1)) / shape;
        var tau1 = shape1 / shape;
        return new Position(between.LogNow + lift, Math.Log(shape), lift1, tau1, lift2, tau1 * (1 - tau1));
    }

    internal override double Nearest(double mu, double tau)
    {
        var logGrowth = LogFailed + (Math.Exp(tau) * (mu - between.LogNow)); // ln(e^excess - 1)
        return logGrowth < -30 ? logGrowth : Math.Log(logGrowth > 30 ? logGrowth : Accurate.LogOnePlus(Math.Exp(logGrowth)));
    }
}
