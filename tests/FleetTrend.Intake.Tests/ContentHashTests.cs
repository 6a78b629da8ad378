using System.Security.Cryptography;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Tests.Rules;
using Google.Protobuf;

namespace FleetTrend.Intake.Tests;

/// <summary>Two forms of one content have one fingerprint; other content has another.</summary>
public sealed class ContentHashTests
{
    [Fact]
    public void The_key_is_not_content()
    {
        var other = Valid.Finding();
        other.Key = new RecordKey { Source = "other", SourceRecordId = "9", Revision = 4 };
        Same(Valid.Finding(), other);
    }

    [Fact]
    public void The_case_of_a_mark_is_not_content() => Same(Valid.Reading(), Valid.Reading(r => r.Registration = "zz-a01"));

    [Fact]
    public void Absent_and_default_are_one()
    {
        Same(Valid.Finding(), Valid.Finding(f => f.Grade = FindingGrade.Defect));
        Same(Valid.Action(), Valid.Action(a => a.PartHours = 0)); // of a replacement, absent means new
        Same(Valid.MeterChange(), Valid.MeterChange(c => c.NewMeterHours = -0.0));
    }

    [Fact] // Required hours had no presence at first, and proto3 does not write such a 0: what was stored then is still the same record.
    public void Zero_hours_are_hashed_as_the_first_contract_wrote_them()
    {
        AsIfNeverWritten(Valid.MeterChange(c => c.NewMeterHours = 0), r => r.MeterChange.ClearNewMeterHours());
        AsIfNeverWritten(Valid.MeterChange(c => c.OldMeterHours = 0), r =>
        {
            r.MeterChange.ClearOldMeterHours();
            r.MeterChange.ClearNewMeterHours();
        });
        AsIfNeverWritten(Valid.Reading(c => c.MeterHours = 0), r => r.MeterReading.ClearMeterHours());
        AsIfNeverWritten(Valid.Installation(c => c.TimeInServiceHours = 0), r => r.Installation.ClearTimeInServiceHours());
        AsIfNeverWritten(Valid.Removal(c => c.TimeInServiceHours = 0), r => r.Removal.ClearTimeInServiceHours());
        AsIfNeverWritten(Valid.Inspection(c => c.TimeInServiceHours = 0), r => r.Inspection.ClearTimeInServiceHours());
        AsIfNeverWritten(Valid.Finding(c => (c.TimeInServiceHours, c.Grade) = (0, FindingGrade.Defect)), r => r.Finding.ClearTimeInServiceHours());
        AsIfNeverWritten(Valid.Action(c => (c.TimeInServiceHours, c.PartHours) = (0, 40)), r => r.Action.ClearTimeInServiceHours());
    }

    [Fact]
    public void Unknown_hours_of_a_part_are_not_zero_hours() => Differ(Valid.Installation(), Valid.Installation(i => i.ClearPartHours()));

    [Fact]
    public void A_lead_time_of_no_days_is_not_an_unknown_one() =>
        Differ(Valid.StockCount(c => c.LeadTimeDays = 0), Valid.StockCount(c => c.ClearLeadTimeDays()));

    [Fact]
    public void The_last_bit_of_a_double_is_not_content() =>
        Same(Valid.Reading(r => r.MeterHours = 0.1 + 0.2), Valid.Reading(r => r.MeterHours = 0.3));

    [Fact]
    public void The_order_of_lines_is_not_content_and_their_state_is()
    {
        Same(Valid.Inspection(), Valid.Inspection(i =>
        {
            var last = i.Looks[1];
            i.Looks.RemoveAt(1);
            i.Looks.Insert(0, last);
        }));
        Differ(Valid.Inspection(), Valid.Inspection(i => i.Looks[1].State = LookState.CouldNotExamine));
    }

    [Fact]
    public void A_field_of_a_later_contract_is_not_content()
    {
        var record = Valid.Reading();
        // Field 15 of MeterReading, a string, is not in this contract.
        var reading = MeterReading.Parser.ParseFrom([.. record.MeterReading.ToByteArray(), (15 << 3) | 2, 1, (byte)'x']);
        Same(Valid.Reading(), new Record { Key = record.Key, MeterReading = reading });
    }

    [Fact]
    public void Every_kind_of_record_and_every_change_has_its_own()
    {
        var hashes = Valid.All().Select(r => Convert.ToHexString(ContentHash.Compute(r))).ToList();
        Assert.Equal(hashes.Count, hashes.Distinct().Count());
        Differ(Valid.Finding(), Valid.Finding(f => f.SizeMm = 4.6));
        Differ(Valid.Finding(), Valid.Finding(f => f.Note = "elsewhere"));
    }

    private static void Same(Record a, Record b) => Assert.Equal(ContentHash.Compute(a), ContentHash.Compute(b));

    private static void AsIfNeverWritten(Record record, Action<Record> clear)
    {
        var first = record.Clone();
        first.Key = null;
        clear(first);
        Assert.Equal(SHA256.HashData(first.ToByteArray()), ContentHash.Compute(record));
    }

    private static void Differ(Record a, Record b) => Assert.NotEqual(ContentHash.Compute(a), ContentHash.Compute(b));
}
