using FleetTrend.Contracts.V1;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Six aircraft with one weld each, looked at every two weeks until three weeks ago; one of them gets worse from day 560 on.</summary>
internal static class PlantedChange
{
    public const string TypeGroup = "welded";

    /// <summary>The day from which they are watched; an hour a day.</summary>
    public static readonly DateOnly Start = DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-720);

    // Days after the start on which each of them cracked.
    private static readonly int[][] Cracks =
    [
        [280, 574, 588, 602, 616, 630, 644, 658, 672, 686],
        [140, 420], [210, 504], [252, 364], [322, 630], [112, 448],
    ];

    /// <summary>Pushes them.</summary>
    /// <returns>The one that gets worse.</returns>
    public static async Task<string> PushAsync(ApiServer server)
    {
        var fleet = new UnitFleet(TypeGroup, "flange-weld", "ZZ", hoursPerDay: 1, Start);
        List<string> units = [.. Cracks.Select(_ => fleet.Unit())];
        foreach (var (unit, cracks) in units.Zip(Cracks))
        {
            for (var day = 14; day <= 700; day += 14)
            {
                fleet.Looked(unit, day);
                if (!cracks.Contains(day))
                    continue;
                fleet.Found(unit, day, Condition.Crack);
                fleet.Done(unit, day, ActionKind.WeldRepaired);
            }
        }

        await fleet.PushAsync(server);
        return units[0];
    }
}
