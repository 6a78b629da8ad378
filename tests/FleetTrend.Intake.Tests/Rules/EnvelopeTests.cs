using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Rules;
using Google.Rpc;
using static FleetTrend.Intake.Tests.Rules.RefusalAssert;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>The key, the choice of content, and what is told when several rules are broken. Rules: protos/fleettrend/v1/record.proto.</summary>
public sealed class EnvelopeTests
{
    [Fact]
    public void A_record_of_each_kind_is_taken()
    {
        foreach (var record in Valid.All())
            Assert.Empty(RecordRules.Parse(record, Valid.Known()).Refusals);
    }

    [Fact]
    public void The_contract_and_the_domain_have_the_same_kinds_under_the_same_numbers()
    {
        Assert.Equal(
            Enum.GetValues<RecordKind>().Where(kind => kind != RecordKind.Unspecified).Select(kind => (int)kind),
            Enum.GetValues<Records.RecordKind>().Where(kind => kind != Records.RecordKind.Retraction).Select(kind => (int)kind)); // none asks for it
        Assert.Equal(
            Record.Descriptor.Oneofs[0].Fields.Select(field => field.FieldNumber), Valid.All().Select(record => (int)record.ContentCase));
        Assert.Equal(
            Enum.GetValues<Records.RecordKind>(),
            Valid.All().Select(record => RecordRules.Parse(record, Valid.Known()).Content!.RecordKind));
    }

    [Fact]
    public void A_record_without_key_is_refused()
    {
        var record = Valid.Reading();
        record.Key = null;
        Refused(record, Reasons.FieldRequired, "key", "");
    }

    [Fact]
    public void A_record_without_content_is_refused() =>
        Refused(new Record { Key = Valid.Key() }, Reasons.FieldRequired, "content", "");

    [Fact]
    public void A_missing_record_is_refused() => Assert.Equal(2, RecordRules.Parse(null, Valid.Known()).Refusals.Count);

    [Theory]
    [InlineData("", "FIELD_REQUIRED")]
    [InlineData("x", "PATTERN_MISMATCH")]
    [InlineData("Shop-Cards", "PATTERN_MISMATCH")]
    [InlineData("shop cards", "PATTERN_MISMATCH")]
    [InlineData("shop-cards\n", "PATTERN_MISMATCH")]
    [InlineData("unknown-tool", "SOURCE_NOT_REGISTERED")]
    public void The_source_is_a_registered_name(string source, string reason)
    {
        var record = Valid.Reading();
        record.Key.Source = source;
        Refused(record, Named(reason), "key.source", source.Replace("\n", "\\u000A"));
    }

    [Theory]
    [InlineData("", "FIELD_REQUIRED", "")]
    [InlineData(" 17", "TEXT_NOT_PRINTABLE", " 17")]
    [InlineData("17\t", "TEXT_NOT_PRINTABLE", "17\\u0009")]
    [InlineData("1\u00007", "TEXT_NOT_PRINTABLE", "1\\u00007")]
    [InlineData("1\u202e7", "TEXT_NOT_PRINTABLE", "1\\u202E7")]
    public void The_source_record_id_is_printable(string id, string reason, string shown)
    {
        var record = Valid.Reading();
        record.Key.SourceRecordId = id;
        Refused(record, Named(reason), "key.source_record_id", shown);
    }

    [Fact]
    public void The_source_record_id_has_up_to_120_characters()
    {
        var record = Valid.Reading();
        // 120 characters of two UTF-16 units each are 120 characters.
        record.Key.SourceRecordId = string.Concat(Enumerable.Repeat("\U0001F527", 120));
        Accepted<Records.Readings.MeterReading>(record);
        record.Key.SourceRecordId = new string('7', 121);
        Refused(record, Reasons.TextTooLong, "key.source_record_id", new string('7', 120));
    }

    [Fact]
    public void Revision_0_is_read_as_1_and_a_negative_one_is_refused()
    {
        var record = Valid.Reading();
        record.Key.Revision = 0;
        Assert.Equal(1, RecordRules.Parse(record, Valid.Known()).Key.Revision);
        record.Key.Revision = -1;
        Refused(record, Reasons.NumberOutOfRange, "key.revision", "-1");
    }

    [Fact]
    public void A_retraction_needs_a_revision_above_the_first() =>
        Refused(Valid.Retraction(r => r.Key.Revision = 0), Reasons.NumberOutOfRange, "key.revision", "1");

    [Fact]
    public void A_retractions_reason_is_up_to_2000_characters_and_may_have_lines()
    {
        Accepted<Records.Sources.Retraction>(Valid.Retraction(r => r.Retraction.Reason = "wrong aircraft\nsee card 18"));
        Refused(Valid.Retraction(r => r.Retraction.Reason = new string('x', 2001)), Reasons.TextTooLong, "retraction.reason", new string('x', 120));
        Refused(Valid.Retraction(r => r.Retraction.Reason = "a\u0007"), Reasons.TextNotPrintable, "retraction.reason", "a\\u0007");
    }

    [Fact]
    public void All_broken_rules_of_a_record_are_told_together()
    {
        var record = Valid.Finding(f =>
        {
            f.Registration = "ZZ-Q99";
            f.TimeInServiceHours = -1;
            f.FoundDate = null;
            f.Condition = Condition.Unspecified;
        });

        var status = RefusalStatus.Build(RecordRules.Parse(record, Valid.Known()).Refusals);

        Assert.Equal(
            ["finding.registration", "finding.condition", "finding.found_date", "finding.time_in_service_hours"],
            status.GetDetail<BadRequest>().FieldViolations.Select(v => v.Field));
        Assert.Equal("AIRCRAFT_NOT_REGISTERED", status.GetDetail<ErrorInfo>().Reason);
    }

    private static Reason Named(string name) => Reasons.All.Single(r => r.Name == name);
}
