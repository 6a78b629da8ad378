using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Tests.Rules;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Action = FleetTrend.Contracts.V1.Action;

namespace FleetTrend.Intake.Tests;

/// <summary>
/// Hashes that stand for ever: databases hold them, and a record that comes again is told by them. Expected values: the Python script
/// tests/reference/content-hash/content_hash.py, from the definition alone; the code that hashed protobuf's own bytes gave the same.
/// </summary>
public sealed class ContentHashFixedTests
{
    [Theory]
    [InlineData("aircraft", "FBD3F328BBB462CB7EA035130CE6F48DF0788013D308C84649265895BAC1BACA")]
    [InlineData("meter reading", "26158566B8D07C1C44FE8F5900B73CC6B00B5FC6247FCF87E34E644C6DCCD7D6")]
    [InlineData("meter change", "2F2533EF8585E6443C1CAA4A50660F1153DDF5103E57715DC4D31F6116285EBD")]
    [InlineData("installation", "AD3A97A3121CAE8A777C22ABE2ABD249D5E2E0E8B699BE2931B4ACC1280E8B3E")]
    [InlineData("removal", "7FB4C8DED171EBBDEE20DF376596C2E03BE4F3EBA3EA09F6E2A841B2E3BB7C4C")]
    [InlineData("inspection", "16D95FDBF98FE1528ABC8694B59D82942A0DA14A7751057525B51734447A8604")]
    [InlineData("finding", "E09217C8027D87CD3C33D95CCC5A39F264B8D41647E2F741184DCB02A11288C2")]
    [InlineData("finding by codes", "D8CDA977543D41CE4D0A29D169CE8CF476592BFD8B843F0D95FA6F8852A3E6D9")]
    [InlineData("action", "AB230893BD7428CBC69B367B1FFCE440597BD01A9009811C5C16EED5458FE723")]
    [InlineData("action of a kind that came later", "7A5887EE3DC47C5F8A649A1C4D0DDF4C6DA61E9FE9E6AAB1593CA8540E0DA9AA")]
    [InlineData("action by codes", "6B3F9B17F183E85B77EC9B68064CBA873B473A279DFBAA93E86BA2349638FD4D")]
    [InlineData("retraction", "3A651B8AA1CBEBFC24C9298A1D3A9D212421F035EFC63A863AA039FBFF0D1882")]
    [InlineData("practice change", "C4BAEE8BB4772DEE0147CEE0842EC4C1E4E8E9F7F209B2CF8FBFA456065B885F")]
    [InlineData("stock count", "A87065CF6B8508C212665F33F636280B48D2C3162150254A41F506B159E4A50A")]
    public void The_hash_of_a_content_never_changes(string name, string hash) =>
        Assert.Equal(hash, Convert.ToHexString(ContentHash.Compute(Records()[name])));

    [Fact]
    public void There_is_one_of_every_kind() => Assert.Equal(
        Record.Descriptor.Oneofs[0].Fields.Select(field => field.FieldNumber).Order(),
        Records().Values.Select(record => (int)record.ContentCase).Distinct().Order());

    [Fact] // A field that the contract gains fails here until the hash has it.
    public void Every_field_of_the_contract_counts() => Assert.All(
        Records().Where(named => named.Key is not ("finding by codes" or "action by codes")),
        named =>
        {
            var hash = ContentHash.Compute(named.Value);
            foreach (var (path, changed) in Changes(named.Value))
                Assert.False(hash.AsSpan().SequenceEqual(ContentHash.Compute(changed)), path);
        });

    [Fact]
    public void The_order_in_which_fields_arrive_does_not_count()
    {
        var reading = Records()["meter reading"].MeterReading;
        var hours = new MeterReading { MeterHours = reading.MeterHours }.ToByteArray();
        var rest = new MeterReading { Registration = reading.Registration, ReadingDate = reading.ReadingDate }.ToByteArray();
        var record = new Record { MeterReading = MeterReading.Parser.ParseFrom([.. hours, .. rest]) };
        Assert.Equal(ContentHash.Compute(Records()["meter reading"]), ContentHash.Compute(record));
    }

    private static Dictionary<string, Record> Records() => new()
    {
        ["aircraft"] = Valid.Aircraft(a =>
        {
            a.Assignments[0].Base = "Nordfeld \u00dc";
            a.Assignments[1].FromDate = Valid.Day(2025, 12, 31);
            (a.MeterOffsetHours, a.RetiredDate) = (-120.5, Valid.Day());
        }),
        ["meter reading"] = Valid.Reading(),
        ["meter change"] = Valid.MeterChange(),
        ["installation"] = Valid.Installation(i => (i.SerialNumber, i.PartNumber) = ("S-1", "gasket, two layers")),
        ["removal"] = Valid.Removal(r => (r.Reason, r.SerialNumber) = (RemovalReason.WithSisters, "S-0")),
        ["inspection"] = new()
        {
            Inspection = new()
            {
                Registration = "zz-a01",
                InspectionDate = Valid.Day(),
                TimeInServiceHours = 812.4,
                Occasion = Occasion.Annual,
                Looks =
                {
                    new LocationLook { Location = Valid.Gasket, State = LookState.CouldNotExamine },
                    new LocationLook { LocationCode = "\uff21", State = LookState.Examined, Method = LookMethod.Visual },
                    new LocationLook { LocationCode = "\U0001F527", State = LookState.NotExamined },
                    new LocationLook { Location = Valid.Weld, State = LookState.Examined, Method = LookMethod.Borescope },
                },
            },
        },
        ["finding"] = Valid.Finding(f =>
        {
            (f.Location, f.TimeInServiceHours, f.Condition, f.SizeMm) = (Valid.Gasket, 0.1 + 0.2, Condition.LeakTrace, 4.25);
            (f.TraceColour, f.Method, f.SameEventAs) = (TraceColour.Rose, LookMethod.PressureTest, "card 16");
            f.Note = "\u00dcbergang, grau\n" + new string('x', 200);
        }),
        ["finding by codes"] = new()
        {
            Finding = new()
            {
                Registration = "ZZ-A01",
                FoundDate = Valid.Day(),
                TimeInServiceHours = 812.4,
                Grade = FindingGrade.Accepted,
                LocationCode = "EX3",
                ConditionCode = "CRK",
            },
        },
        ["action"] = Valid.Action(a => a.Note = "set of four"),
        ["action of a kind that came later"] = Valid.Action(a =>
        {
            a.Location = "exhaust/cyl-3/flange-weld";
            a.Kind = ActionKind.Lubricated;
        }),
        ["action by codes"] = new()
        {
            Action = new Action
            {
                Registration = "ZZ-A01",
                ActionDate = Valid.Day(),
                TimeInServiceHours = 812.4,
                PartHours = 3.5,
                LocationCode = "EX3",
                KindCode = "RPL",
            },
        },
        ["practice change"] = Valid.PracticeChange(),
        ["stock count"] = Valid.StockCount(),
        ["retraction"] = Valid.Retraction(),
    };

    /// <summary>The record with each field of its content changed in turn, those of its lines and days too.</summary>
    private static IEnumerable<(string Path, Record Changed)> Changes(Record record)
    {
        var content = Record.Descriptor.FindFieldByNumber((int)record.ContentCase);
        return ChangesOf((IMessage)content.Accessor.GetValue(record), content.Name).Select(change =>
        {
            var changed = new Record();
            content.Accessor.SetValue(changed, change.Changed);
            return (change.Path, changed);
        });
    }

    private static IEnumerable<(string Path, IMessage Changed)> ChangesOf(IMessage message, string path)
    {
        foreach (var field in message.Descriptor.Fields.InDeclarationOrder())
        {
            var here = $"{path}.{field.Name}";
            if (field.IsRepeated)
            {
                var count = ((System.Collections.IList)field.Accessor.GetValue(message)).Count;
                Assert.True(count > 0, here);
                yield return (here, Changed(message, copy => ((System.Collections.IList)field.Accessor.GetValue(copy)).RemoveAt(0)));
                for (var i = 0; i < count; i++)
                {
                    var index = i;
                    var line = (IMessage)((System.Collections.IList)field.Accessor.GetValue(message))[i]!;
                    foreach (var (inner, changed) in ChangesOf(line, $"{here}[{i}]"))
                        yield return (inner, Changed(message, copy => ((System.Collections.IList)field.Accessor.GetValue(copy))[index] = changed));
                }
            }
            else if (field.FieldType == FieldType.Message)
            {
                foreach (var (inner, changed) in ChangesOf((IMessage)field.Accessor.GetValue(message), here))
                    yield return (inner, Changed(message, copy => field.Accessor.SetValue(copy, changed)));
            }
            else
            {
                yield return (here, Changed(message, copy => field.Accessor.SetValue(copy, Another(field, field.Accessor.GetValue(message)))));
            }
        }
    }

    private static IMessage Changed(IMessage message, Action<IMessage> change)
    {
        var copy = message.Descriptor.Parser.ParseFrom(message.ToByteArray());
        change(copy);
        return copy;
    }

    private static object Another(FieldDescriptor field, object value) => field.FieldType switch
    {
        FieldType.String => value + "x",
        FieldType.Double => (double)value + 1,
        FieldType.Int32 => (int)value + 1,
        FieldType.Bool => !(bool)value,
        FieldType.Enum => (int)value == 2 ? 1 : 2, // a grade not told is a defect, 1
        _ => throw new InvalidOperationException($"{field.FullName} has a type that no content had before: {field.FieldType}."),
    };
}
