using FleetTrend.Intake.Rules;
using static FleetTrend.Intake.Tests.Rules.RefusalAssert;
using StockCount = FleetTrend.Records.Spares.StockCount;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>Rules of stock counts: protos/fleettrend/v1/stock.proto.</summary>
public sealed class StockRulesTests
{
    [Fact]
    public void None_left_is_a_count_and_no_lead_time_is_not_told()
    {
        var record = new Record { Key = Valid.Key(), StockCount = new() { CountDate = Valid.Day(), Base = "North", PartNumber = "G-1", Quantity = 0 } };
        var parsed = Assert.IsType<StockCount>(RecordRules.Parse(record, Valid.Known()).Content);
        Assert.Equal(new StockCount { CountDate = new(2026, 2, 3), Base = "North", PartNumber = "G-1", Quantity = 0 }, parsed);
        Assert.Equal(21, Assert.IsType<StockCount>(RecordRules.Parse(Valid.StockCount(), Valid.Known()).Content).LeadTimeDays);
    }

    [Fact]
    public void Day_base_part_number_and_quantity_are_required()
    {
        Refused(Valid.StockCount(c => c.CountDate = null), Reasons.FieldRequired, "stock_count.count_date", "");
        Refused(Valid.StockCount(c => c.Base = ""), Reasons.FieldRequired, "stock_count.base", "");
        Refused(Valid.StockCount(c => c.PartNumber = ""), Reasons.FieldRequired, "stock_count.part_number", "");
        Refused(Valid.StockCount(c => c.ClearQuantity()), Reasons.FieldRequired, "stock_count.quantity", "");
    }

    [Fact]
    public void The_base_is_one_of_the_fleet_as_it_is_spelled()
    {
        Refused(Valid.StockCount(c => c.Base = "Nort"), Reasons.BaseNotKnown, "stock_count.base", "Nort");
        Refused(Valid.StockCount(c => c.Base = "north"), Reasons.BaseSpelledOtherwise, "stock_count.base", "north");
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(100_001)]
    public void A_quantity_is_of_a_shelf(int quantity) =>
        Refused(Valid.StockCount(c => c.Quantity = quantity), Reasons.NumberOutOfRange, "stock_count.quantity", $"{quantity}");

    [Theory]
    [InlineData(-1)]
    [InlineData(1_001)]
    public void A_lead_time_is_days(int days) =>
        Refused(Valid.StockCount(c => c.LeadTimeDays = days), Reasons.NumberOutOfRange, "stock_count.lead_time_days", $"{days}");

    [Fact]
    public void A_part_number_is_short() =>
        Refused(Valid.StockCount(c => c.PartNumber = new string('p', 121)), Reasons.TextTooLong, "stock_count.part_number", new string('p', 120));
}
