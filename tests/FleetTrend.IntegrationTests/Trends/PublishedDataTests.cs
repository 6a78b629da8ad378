using FleetTrend.Contracts.V1;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>
/// Published inspections go in through the gRPC stream as the records of a type group of their own, and the trend query
/// answers with the published estimates, to the digits printed. Rows: tests/reference, each with its SOURCE.md.
/// Digits named "read" are printed in the source; "computed" ones were made from the same rows with R's survival package.
/// </summary>
[Collection(SharedPostgres.Name)]
public sealed class PublishedDataTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    // Nelson, Applied Life Data Analysis, 1982, p. 409; Meeker and Escobar, Statistical Methods for Reliability Data, 1998,
    // p. 135: 432 turbine wheels, 106 cracked, each looked at once, at hundreds of hours. Read: lognormal mu 3.6999, sigma
    // 0.7199, log-likelihood -190.73. Computed: Weibull shape 2.1758, scale 46.777, log-likelihood -189.287, median 39.53.
    [Fact]
    public async Task Turbine_wheels_looked_at_once()
    {
        var life = await WheelsAsync();

        Assert.Equal((432, 106, 0, 0), (life.LifeCount, life.FailureCount, life.AgeUnknownCount, life.OtherExcludedCount));
        var weibull = Fit(life, "Weibull");
        Assert.Equal(2.1758, weibull.First.Value, 4);
        Assert.Equal(46.777, weibull.Second.Value / 100, 3);
        Assert.Equal(-189.287, weibull.LogLikelihood, 3);
        Assert.Equal(39.53, weibull.Median.Value / 100, 2);
        var lognormal = Fit(life, "lognormal");
        Assert.Equal(3.6999, lognormal.First.Value - Math.Log(100), 4); // hours, not hundreds: mu is larger by ln 100
        Assert.Equal(0.7199, lognormal.Second.Value, 4);
        Assert.Equal(-190.73, lognormal.LogLikelihood, 2);
        Assert.Equal("Weibull", life.Fits[0].Distribution); // the smaller AIC

        // The isotonic estimate at the eleven looks (computed by pooling adjacent violators).
        double[] looks = [4, 10, 14, 18, 22, 26, 30, 34, 38, 42, 46];
        double[] cdf = [0, .0698, .0698, .0959, .1667, .2222, .2222, .4615, .5811, .5811, .5833];
        Assert.All(looks, (look, i) => Assert.Equal(cdf[i], CumulativeAt(life, look * 100), 4));
        AssertComplete(weibull.Median, 106, 432);
    }

    // The same wheels with the hours of the finding taken as the hours of the failure give shape 4.79, scale 44.29 (computed).
    [Fact]
    public async Task The_hours_of_a_finding_are_not_the_hours_of_the_failure()
    {
        var weibull = Fit(await WheelsAsync(), "Weibull");

        Assert.True(weibull.First.Upper < 4.79, $"shape {weibull.First}");
        Assert.True(Math.Abs((weibull.Second.Value / 100) - 44.29) > 1, $"scale {weibull.Second}");
    }

    // Nelson 1982, p. 415: 167 parts looked at up to eight times, 94 found cracked. Read, in days: mu 7.6880 (log of the
    // Weibull scale), log scale -0.3953 (log of 1/shape), log-likelihood -309.6, 10 % 479.3 d, median 1704.7 d. Here a day is an hour.
    [Fact]
    public async Task Parts_looked_at_eight_times()
    {
        var life = await PartsAsync();

        Assert.Equal((167, 94, 0, 0), (life.LifeCount, life.FailureCount, life.AgeUnknownCount, life.OtherExcludedCount));
        var weibull = Fit(life, "Weibull");
        Assert.Equal(7.6880, Math.Log(weibull.Second.Value), 4);
        Assert.Equal(-0.3953, Math.Log(1 / weibull.First.Value), 4);
        Assert.Equal(-309.6, weibull.LogLikelihood, 0.05);
        Assert.Equal(479.3, weibull.B10.Value, 1);
        Assert.Equal(1704.7, weibull.Median.Value, 1);

        // The non-parametric estimate is the share found by each look (computed; by hand 5/167, 21/167, ...).
        double[] cdf = [.0299, .1257, .1976, .3054, .4132, .4251, .4611, .5629];
        Assert.All(PartLooks.Values.ToList(), (day, i) => Assert.Equal(cdf[i], CumulativeAt(life, day), 4));
    }

    // The same parts with the day found taken as the day of failure give, in months, shape 1.888, scale 70.09 (computed).
    [Fact]
    public async Task The_day_of_a_finding_is_not_the_day_of_the_failure()
    {
        var weibull = Fit(await PartsAsync(), "Weibull");

        Assert.True(weibull.First.Upper < 1.888, $"shape {weibull.First}");
        Assert.Equal(1.485, weibull.First.Value, 3);
    }

    // Nelson, Technometrics 37, 1995 (data: Nelson and Doganaksoy 1989): 48 valve-seat replacements on 41 diesel engines.
    // Read: engines at risk 41, 40, 38 (581 d), 34 (586 d), 22 (604 d), 9 (653 d). Computed: the mean cumulative function and
    // its robust errors (Lawless and Nadeau 1995). Here a day is an hour.
    [Fact]
    public async Task Valve_seats_of_41_engines()
    {
        var recurrence = await ValveSeatsAsync();

        Assert.Equal((41, 48), (recurrence.AircraftCount, recurrence.EventCount));
        Assert.Equal([41, 38, 34, 22, 9], new[] { 61, 581, 586, 604, 653 }.Select(day => PointAt(recurrence, day).AtRiskCount));
        foreach (var (day, value) in new (int, double)[]
        {
            (61, .0244), (98, .1463), (202, .2927), (298, .4634), (404, .6835), (497, .8085), (604, 1.0597), (621, 1.1185), (646, 1.3205), (653, 1.5427),
        })
        {
            Assert.Equal(value, PointAt(recurrence, day).Value, 4);
        }

        Assert.Equal(2, PointAt(recurrence, 653).EventCount);
        Assert.Equal(.1359, PointAt(recurrence, 404).StandardError, 4);
        Assert.Equal(.3117, PointAt(recurrence, 653).StandardError, 4);

        // 48 over 25,363 engine-days (computed): 1.8925 per 1,000.
        var rates = await server.Trends.ListRatesAsync(new ListRatesRequest { TypeGroup = "diesels", Location = UnitFleet.Location });
        var rate = Assert.Single(rates.Rates).Rate_;
        Assert.Equal((1.8925, 48, 25_363.0), (Math.Round(rate.Value, 4), rate.EventCount, rate.ExposureHours));
    }

    // Minus the logarithm of the Kaplan-Meier curve of the same rows is 1.579 at 653 d; it is not the mean number of events.
    [Fact]
    public async Task The_mean_number_of_events_is_not_minus_the_logarithm_of_a_survival_curve()
    {
        var last = (await ValveSeatsAsync()).Points[^1];

        Assert.Equal(653, last.TimeInServiceHours);
        Assert.NotEqual(1.579, last.Value, 2);
    }

    [Fact] // Every number is traced to rows: the lives behind the fit are there, each with the keys of its records.
    public async Task The_lives_behind_a_fit_are_listed_with_their_records()
    {
        await PartsAsync();
        var rows = new List<EvidenceRow>();
        var request = new ListEvidenceRequest { TypeGroup = "parts", PageSize = 100 };
        do
        {
            var page = await server.Trends.ListEvidenceAsync(request);
            rows.AddRange(page.Rows);
            request.PageToken = page.NextPageToken;
        }
        while (request.PageToken.Length > 0);

        var lives = rows.Where(r => r.Life is not null).ToList();
        Assert.Equal((167, 94), (lives.Count, lives.Count(r => r.Life.HasFirstBadHours)));
        Assert.Equal(5, lives.Count(r => r.Life is { LastGoodHours: 0, FirstBadHours: 186 }));
        Assert.All(rows, r => Assert.NotEmpty(r.RecordKeys));
    }

    private async Task<PartLife> WheelsAsync()
    {
        var fleet = new UnitFleet("wheels", "part", "ZW", hoursPerDay: 10);
        foreach (var (lower, upper, count) in ReferenceRows.Lives("turbine-wheels"))
        {
            for (var i = 0; i < count; i++)
            {
                var unit = fleet.Unit();
                fleet.Looked(unit, (upper ?? lower) * 100);
                if (upper is not null)
                    fleet.Found(unit, upper.Value * 100, Condition.Crack);
            }
        }

        return await LifeAsync(fleet, "wheels");
    }

    /// <summary>The looks: month (as the rows have it) to day (as the printed fit has it).</summary>
    private static readonly SortedDictionary<double, int> PartLooks = new()
    {
        [6.12] = 186,
        [19.92] = 606,
        [29.64] = 902,
        [35.40] = 1077,
        [39.72] = 1209,
        [45.24] = 1377,
        [52.32] = 1592,
        [63.48] = 1932,
    };

    private async Task<PartLife> PartsAsync()
    {
        var fleet = new UnitFleet("parts", "part", "ZP", hoursPerDay: 1);
        foreach (var (_, upper, count) in ReferenceRows.Lives("crack-inspections"))
        {
            for (var i = 0; i < count; i++)
            {
                var unit = fleet.Unit();
                foreach (var (month, day) in PartLooks.TakeWhile(look => upper is null || look.Key <= upper))
                {
                    fleet.Looked(unit, day);
                    if (month == upper)
                        fleet.Found(unit, day, Condition.Crack);
                }
            }
        }

        return await LifeAsync(fleet, "parts");
    }

    private async Task<Recurrence> ValveSeatsAsync()
    {
        var fleet = new UnitFleet("diesels", "place", "ZE", hoursPerDay: 1);
        foreach (var engine in ReferenceRows.Recurrences("valve-seat-mcf").GroupBy(row => row.Unit))
        {
            var unit = fleet.Unit();
            foreach (var day in engine.Where(row => row.IsEvent).GroupBy(row => row.Start))
            {
                foreach (var _ in day)
                    fleet.Found(unit, day.Key, Condition.Wear);
                fleet.Done(unit, day.Key, ActionKind.Replaced);
            }

            fleet.Looked(unit, engine.Single(row => !row.IsEvent).Stop!.Value);
        }

        await fleet.PushAsync(server);
        await RefreshAsync();
        return Assert.Single((await server.Trends.ListRecurrencesAsync(new ListRecurrencesRequest { TypeGroup = "diesels" })).Recurrences);
    }

    private async Task<PartLife> LifeAsync(UnitFleet fleet, string typeGroup)
    {
        await fleet.PushAsync(server);
        await RefreshAsync();
        var response = await server.Trends.ListPartLivesAsync(new ListPartLivesRequest { TypeGroup = typeGroup });
        Assert.NotNull(response.Origin.AsOfTime);
        return Assert.Single(response.PartLives, life => life.Base.Length == 0);
    }

    /// <summary>What the worker's job does.</summary>
    private async Task RefreshAsync()
    {
        var snapshot = await server.Services.RefreshAsync();
        Assert.Empty(snapshot.DataProblems);
    }

    private static LifeFit Fit(PartLife life, string distribution) => life.Fits.Single(f => f.Distribution == distribution);

    private static double CumulativeAt(PartLife life, double hours) =>
        life.Curve.Where(step => step.HasUpperHours && step.UpperHours <= hours).Select(step => step.Cumulative).LastOrDefault();

    private static MeanCumulativePoint PointAt(Recurrence recurrence, double day) =>
        recurrence.Points.Last(point => point.TimeInServiceHours <= day);

    private static void AssertComplete(Contracts.V1.Figure figure, int events, int lives)
    {
        Assert.True(figure is { HasValue: true, HasLower: true, HasUpper: true, Confidence: 0.95, Unit: "h" }, $"{figure}");
        Assert.Equal((events, lives), (figure.EventCount, figure.LifeCount));
        Assert.NotEqual("", figure.Method);
    }
}
