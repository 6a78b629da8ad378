using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Decisions;

/// <summary>
/// Distribution of the number of parts found failed at one position after so many looks, each being renewed at the look that finds it: the part in service
/// from its conditional life, later ones from a new part's. At each look a good part may go out too, as with its sisters: it counts for nothing, and what comes
/// in is new.
/// </summary>
/// <remarks>Source: the renewal equation in steps of the looks (Feller 1968, An Introduction to Probability Theory and Its Applications, chapter
/// XIII).</remarks>
internal sealed class RenewalCount
{
    private readonly LifeModel life;
    private readonly double lookHours;
    private readonly double stays;
    private readonly List<double> freshSurvival = [1];

    /// <summary>For parts of one life that are looked at in one rhythm.</summary>
    /// <param name="life">The life.</param>
    /// <param name="lookHours">Hours from look to look.</param>
    /// <param name="goesOutGood">Chance that a part which a look finds good goes out at it.</param>
    public RenewalCount(LifeModel life, double lookHours, double goesOutGood) => (this.life, this.lookHours, stays) = (life, lookHours, 1 - goesOutGood);

    /// <summary>Chances of 0, 1, 2 and so on after each number of looks that is asked for.</summary>
    /// <param name="part">The part, of that rhythm.</param>
    /// <param name="looks">Numbers of looks; none is negative.</param>
    /// <returns>One distribution per number of looks, in their order.</returns>
    public double[][] Compute(PartInUse part, IReadOnlyList<int> looks)
    {
        var most = looks.Max();
        for (var k = freshSurvival.Count; k <= most; k++)
            freshSurvival.Add(life.Survival(k * lookHours) * Math.Pow(stays, k));
        var here = Survival(part, most);
        var renewed = new double[most + 1][];
        for (var i = 1; i <= most; i++)
            renewed[i] = RenewedAt(i, here, renewed);
        var chances = new double[looks.Count][];
        for (var h = 0; h < looks.Count; h++)
            chances[h] = After(looks[h], here, renewed);
        return chances;
    }

    /// <summary>Chances that a new part comes in at a look, by the failures found at the position until then.</summary>
    private double[] RenewedAt(int look, double[] here, double[][] renewed)
    {
        var chances = new double[look + 1];
        Add(here[look - 1], here[look], 0, 1);
        for (var from = 1; from < look; from++)
        {
            for (var k = 0; k < renewed[from].Length; k++)
                Add(freshSurvival[look - from - 1], freshSurvival[look - from], k, renewed[from][k]);
        }

        return chances;

        // Of those in place at the look before, what is good now and stays is in place; what is good and goes out is (1 - stays) / stays of that.
        void Add(double before, double now, int failures, double weight)
        {
            if (weight == 0 || stays == 0)
                return;
            chances[failures] += weight * now * (1 - stays) / stays;
            chances[failures + 1] += weight * Math.Max(0, before - now / stays);
        }
    }

    private double[] After(int looks, double[] here, double[][] renewed)
    {
        var chances = new double[looks + 1];
        chances[0] = here[looks];
        for (var i = 1; i <= looks; i++)
        {
            for (var k = 0; k < renewed[i].Length; k++)
                chances[k] += renewed[i][k] * freshSurvival[looks - i];
        }

        var length = chances.Length;
        while (length > 1 && chances[length - 1] < DemandForecast.Negligible)
            length--;
        return length == chances.Length ? chances : chances[..length];
    }

    /// <summary>Chance that the part in service is good at each look and still there after it, given that it was last seen good.</summary>
    private double[] Survival(PartInUse part, int most)
    {
        var here = new double[most + 1];
        here[0] = 1;
        var passed = most == 0 ? 0 : life.CumulativeHazard(part.GoodAge);
        // So far beyond its life that even the logarithm of survival overflows, it fails by the next look.
        for (var (i, staysUntil) = (1, stays); i <= most && double.IsFinite(passed); i++, staysUntil *= stays)
            here[i] = Math.Min(here[i - 1], Math.Exp(passed - life.CumulativeHazard(part.AgeAtLook(i))) * staysUntil);
        return here;
    }
}
