using System.Globalization;
using FleetTrend.Records.Spares;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of stock counts.</summary>
internal static class StockRules
{
    private const int MaxPartNumberLength = 120;

    public static StockCount Parse(Wire.StockCount count, FieldReader reader, ReferenceData known) => new()
    {
        CountDate = reader.Day("count_date", count.CountDate),
        Base = BaseRules.ReadKnown(count.Base, reader, known),
        PartNumber = reader.Line("part_number", count.PartNumber, 1, MaxPartNumberLength),
        Quantity = Whole(reader, "quantity", count.HasQuantity ? count.Quantity : null, StockCount.MaxQuantity, isRequired: true) ?? 0,
        LeadTimeDays = Whole(reader, "lead_time_days", count.HasLeadTimeDays ? count.LeadTimeDays : null, StockCount.MaxLeadTimeDays, isRequired: false),
    };

    private static int? Whole(FieldReader reader, string field, int? value, int max, bool isRequired)
    {
        var rule = $"must be a whole number from 0 to {max.ToString("#,0", CultureInfo.InvariantCulture)}";
        if (value is null && isRequired)
            reader.Refuse(field, "", Reasons.FieldRequired, rule);
        else if (value < 0 || value > max)
            reader.RefuseBare(field, value.Value.ToString(CultureInfo.InvariantCulture), Reasons.NumberOutOfRange, rule);
        return value;
    }
}
