using FleetTrend.Contracts.V1;

namespace FleetTrend.Synthetic;

/// <summary>One location of one synthetic aircraft: what is hidden in it until somebody looks.</summary>
internal sealed class Spot(Location location, Condition condition, PartWear? life)
{
    public string Path => location.Path;

    public string Kind => location.Kind;

    public Condition Condition => condition;

    public bool HasLife => life is not null;

    /// <summary>Rate at which it goes bad, per 1,000 h, from the next draw on.</summary>
    public required double RatePer1000Hours { get; set; }

    /// <summary>Factor on its life, from the next draw on.</summary>
    public required double LifeFactor { get; set; }

    /// <summary>Time in service at which it goes bad next; infinite where it does not.</summary>
    public double BadAt { get; private set; } = double.PositiveInfinity;

    /// <summary>A defect that was seen and left: it is seen again at every look.</summary>
    public bool IsLeft { get; set; }

    /// <summary>Time in service at which what is there now went in, or was first known of.</summary>
    public double SinceHours { get; private set; }

    /// <summary>Draws when it goes bad next, seen from a time in service, for a part of that age.</summary>
    public void Draw(double hours, double age, Random random)
    {
        IsLeft = false;
        SinceHours = hours;
        if (life is not null)
        {
            // Conditional on having reached this age: inverse of the Weibull survival function.
            var scale = life.ScaleHours * LifeFactor;
            var exposed = Math.Pow(age / scale, life.Shape) - Math.Log(1 - random.NextDouble());
            BadAt = hours - age + (scale * Math.Pow(exposed, 1 / life.Shape));
        }
        else if (RatePer1000Hours > 0)
        {
            BadAt = hours - (Math.Log(1 - random.NextDouble()) * 1000 / RatePer1000Hours);
        }
    }
}
