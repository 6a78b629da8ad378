using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Benchmarks;

/// <summary>
/// Races on recurrences. Ours finds a robust standard error at every event age, and the making of units from columns is
/// counted; against R's own function of that kind, and against vectorised R that finds them at four ages only.
/// </summary>
internal static class RecurrenceRaces
{
    private static readonly double[] Ages = [500, 1000, 1500, 2000];

    public static IEnumerable<Race> All =>
    [
        Mcf("MCF, robust errors at every event age", "mcf-survfit", 20),
        Mcf("MCF, against R at four ages only", "mcf-four-times", 1),
    ];

    private static Race Mcf(string name, string task, double floor) => new()
    {
        Name = name,
        File = "recurrences",
        Rows = 1_000_000,
        RTask = task,
        Floor = floor,
        Prepare = file =>
        {
            var (id, stop, status) = (file["id"], file["stop"], file["status"]);
            return () =>
            {
                var mcf = MeanCumulativeFunction.Estimate(Units(id, stop, status)).Value;
                var at = Array.ConvertAll(Ages, a => mcf.At(a)!.Value);
                return [.. at.Select(p => p.Value), .. at.Select(p => p.StandardError)];
            };
        },
        Disagreement = Race.Within(1e-7),
    };

    /// <summary>Rows lie by unit and age; the row without an event closes a unit.</summary>
    private static List<RecurrenceUnit> Units(double[] id, double[] stop, double[] status)
    {
        var units = new List<RecurrenceUnit>();
        for (var first = 0; first < id.Length;)
        {
            var last = first;
            while (status[last] == 1)
                last++;
            units.Add(new RecurrenceUnit(0, stop[last], new ArraySegment<double>(stop, first, last - first)));
            first = last + 1;
        }
        return units;
    }
}
