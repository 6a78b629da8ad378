using System.Collections;
using System.Text.RegularExpressions;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Rules;
using Google.Protobuf;
using Google.Protobuf.Reflection;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>How refusals speak: "what it must be; got VALUE", in the words of the contract and never in those of the code.</summary>
public sealed partial class RefusalWordsTests
{
    // Values of a field's type that some rule refuses, whatever the field.
    private static readonly Dictionary<FieldType, object[]> BadValues = new()
    {
        [FieldType.String] = ["", " ", "x", "ZZ-Q77", "a\u0001b", "*", "no/such-place/anywhere", new string('x', 3_000)],
        [FieldType.Double] = [double.NaN, double.PositiveInfinity, -1e6, 1e6, 0.05, 7.0],
        [FieldType.Int32] = [-1, 0, 99],
        [FieldType.Enum] = [0, 1, 2, 3, 4, 5, 6, 99, -1],
        [FieldType.Bool] = [true, false],
    };

    /// <summary>Members of the enums behind the contract, where they are no words by themselves.</summary>
    private static readonly HashSet<string> NamesOfCode =
    [
        .. new[] { typeof(Condition).Assembly, typeof(FleetTrend.Records.Findings.Condition).Assembly, typeof(RecordIntake).Assembly }
            .SelectMany(assembly => assembly.GetTypes())
            .SelectMany(type => type.IsEnum ? Enum.GetNames(type).Append(type.Name) : [type.Name]),
    ];

    [Fact]
    public void Every_refusal_of_a_record_says_what_it_must_be_and_what_it_was()
    {
        var refusals = Records().SelectMany(record => RecordRules.Parse(record, Valid.Known()).Refusals).ToList();
        Assert.Superset(
            new HashSet<string>(
                [
                    "FIELD_REQUIRED", "FIELD_NOT_ALLOWED", "ENUM_UNKNOWN", "NUMBER_NOT_FINITE", "NUMBER_OUT_OF_RANGE", "TOO_MANY_DECIMALS", "DATE_INVALID",
                    "CONDITION_NOT_AT_KIND", "LOCATION_NOT_IN_LAYOUT", "AIRCRAFT_NOT_REGISTERED", "CODE_NOT_MAPPED", "TEXT_TOO_LONG", "TEXT_NOT_PRINTABLE",
                    "PATTERN_MISMATCH",
                ],
                StringComparer.Ordinal),
            refusals.Select(r => r.Reason.Name).ToHashSet(StringComparer.Ordinal));
        Assert.All(refusals, AssertWords);
    }

    [Fact]
    public void So_does_every_refusal_of_the_other_calls()
    {
        List<Refusal> refusals =
        [
            .. Refuse(() => { LayoutRules.Parse(
                new LocationKind { Conditions = { "CONDITION_CRAK" }, HasLife = true, Checks = { new ConditionChecks() } }, out var r); return r; }),
            .. Refuse(() => { LayoutRules.Parse(
                new Layout { Locations = { new Location { Path = "x", Kind = "flange-wled", JascCode = "1" } } }, Valid.Kinds, out var r); return r; }),
            .. Refuse(() => { LayoutRules.Parse(new TypeGroup(), out var r); return r; }),
            .. Refuse(() => { CodeRules.Parse(new SourceCode { Condition = (Condition)99 }, out var r); return r; }),
            .. Refuse(() => { CodeRules.Parse(new SourceCode(), out var r); return r; }),
            .. Refuse(() => { CodeRules.Parse(new DeleteCodeRequest { Kind = (CodeKind)9 }, out var r); return r; }),
            .. SourceRules.Check(new Source { Name = "A" }),
            .. KeyRules.Check(new CreateKeyRequest { Scopes = { Scope.RecordsWrite, Scope.RecordsWrite, (Scope)9 } }),
            .. KeyRules.Check(new CreateKeyRequest()),
            .. KeyRules.Check(new RevokeKeyRequest { KeyId = "x" }),
            .. FlagAnswerRules.Closing(new CloseFlagRequest()),
            .. DataProblemRules.Question(new ListDataChecksRequest { State = (DataCheckState)9, Kind = (DataCheckKind)99 }),
            .. DataProblemRules.Closing(new CloseDataCheckRequest()),
            .. DataProblemRules.Merge(new MergeFindingsRequest { Kept = Name("a-b", "1"), Merged = Name("a-b", "2") }),
            .. DataProblemRules.Merge(new MergeFindingsRequest()),
            .. RecordQuestionRules.Check(new ListRecordsRequest { Kind = (RecordKind)99, Registration = "?", Source = "?" }),
            .. ReportRules.Mails(new ListMailsRequest { State = (MailState)9 }),
            .. ReportRules.Recipients(new SetRecipientsRequest { Addresses = { "x" } }),
            .. ReportRules.Request(new RequestReportRequest()),
        ];
        Assert.InRange(refusals.Count, 30, 100);
        Assert.All(refusals, AssertWords);
    }

    [Fact] // The form of the product's own words: FIELD: what it must be; got VALUE.
    public void A_message_reads_as_people_say_it()
    {
        Assert.Equal(
            "finding.time_in_service_hours: must be hours from 0 to 200,000 with at most one decimal; got 812.45",
            MessageOf(Valid.Finding(f => f.TimeInServiceHours = 812.45)));
        Assert.Equal(
            "finding.time_in_service_hours: must be hours from 0 to 200,000 with at most one decimal; got nothing",
            MessageOf(Valid.Finding(f => f.ClearTimeInServiceHours())));
        Assert.Equal(
            """finding.found_date: must be a date such as {"year": 2026, "month": 2, "day": 3}; got 2026-02-30""",
            MessageOf(Valid.Finding(f => f.FoundDate.Day = 30)));
        Assert.Equal(
            "finding.condition: must be a condition of a location of kind 'flange-weld': CONDITION_CRACK, CONDITION_LEAK_TRACE, CONDITION_EROSION, "
            + "CONDITION_CORROSION, CONDITION_OTHER; got CONDITION_HARDENING",
            MessageOf(Valid.Finding(f => f.Condition = Condition.Hardening)).Replace("CONDITION_DISTORTION, ", "", StringComparison.Ordinal));
        Assert.Equal(
            "finding.location: must be a location that ZZ-A01 has by the layout of its type group; got \"exhaust/cyl-3/flange-wled\"; "
            + "did you mean exhaust/cyl-3/flange-weld?",
            MessageOf(Valid.Finding(f => f.Location = "exhaust/cyl-3/flange-wled")));
        Assert.Equal(
            "removal.examined_good: must be false where the reason is REMOVAL_REASON_FAILED; got true",
            MessageOf(Valid.Removal(r => r.Reason = RemovalReason.Failed)));
    }

    private static string MessageOf(Record record) => RefusalStatus.Build(RecordRules.Parse(record, Valid.Known()).Refusals).Message;

    private static FindingName Name(string source, string id) => new() { Source = source, SourceRecordId = id };

    private static IReadOnlyList<Refusal> Refuse(Func<IReadOnlyList<Refusal>> refusals) => refusals();

    private static void AssertWords(Refusal refusal)
    {
        Assert.True(refusal.Rule.StartsWith("must ", StringComparison.Ordinal) && !refusal.Rule.EndsWith('.'), $"{refusal.Field}: {refusal.Rule}");
        Assert.Contains(refusal.Value.Length == 0 ? "; got nothing" : "; got ", refusal.Words);
        var ours = refusal.Words.Replace($"\"{refusal.Value}\"", "", StringComparison.Ordinal);
        Assert.True(
            !Capitalised().Matches(ours).Any(word => NamesOfCode.Contains(word.Value) && word.Value != "SetCode"), $"{refusal.Field}: {ours}");
    }

    /// <summary>Valid records with one field made bad, each in every way.</summary>
    private static IEnumerable<Record> Records()
    {
        yield return Valid.Finding(f => (f.Location, f.LocationCode) = ("", "EX3"));
        yield return Valid.Finding(f => (f.Condition, f.ConditionCode) = (Condition.Unspecified, "CR"));
        yield return Valid.Action(a => (a.Kind, a.KindCode) = (ActionKind.Unspecified, "WR"));
        foreach (var record in Valid.All())
        {
            for (var place = 0; ; place++)
            {
                var bad = Variants(record, place).ToList();
                if (bad.Count == 0)
                    break;
                foreach (var one in bad)
                    yield return one;
            }
        }
    }

    /// <summary>The record with its n-th field, counted through all its messages, made bad; nothing where it has not so many.</summary>
    private static IEnumerable<Record> Variants(Record record, int place)
    {
        var field = Fields(record).Select(pair => pair.Field).ElementAtOrDefault(place);
        if (field is null)
            yield break;
        if (field.FieldType == FieldType.Message)
        {
            var without = record.Clone();
            var at = Fields(without).ElementAt(place).Message;
            if (field.IsRepeated)
                ((IList)field.Accessor.GetValue(at)).Clear();
            else
                field.Accessor.Clear(at);
            yield return without;
            yield break;
        }

        foreach (var value in BadValues[field.FieldType])
        {
            var bad = record.Clone();
            field.Accessor.SetValue(Fields(bad).ElementAt(place).Message, value);
            yield return bad;
        }
    }

    private static IEnumerable<(IMessage Message, FieldDescriptor Field)> Fields(IMessage message)
    {
        foreach (var field in message.Descriptor.Fields.InDeclarationOrder().Where(f => f.RealContainingOneof is null || f.Accessor.HasValue(message)))
        {
            yield return (message, field);
            if (field.FieldType != FieldType.Message)
                continue;
            var value = field.Accessor.GetValue(message);
            foreach (var inner in (field.IsRepeated ? ((IList)value).Cast<IMessage>() : value is IMessage one ? [one] : []).SelectMany(Fields))
                yield return inner;
        }
    }

    [GeneratedRegex("[A-Z][a-z][A-Za-z]*", RegexOptions.None, matchTimeoutMilliseconds: 1_000)]
    private static partial Regex Capitalised();
}
