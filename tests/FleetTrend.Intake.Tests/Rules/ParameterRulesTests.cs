using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Parameters;
using FleetTrend.Intake.Rules;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>Each bound of each parameter, from both sides.</summary>
public sealed class ParameterRulesTests
{
    private static readonly string[] TypeGroups = ["trainer-four", "six"];
    private static readonly string[] Kinds = ["gasket", "clamp"];

    [Theory]
    [InlineData("confidence", 0.5, 0.999, 0.499, 1.0, "must be a number from 0.5 to 0.999 with at most 3 decimals")]
    [InlineData("false_discovery_rate", 0.001, 0.5, 0.0, 0.501, "must be a number from 0.001 to 0.5 with at most 3 decimals")]
    [InlineData("flags_per_50_aircraft_years", 0.1, 20, 0.09, 20.01, "must be a number from 0.1 to 20 with at most 2 decimals")]
    [InlineData("watches_per_50_aircraft_years", 0.1, 100, 0.09, 100.01, "must be a number from 0.1 to 100 with at most 2 decimals")]
    [InlineData("minimum_failures_for_fit", 3, 100, 2, 101, "must be a whole number from 3 to 100")]
    [InlineData("look_interval_hours", 1, 5000, 0.9, 5000.1, "must be hours from 1 to 5,000 with at most one decimal")]
    [InlineData("spare_service_level", 0.5, 0.999, 0.499, 1.0, "must be a number from 0.5 to 0.999 with at most 3 decimals")]
    [InlineData("spare_first_horizon_days", 1, 365, 0, 366, "must be a whole number from 1 to 365")]
    [InlineData("spare_second_horizon_days", 1, 365, 0, 366, "must be a whole number from 1 to 365")]
    [InlineData("spare_third_horizon_days", 1, 365, 0, 366, "must be a whole number from 1 to 365")]
    [InlineData("failure_cost_ratio", 1.1, 1000, 1.0, 1000.1, "must be a number from 1.1 to 1,000 with at most one decimal")]
    [InlineData("undetected_failure_chance", 0.001, 0.5, 0.0, 0.501, "must be a number from 0.001 to 0.5 with at most 3 decimals")]
    public void A_number_is_taken_up_to_its_bounds_and_refused_beyond_them(string field, double least, double most, double below, double above, string rule)
    {
        Assert.Empty(Check(r => Set(r, field, least)));
        Assert.Empty(Check(r => Set(r, field, most)));
        foreach (var beyond in new[] { below, above })
        {
            var refusal = Assert.Single(Check(r => Set(r, field, beyond)));
            Assert.Equal(($"parameters.{field}", "NUMBER_OUT_OF_RANGE", rule), (refusal.Field, refusal.Reason.Name, refusal.Rule));
            Assert.Equal($"{rule}; got {beyond.ToString(System.Globalization.CultureInfo.InvariantCulture)}", refusal.Words);
        }

        var absent = Assert.Single(Check(r => Set(r, field, null)));
        Assert.Equal(($"parameters.{field}", "FIELD_REQUIRED", $"{rule}; got nothing"), (absent.Field, absent.Reason.Name, absent.Words));
    }

    [Theory]
    [InlineData("confidence", 0.9505, "TOO_MANY_DECIMALS")] // pages and mails would print 95 % or 95.1 % for it
    [InlineData("confidence", double.NaN, "NUMBER_NOT_FINITE")]
    [InlineData("false_discovery_rate", double.PositiveInfinity, "NUMBER_NOT_FINITE")]
    [InlineData("look_interval_hours", 50.25, "TOO_MANY_DECIMALS")]
    [InlineData("look_interval_hours", double.NegativeInfinity, "NUMBER_NOT_FINITE")]
    public void A_number_is_finite_and_can_be_printed(string field, double value, string reason) =>
        Assert.Equal(($"parameters.{field}", reason), Reason(Assert.Single(Check(r => Set(r, field, value)))));

    [Fact]
    public void A_look_interval_names_what_is_there_once()
    {
        Assert.Empty(Check(r => r.Parameters.LookIntervals.Add(
            [On("six", "", 25), On("", "gasket", 50.5), On("six", "gasket", 1), On("trainer-four", "gasket", 5000)])));
        (string Field, string Reason)[] Broken(params LookInterval[] some) => [.. Check(r => r.Parameters.LookIntervals.Add(some)).Select(Reason)];
        Assert.Equal([("parameters.look_intervals[0].type_group", "TYPE_GROUP_NOT_REGISTERED")], Broken(On("trainer-for", "", 25)));
        Assert.Equal([("parameters.look_intervals[0].kind", "LOCATION_KIND_UNKNOWN")], Broken(On("six", "gaskets", 25)));
        Assert.Equal([("parameters.look_intervals[0].type_group", "FIELD_REQUIRED")], Broken(On("", "", 25)));
        Assert.Equal([("parameters.look_intervals[1].type_group", "DUPLICATE_LINE")], Broken(On("six", "", 25), On("six", "", 30)));
        Assert.Equal([("parameters.look_intervals[1].kind", "DUPLICATE_LINE")], Broken(On("six", "clamp", 25), On("six", "clamp", 25)));
        Assert.Equal([("parameters.look_intervals[0].hours", "FIELD_REQUIRED")], Broken(new LookInterval { TypeGroup = "six" }));
        Assert.Equal([("parameters.look_intervals[0].hours", "NUMBER_OUT_OF_RANGE")], Broken(On("six", "", 0)));
        Assert.Equal([("parameters.look_intervals", "TOO_MANY_ITEMS")], Broken([.. Enumerable.Repeat(On("six", "", 25), 501)]));
        Assert.Equal("trainer-four", Assert.Single(Check(r => r.Parameters.LookIntervals.Add(On("trainer-for", "", 25)))).Nearest);
    }

    [Fact]
    public void A_makers_limit_names_what_is_there_once_and_limits_something()
    {
        Assert.Empty(Check(r => r.Parameters.MakerLimits.Add([Limit("six", "", 1000, null), Limit("", "gasket", null, 50.5), Limit("six", "gasket", 100_000, 5000)])));
        (string Field, string Reason)[] Broken(params MakerLimit[] some) => [.. Check(r => r.Parameters.MakerLimits.Add(some)).Select(Reason)];
        Assert.Equal([("parameters.maker_limits[0].type_group", "TYPE_GROUP_NOT_REGISTERED")], Broken(Limit("trainer-for", "", 25, null)));
        Assert.Equal([("parameters.maker_limits[0].kind", "LOCATION_KIND_UNKNOWN")], Broken(Limit("", "gaskets", 25, null)));
        Assert.Equal([("parameters.maker_limits[0].type_group", "FIELD_REQUIRED")], Broken(Limit("", "", 25, null)));
        Assert.Equal([("parameters.maker_limits[1].kind", "DUPLICATE_LINE")], Broken(Limit("", "clamp", 25, null), Limit("", "clamp", null, 25)));
        Assert.Equal([("parameters.maker_limits[0].renewal_hours", "FIELD_REQUIRED")], Broken(Limit("six", "", null, null)));
        Assert.Equal(
            [("parameters.maker_limits[0].renewal_hours", "NUMBER_OUT_OF_RANGE"), ("parameters.maker_limits[0].look_hours", "NUMBER_OUT_OF_RANGE")],
            Broken(Limit("six", "", 100_001, 5001)));
        Assert.Equal([("parameters.maker_limits", "TOO_MANY_ITEMS")], Broken([.. Enumerable.Repeat(Limit("six", "", 25, 25), 501)]));
    }

    [Fact]
    public void A_change_says_what_it_replaces_and_why()
    {
        Assert.Empty(Check(r => r.Revision = 7));
        Assert.Equal(("revision", "FIELD_REQUIRED"), Reason(Assert.Single(Check(r => r.ClearRevision()))));
        Assert.Equal(("revision", "NUMBER_OUT_OF_RANGE"), Reason(Assert.Single(Check(r => r.Revision = -1))));
        Assert.Equal(("note", "FIELD_REQUIRED"), Reason(Assert.Single(Check(r => r.Note = ""))));
        Assert.Equal(("note", "TEXT_TOO_LONG"), Reason(Assert.Single(Check(r => r.Note = new string('x', 2_001)))));
        Assert.Equal(("parameters", "FIELD_REQUIRED"), Reason(Assert.Single(Check(r => r.Parameters = null))));
        Assert.Equal(14, ParameterRules.Check(new ChangeParametersRequest { Parameters = new() }, TypeGroups, Kinds).Count); // all told at once
    }

    private static MakerLimit Limit(string typeGroup, string kind, double? renewal, double? look)
    {
        var limit = new MakerLimit { TypeGroup = typeGroup, Kind = kind };
        if (renewal is { } age)
            limit.RenewalHours = age;
        if (look is { } hours)
            limit.LookHours = hours;
        return limit;
    }

    private static LookInterval On(string typeGroup, string kind, double hours) => new() { TypeGroup = typeGroup, Kind = kind, Hours = hours };

    private static (string Field, string Reason) Reason(Refusal refusal) => (refusal.Field, refusal.Reason.Name);

    private static void Set(ChangeParametersRequest request, string field, double? value) =>
        ParameterNumbers.All.Single(n => n.Field == field).Set(request.Parameters, value);

    private static IReadOnlyList<Refusal> Check(Action<ChangeParametersRequest> change)
    {
        var request = new ChangeParametersRequest
        {
            Revision = 0,
            Note = "tried out",
            Parameters = new()
            {
                Confidence = 0.95,
                FalseDiscoveryRate = 0.05,
                FlagsPer50AircraftYears = 1,
                WatchesPer50AircraftYears = 5,
                MinimumFailuresForFit = 3,
                LookIntervalHours = 100,
                SpareServiceLevel = 0.95,
                SpareFirstHorizonDays = 30,
                SpareSecondHorizonDays = 90,
                SpareThirdHorizonDays = 180,
                FailureCostRatio = 5,
                UndetectedFailureChance = 0.05,
            },
        };
        change(request);
        return ParameterRules.Check(request, TypeGroups, Kinds);
    }
}
