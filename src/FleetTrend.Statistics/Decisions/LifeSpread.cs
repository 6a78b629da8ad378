using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Decisions;

/// <summary>What is not known of a fitted life, as lives with weights along the direction in which the expected demand moves most.</summary>
internal static class LifeSpread
{
    private const double Reach = 3;
    private const int LeastSteps = 2;
    private const int MostSteps = 12;

    // Where the life adds so little to what chance scatters, three nodes say the same.
    private const double Narrow = 0.5;

    /// <summary>
    /// Lives at equal steps of the standard normal z, with its density as weights: ln scale and ln shape are off by z S g / sqrt(g'S g), where S is their
    /// covariance and g the slope of the expected demand. Steps are no longer than what chance alone scatters, so that the mixture is smooth; where
    /// the life adds
    /// little to chance, three nodes of Gauss and Hermite (Abramowitz and Stegun 1972, table 25.10) take their place.
    /// </summary>
    public static IReadOnlyList<(LifeModel Life, double Weight)> Along(IReadOnlyList<UnitInUse> units, LifeFit fit)
    {
        var (mean, ofMu, ofTau) = (0.0, 0.0, 0.0);
        foreach (var unit in units)
        {
            if (unit.HoursAhead.Count == 0)
                continue;
            var ahead = unit.HoursAhead.Max(h => h.Mean);
            foreach (var part in unit.Parts)
            {
                var hours = part.Age - part.GoodAge + ahead;
                if (hours <= 0)
                    continue;
                var hazard = fit.Estimate.LogHazardAhead(part.GoodAge, hours);
                var passed = Math.Exp(hazard.Value);
                mean += ElementaryFunctions.OneMinusExp(passed);
                var slope = passed * Math.Exp(-passed); // of the chance in the logarithm of the hazard
                ofMu += slope * hazard.Mu;
                ofTau += slope * hazard.Tau;
            }
        }

        var covariance = fit.LogCovariance;
        var deviation = Math.Sqrt(covariance.Variance(ofMu, ofTau));
        if (!(deviation > 0) || !double.IsFinite(deviation))
            return [(fit.Model, 1.0)];
        var moveMu = (covariance.LogScale * ofMu + covariance.Mixed * ofTau) / deviation;
        var moveTau = (covariance.Mixed * ofMu + covariance.LogShape * ofTau) / deviation;
        if (deviation <= Narrow * Math.Sqrt(mean))
            return [(Moved(0), 2.0 / 3), (Moved(-Math.Sqrt(3)), 1.0 / 6), (Moved(Math.Sqrt(3)), 1.0 / 6)];
        var steps = (int)Math.Clamp(Math.Ceiling(Reach * deviation / Math.Sqrt(mean)), LeastSteps, MostSteps);
        var lives = new List<(LifeModel Life, double Weight)>();
        for (var i = -steps; i <= steps; i++)
        {
            var z = Reach * i / steps;
            lives.Add((Moved(z), Math.Exp(-z * z / 2)));
        }

        var whole = lives.Sum(l => l.Weight);
        return [.. lives.Select(l => (l.Life, l.Weight / whole))];

        LifeModel Moved(double z) => new(fit.Distribution, fit.Model.Scale * Math.Exp(z * moveMu), fit.Model.Shape * Math.Exp(z * moveTau));
    }
}
