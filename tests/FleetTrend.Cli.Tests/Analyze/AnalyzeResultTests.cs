using System.Globalization;
using System.Text.Json;

namespace FleetTrend.Cli.Tests.Analyze;

/// <summary>The JSON of the analyses: its keys, and published values under them.</summary>
public sealed class AnalyzeResultTests
{
    // 167 turbine parts, Nelson 1982 p. 415: looks in months, cracks found new, 73 survivors.
    private const string Parts = """
        lower,upper,count
        0,6.12,5
        6.12,19.92,16
        19.92,29.64,12
        29.64,35.40,18
        35.40,39.72,18
        39.72,45.24,2
        45.24,52.32,6
        52.32,63.48,17
        63.48,,73
        """;

    // Ten pumps, Gaver and O'Muircheartaigh 1987.
    private const string Pumps = """
        unit,events,exposure
        p1,5,94.32
        p2,1,15.72
        p3,5,62.88
        p4,14,125.76
        p5,3,5.24
        p6,19,31.44
        p7,1,1.048
        p8,1,1.048
        p9,4,2.096
        p10,22,10.48
        """;

    // By hand: two spans of one length and exposure; of 24 events 16 came in the second, twice as many: a growth of ln 2 a span; from zero on, an
    // exponent of log2(24/8).
    [Theory]
    [InlineData(0, 1, 2, true)]
    [InlineData(-2, -1, 0, false)]
    public void Growth_of_two_spans_by_hand(int start, int middle, int stop, bool hasAges)
    {
        using var file = new AnalyzeFile("unit,start,stop,exposure,events\n" + string.Concat(new[] { (1, 3), (3, 5), (2, 4), (2, 4) }
            .Select((e, i) => FormattableString.Invariant($"p{i},{start},{middle},100,{e.Item1}\np{i},{middle},{stop},100,{e.Item2}\n"))));
        var json = file.Json("growth");
        Assert.Equal(["units", "events", "exposure", "logLinear", "powerLaw", "notes"], json.EnumerateObject().Select(p => p.Name));
        Assert.Equal((4, 24, 800.0), (json.GetProperty("units").GetInt32(), json.GetProperty("events").GetInt32(), json.GetProperty("exposure").GetDouble()));
        Assert.Equal(Math.Log(2), json.GetProperty("logLinear").GetProperty("growth").GetDouble(), 9);
        if (hasAges)
            Assert.Equal(Math.Log2(3), json.GetProperty("powerLaw").GetProperty("growth").GetDouble(), 9);
        else
            Assert.Equal(JsonValueKind.Null, json.GetProperty("powerLaw").ValueKind);
        Assert.Equal(hasAges ? 0 : 1, json.GetProperty("notes").GetArrayLength());
    }

    [Fact] // Nelson 1982: Weibull shape 1.485, scale 71.69 months; non-parametric share failed .0299 .1257 .1976 .3054 .4132 .4251 .4611 .5629.
    public void Life_gives_the_published_fit()
    {
        using var file = new AnalyzeFile(Parts);
        var json = file.Json("life");
        Assert.Equal(["lives", "failures", "nonparametric", "fits", "notes"], json.EnumerateObject().Select(p => p.Name));
        Assert.Equal(167, json.GetProperty("lives").GetInt32());
        Assert.Equal(94, json.GetProperty("failures").GetInt32());
        double[] published = [.0299, .1257, .1976, .3054, .4132, .4251, .4611, .5629];
        var cdf = json.GetProperty("nonparametric").EnumerateArray().Select(m => m.GetProperty("cdf").GetDouble()).ToList();
        foreach (var (expected, actual) in published.Zip(cdf))
            Assert.Equal(expected, actual, 4);
        Assert.Equal(JsonValueKind.Null, json.GetProperty("nonparametric").EnumerateArray().Last().GetProperty("upper").ValueKind);

        var fits = json.GetProperty("fits").EnumerateArray().ToDictionary(f => f.GetProperty("distribution").GetString()!, StringComparer.Ordinal);
        Assert.Equal(1.485, fits["weibull"].GetProperty("shape").GetDouble(), 3);
        Assert.Equal(71.69, fits["weibull"].GetProperty("scale").GetDouble(), 2);
        Assert.Equal(["mu", "sigma"], fits["lognormal"].GetProperty("intervals").EnumerateObject().Select(p => p.Name));
        Assert.True(fits["lognormal"].TryGetProperty("mu", out _) && !fits["lognormal"].TryGetProperty("shape", out _));
        Assert.Equal(["p", "value", "lower", "upper"], fits["weibull"].GetProperty("quantiles")[0].EnumerateObject().Select(p => p.Name));
        Assert.True(fits["weibull"].TryGetProperty("aic", out _) && fits["weibull"].TryGetProperty("logLikelihood", out _));
    }

    [Fact] // Nelson 1995, valve seats: 1.5427 at 653 days, robust error .3117; 48 events in 25,363 days, 1.8925 per 1,000.
    public void Recurrence_gives_the_published_function()
    {
        using var file = new AnalyzeFile(ValveSeats());
        var json = file.Json("recurrence");
        Assert.Equal(
            ["units", "events", "exposure", "meanCumulative", "powerLaw", "laplace", "rate", "notes"], json.EnumerateObject().Select(p => p.Name));
        Assert.Equal((41, 48, 25363.0), (json.GetProperty("units").GetInt32(), json.GetProperty("events").GetInt32(), json.GetProperty("exposure").GetDouble()));
        var last = json.GetProperty("meanCumulative").EnumerateArray().Last();
        Assert.Equal(["time", "value", "standardError", "lower", "upper"], last.EnumerateObject().Select(p => p.Name));
        Assert.Equal(653, last.GetProperty("time").GetDouble());
        Assert.Equal(1.5427, last.GetProperty("value").GetDouble(), 4);
        Assert.Equal(0.3117, last.GetProperty("standardError").GetDouble(), 4);
        Assert.Equal(0.0018925, json.GetProperty("rate").GetProperty("value").GetDouble(), 7);
        Assert.Equal(["exponent", "exponentUnbiased", "scale", "intervals"], json.GetProperty("powerLaw").EnumerateObject().Select(p => p.Name));
        Assert.Equal(["statistic", "pValue"], json.GetProperty("laplace").EnumerateObject().Select(p => p.Name));
    }

    [Fact] // NIST e-Handbook 8.4.5.2: one system to 1500 h; modified exponent 0.483506; Laplace -1.327 (8.2.3.4, computed in R).
    public void Recurrence_gives_the_handbook_exponent()
    {
        using var file = new AnalyzeFile(
            "unit,time,what\nA,1500,end\n" + string.Concat(new[] { 5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478 }.Select(t => $"A,{t},event\n")));
        var json = file.Json("recurrence");
        Assert.Equal(0.483506, json.GetProperty("powerLaw").GetProperty("exponentUnbiased").GetDouble(), 6);
        Assert.Equal(-1.327, json.GetProperty("laplace").GetProperty("statistic").GetDouble(), 3);
    }

    // Pumps: one posterior (uniform shrinkage) by a fine grid in R, reference/pump-failures: its medians and equal-tailed limits.
    [Fact]
    public void Rate_gives_median_and_limits_of_one_posterior()
    {
        using var file = new AnalyzeFile(Pumps);
        var json = file.Json("rate");
        Assert.Equal(["pooled", "betweenUnits", "units", "notes"], json.EnumerateObject().Select(p => p.Name));
        using var reference = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reference", "pump-failures", "expected.json")));
        var expected = reference.RootElement.GetProperty("expected").GetProperty("uniform_shrinkage");
        Near(expected.GetProperty("mean_rate"), json.GetProperty("betweenUnits").GetProperty("meanRate"));
        Near(expected.GetProperty("variation_mean"), json.GetProperty("betweenUnits").GetProperty("coefficientOfVariation"));
        foreach (var (unit, i) in json.GetProperty("units").EnumerateArray().Select((u, i) => (u, i)))
        {
            Near(expected.GetProperty("median")[i], unit.GetProperty("shrunkRate"));
            Near(expected.GetProperty("lower")[i], unit.GetProperty("shrunkLower"));
            Near(expected.GetProperty("upper")[i], unit.GetProperty("shrunkUpper"));
        }

        Assert.Equal(
            ["unit", "events", "exposure", "rate", "lower", "upper", "shrunkRate", "shrunkLower", "shrunkUpper", "pValue", "qValue"],
            json.GetProperty("units")[0].EnumerateObject().Select(p => p.Name));

        static void Near(JsonElement expected, JsonElement actual) =>
            Assert.InRange(actual.GetDouble() / expected.GetDouble(), 1 - 5e-3, 1 + 5e-3);
    }

    // Pumps: limits robust to pumps that differ and their dispersion, by glm in R, reference/clustered-rate-pumps.
    [Fact]
    public void The_pooled_rate_has_limits_that_hold_where_units_differ()
    {
        using var file = new AnalyzeFile(Pumps);
        var pooled = file.Json("rate").GetProperty("pooled");
        using var reference = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reference", "clustered-rate-pumps", "expected.json")));
        var expected = reference.RootElement.GetProperty("expected");
        Assert.All(["rate", "lower", "upper", "dispersion"], name =>
            Assert.Equal(1, pooled.GetProperty(name).GetDouble() / expected.GetProperty(name).GetDouble(), 1e-7));
        var words = file.Run("rate", json: false).Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        Assert.Contains(", dispersion 28.594.", string.Join(' ', words), StringComparison.Ordinal);
    }

    // Definition: the median of a posterior lies inside its equal-tailed limits at every credibility; the mean of a skewed one need not.
    [Theory]
    [InlineData(0.02)]
    [InlineData(0.5)]
    [InlineData(0.99)]
    public void A_shrunk_rate_lies_inside_its_limits(double confidence)
    {
        using var file = new AnalyzeFile(Pumps);
        using var document = JsonDocument.Parse(file.Run("rate", json: true, confidence: confidence).Output);
        Assert.All(document.RootElement.GetProperty("units").EnumerateArray(), u => Assert.InRange(
            u.GetProperty("shrunkRate").GetDouble(), u.GetProperty("shrunkLower").GetDouble(), u.GetProperty("shrunkUpper").GetDouble()));
    }

    // Four units at 100 h each; from 4, 5, 4, 5 events to 2, 7, 2, 7 the counts go from less spread than chance to more. One posterior moves
    // on smoothly; a law fitted by maximum likelihood jumps from none to some.
    [Fact]
    public void Shrunk_rates_do_not_jump_where_counts_begin_to_vary_more_than_chance()
    {
        double[] steady = [.. new[] { 4, 3, 2 }.Select(low =>
        {
            using var file = new AnalyzeFile($"unit,events,exposure\nA,{low},100\nB,{9 - low},100\nC,{low},100\nD,{9 - low},100\n");
            return file.Json("rate").GetProperty("units")[0].GetProperty("shrunkRate").GetDouble();
        })];
        Assert.InRange(steady[1], steady[2], steady[0]);
        Assert.InRange(steady[0] - steady[1], 0.5 * (steady[1] - steady[2]), 2 * (steady[1] - steady[2]));
    }

    [Fact] // Garwood 1936: no events in 2,000 h still allow 3.6889 / 2,000; what cannot be known is null, with the reason in the notes.
    public void No_events_give_limits_and_reasons()
    {
        using var file = new AnalyzeFile("unit,events,exposure\nA,0,1200\nB,0,800\n");
        var json = file.Json("rate");
        Assert.Equal(3.6889 / 2000, json.GetProperty("pooled").GetProperty("upper").GetDouble(), 7);
        Assert.Equal(JsonValueKind.Null, json.GetProperty("betweenUnits").ValueKind);
        Assert.Equal("NoEvents", json.GetProperty("notes")[0].GetProperty("reason").GetString());

        using var lives = new AnalyzeFile("lower\n100\n200\n");
        Assert.Empty(lives.Json("life").GetProperty("fits").EnumerateArray());
        using var quiet = new AnalyzeFile("unit,time,what\nA,100,end\n");
        Assert.Equal(JsonValueKind.Null, quiet.Json("recurrence").GetProperty("powerLaw").ValueKind);
        Assert.Equal(3.6889 / 100, quiet.Json("recurrence").GetProperty("rate").GetProperty("upper").GetDouble(), 6);
    }

    [Fact] // Even counts: the boundary of a fitted law is no case of its own; every shrunk interval has width.
    public void Counts_without_extra_variation_are_no_case_of_their_own()
    {
        using var file = new AnalyzeFile("unit,events,exposure\nA,4,100\nB,5,100\nC,4,100\nD,5,100\n");
        var json = file.Json("rate");
        Assert.Empty(json.GetProperty("notes").EnumerateArray());
        Assert.True(json.GetProperty("betweenUnits").GetProperty("coefficientOfVariation").GetDouble() > 0);
        Assert.All(json.GetProperty("units").EnumerateArray(), u =>
            Assert.True(u.GetProperty("shrunkUpper").GetDouble() > 1.2 * u.GetProperty("shrunkLower").GetDouble()));
    }

    [Fact] // Rules of the input: start and end pairs make gaps; a unit without a start was watched from 0.
    public void Recurrence_rows_may_have_gaps_and_any_order()
    {
        using var file = new AnalyzeFile("what,time,unit\nevent,450,A\nend,500,A\nstart,0,A\nend,100,A\nstart,400,A\nevent,100,A\nend,60,B\n");
        var json = file.Json("recurrence");
        Assert.Equal(260, json.GetProperty("exposure").GetDouble());
        Assert.Equal(2, json.GetProperty("events").GetInt32());
    }

    [Theory]
    [InlineData("life", Parts, "weibull")]
    [InlineData("rate", Pumps, "p10")]
    public void Tables_are_for_people_and_carry_the_caution(string kind, string rows, string word)
    {
        using var file = new AnalyzeFile(rows);
        var (code, output, _) = file.Run(kind, plot: file.Beside("plot.svg"));
        Assert.Equal(0, code);
        Assert.Contains(word, output, StringComparison.Ordinal);
        Assert.Contains("return no aircraft to service", output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.StartsWith("<?xml", File.ReadAllText(file.Beside("plot.svg")), StringComparison.Ordinal);

        // The font that comes with the program, whatever the machine has.
        Assert.Contains("font-family=\"DejaVu Sans\"", File.ReadAllText(file.Beside("plot.svg")), StringComparison.Ordinal);
    }

    private static string ValveSeats()
    {
        var rows = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "reference", "valve-seat-mcf", "data.csv")).Skip(1).Select(l => l.Split(','));
        return "unit,time,what\n" + string.Concat(rows.Select(r =>
            string.Create(CultureInfo.InvariantCulture, $"{r[0]},{r[3]},{(r[1] == "window" ? "end" : "event")}\n")));
    }
}
