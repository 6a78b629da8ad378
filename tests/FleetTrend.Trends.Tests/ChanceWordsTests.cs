using System.Text.Json;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.Words;

namespace FleetTrend.Trends.Tests;

/// <summary>What is told of a chance follows the law that it comes from.</summary>
public sealed class ChanceWordsTests
{
    [Theory] // By hand: 1/0.0011 = 909; an exact law is told down to 1 in 10,000, another down to 1 in 1,000.
    [InlineData(0.5, "in 50 % of cases", "in 50 % of cases")]
    [InlineData(0.2, "about once in 5", "about once in 5")]
    [InlineData(0.0011, "about once in 910", "about once in 910")]
    [InlineData(0.001, "about once in 1,000", "about once in 1,000")]
    [InlineData(0.00099, "about once in 1,000", "less than once in 1,000")]
    [InlineData(0.0001, "about once in 10,000", "less than once in 1,000")]
    [InlineData(1e-12, "less than once in 10,000", "less than once in 1,000")]
    [InlineData(0, "less than once in 10,000", "less than once in 1,000")]
    public void A_count_is_told_as_far_down_as_its_law_holds(double p, string exact, string approximate)
    {
        Assert.Equal($"If it were like the rest, a count this high would come up {exact}", ChanceWords.OfCount(PValue.Exact(p)));
        Assert.Equal($"If it were like the rest, a count this high would come up {approximate}", ChanceWords.OfCount(PValue.Approximate(p)));
        Assert.Equal($"If the bases were alike, a difference this large would come up {approximate}", ChanceWords.OfDifference(PValue.Approximate(p)));
    }

    [Theory] // A q-value is a share of all calls down to this one: this strong or stronger.
    [InlineData(0.00001, "Fewer than 1 in 10,000 calls this strong or stronger are false alarms", "Fewer than 1 in 1,000 calls this strong or stronger are false alarms")]
    [InlineData(0.0005, "About 1 in 2,000 calls this strong or stronger is a false alarm", "Fewer than 1 in 1,000 calls this strong or stronger are false alarms")]
    [InlineData(0.02, "About 1 in 50 calls this strong or stronger is a false alarm", "About 1 in 50 calls this strong or stronger is a false alarm")]
    [InlineData(0.4, "40 % of calls this strong or stronger are false alarms", "40 % of calls this strong or stronger are false alarms")]
    [InlineData(1, "Almost all calls this strong or stronger are false alarms", "Almost all calls this strong or stronger are false alarms")]
    public void A_share_of_false_alarms_names_its_assumption(double q, string exact, string approximate)
    {
        Assert.Equal($"{exact}, if like aircraft have one rate and findings come singly", ChanceWords.OfCalls(q, PValueLaw.Exact, ChanceWords.OneRate));
        Assert.Equal($"{approximate}, if like parts last alike at all bases", ChanceWords.OfCalls(q, PValueLaw.Approximate, ChanceWords.OneLife));
    }

    [Fact]
    public void In_brief_too()
    {
        Assert.Equal("p = 0.0011", ChanceWords.Named("p", 0.0011, PValueLaw.Approximate));
        Assert.Equal("p below 0.001", ChanceWords.Named("p", 0.0009, PValueLaw.Approximate));
        Assert.Equal("p = 0.00020", ChanceWords.Named("p", 0.0002, PValueLaw.Exact));
        Assert.Equal("q below 0.0001", ChanceWords.Named("q", 0.00009, PValueLaw.Exact));
    }

    [Fact] // A comparison of bases has a chance, which is approximate; a change says how rarely chance raises it.
    public void Bases_beside_others_have_a_chance_and_changes_say_how_rare_they_are()
    {
        var flags = new SimulatedFleet { Seed = 3, SouthLifeFactor = 0.4, Jitter = 15 }.Compute().Flags.Concat(
            FleetBuilder.Compute(ChangingFleet.OneGetsWorse(), new TrendParameters(), FleetBuilder.AsOf, "test").Flags).ToList();
        Assert.Contains(flags, f => f.Contrast is not null);
        Assert.Contains(flags, f => f.Change is not null);
        Assert.All(flags.Where(f => f.Contrast is not null), f =>
        {
            Assert.Equal(PValueLaw.Approximate, f.PValue!.Value.Law);
            Assert.Contains("calls this strong or stronger", f.Statement, StringComparison.OrdinalIgnoreCase);
        });
        Assert.All(flags.Where(f => f.Change is not null), f => Assert.Matches(@"Chance alone would raise a call like this (about|less than) once in [\d,]+ aircraft-years\.", f.Statement));
        Assert.All(flags, f => Assert.DoesNotContain("0.0 %", f.Statement, StringComparison.Ordinal));
    }

    [Fact] // Flags and trends of earlier versions hold a bare number; of a base it was approximate, so no law is assumed.
    public void A_bare_number_stored_earlier_is_approximate_and_a_law_comes_back()
    {
        Assert.Equal(PValue.Approximate(0.002), JsonSerializer.Deserialize<PValue>("0.002", TrendJson.Options));
        foreach (var p in new[] { PValue.Exact(0.002), PValue.Approximate(1e-9) })
            Assert.Equal(p, JsonSerializer.Deserialize<PValue>(JsonSerializer.Serialize(p, TrendJson.Options), TrendJson.Options));
        Assert.Throws<ArgumentOutOfRangeException>(() => PValue.Exact(1.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PValue.Approximate(double.NaN));
    }
}
