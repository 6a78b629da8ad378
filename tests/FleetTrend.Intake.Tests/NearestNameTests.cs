namespace FleetTrend.Intake.Tests;

/// <summary>The right name that is nearest to a wrong one, counted by hand: letters put in, left out, changed, or swapped.</summary>
public sealed class NearestNameTests
{
    private static readonly string[] Marks = ["ZZ-A01", "ZZ-A02", "ZZ-A11", "ZZ-B07", "QX-104"];
    private static readonly string[] Fields = ["registration", "location", "found_date", "time_in_service_hours", "condition", "condition_code", "note"];

    [Theory]
    [InlineData("ZZ-AO1", "ZZ-A01")] // a letter that looks like a digit
    [InlineData("ZZ-A1", "ZZ-A01")] // zeros before a number
    [InlineData("ZZA02", "ZZ-A02")] // a hyphen
    [InlineData("ZZ-BO7", "ZZ-B07")]
    [InlineData("QX-14", "QX-104")]
    [InlineData("XQ-104", "QX-104")] // swapped
    [InlineData("ZZ-A03", "ZZ-A01 or ZZ-A02")] // as near as each other
    [InlineData("N-12345", null)]
    [InlineData("", null)]
    public void Of_a_mark(string given, string? nearest) => Assert.Equal(nearest, NearestName.Find(given, Marks));

    [Theory]
    [InlineData("hours", "time_in_service_hours")] // a whole part of it
    [InlineData("regisration", "registration")]
    [InlineData("foundDate", "found_date")]
    [InlineData("conditon", "condition")]
    [InlineData("finding_location", "location")]
    [InlineData("comment", null)]
    public void Of_a_field(string given, string? nearest) => Assert.Equal(nearest, NearestName.Find(given, Fields));

    [Theory]
    [InlineData("leak-trace", "CONDITION_LEAK_TRACE")]
    [InlineData("LeakTrace", "CONDITION_LEAK_TRACE")]
    [InlineData("CONDITION_CRAK", "CONDITION_CRACK")]
    public void Of_a_choice(string given, string nearest) =>
        Assert.Equal(nearest, NearestName.Find(given, ["CONDITION_CRACK", "CONDITION_LEAK_TRACE", "CONDITION_WEAR"]));

    [Fact]
    public void A_text_that_is_no_name_is_not_compared() => Assert.Null(NearestName.Find(new string('x', 1_000_000), Marks));
}
