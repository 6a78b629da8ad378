namespace FleetTrend.Statistics.Decisions;

/// <summary>
/// One pass over the transition ages. The chances are multiplied by the identity plus the observed transition fractions;
/// each unit's influence on them follows the product's derivative.
/// </summary>
internal sealed class StateSweep
{
    private readonly int states;
    private readonly StateSpan[] byStart;
    private readonly StateSpan[] byStop;
    private readonly Dictionary<string, int> unitIndex = new(StringComparer.Ordinal);
    private readonly int[] atRisk;
    private readonly int[] stateOf;
    private readonly double[] chances;
    private readonly double[]? influence;
    private int started;
    private int stopped;

    public StateSweep(IReadOnlyList<StateSpan> spans, int states, double first, bool standardErrors)
    {
        this.states = states;
        byStart = [.. spans.OrderBy(s => s.Start)];
        byStop = [.. spans.OrderBy(s => s.Stop)];
        foreach (var span in spans)
            unitIndex.TryAdd(span.Unit, unitIndex.Count);
        atRisk = new int[states];
        stateOf = new int[unitIndex.Count];
        Array.Fill(stateOf, -1);
        chances = new double[states];

        Advance(first);
        double watched = atRisk.Sum();
        for (var s = 0; s < states; s++)
            chances[s] = atRisk[s] / watched;
        if (!standardErrors)
            return;
        influence = new double[unitIndex.Count * states];
        for (var u = 0; u < stateOf.Length; u++)
        {
            for (var s = 0; stateOf[u] >= 0 && s < states; s++)
                influence[u * states + s] = ((stateOf[u] == s ? 1 : 0) - chances[s]) / watched;
        }
    }

    /// <summary>Units.</summary>
    public int Units => stateOf.Length;

    /// <summary>A copy of the chances.</summary>
    public double[] Chances() => (double[])chances.Clone();

    /// <summary>The transitions at one age.</summary>
    public StatePoint Step(double time)
    {
        Advance(time);
        var risk = (int[])atRisk.Clone();
        var fraction = new double[states * states];
        var moves = new List<StateSpan>();
        for (var k = stopped; k < byStop.Length && byStop[k].Stop == time; k++)
        {
            if (byStop[k].Next is { } next)
            {
                fraction[byStop[k].State * states + next] += 1.0 / risk[byStop[k].State];
                moves.Add(byStop[k]);
            }
        }
        if (influence is not null)
            MoveInfluence(influence, fraction, moves, risk);
        Multiply(chances, fraction);
        return new StatePoint(time, risk, Chances(), Errors());
    }

    /// <summary>Brings the units at risk to just before an age: spans that ended earlier are out, spans begun earlier are in.</summary>
    private void Advance(double time)
    {
        while (stopped < byStop.Length && byStop[stopped].Stop < time)
        {
            while (started < byStart.Length && byStart[started].Start < byStop[stopped].Stop)
                Enter(byStart[started++]);
            var span = byStop[stopped++];
            atRisk[span.State]--;
            if (stateOf[unitIndex[span.Unit]] == span.State)
                stateOf[unitIndex[span.Unit]] = -1;
        }
        while (started < byStart.Length && byStart[started].Start < time)
            Enter(byStart[started++]);
    }

    private void Enter(StateSpan span)
    {
        atRisk[span.State]++;
        stateOf[unitIndex[span.Unit]] = span.State;
    }

    private void MoveInfluence(double[] all, double[] fraction, List<StateSpan> moves, int[] risk)
    {
        for (var u = 0; u < stateOf.Length; u++)
        {
            Multiply(all.AsSpan(u * states, states), fraction);
            var state = stateOf[u];
            if (state < 0)
                continue;
            // Own share of the fractions: what the unit did less what its state did on average.
            var scale = chances[state] / risk[state];
            for (var to = 0; to < states; to++)
            {
                var average = fraction[state * states + to];
                all[u * states + to] -= scale * average;
                all[u * states + state] += scale * average;
            }
        }
        foreach (var move in moves)
        {
            var u = unitIndex[move.Unit];
            var scale = chances[move.State] / risk[move.State];
            all[u * states + move.Next!.Value] += scale;
            all[u * states + move.State] -= scale;
        }
    }

    /// <summary>Row vector times identity plus fractions, in place.</summary>
    private void Multiply(Span<double> row, double[] fraction)
    {
        Span<double> before = stackalloc double[states];
        row.CopyTo(before);
        for (var from = 0; from < states; from++)
        {
            for (var to = 0; to < states; to++)
            {
                var moved = before[from] * fraction[from * states + to];
                row[from] -= moved;
                row[to] += moved;
            }
        }
    }

    private double[] Errors()
    {
        if (influence is null)
            return [];
        var sum = new double[states];
        for (var k = 0; k < influence.Length; k++)
            sum[k % states] += influence[k] * influence[k];
        return Array.ConvertAll(sum, Math.Sqrt);
    }
}
