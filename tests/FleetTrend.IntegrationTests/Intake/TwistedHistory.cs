using FleetTrend.Contracts.V1;
using FleetTrend.Synthetic;
using Google.Protobuf;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>
/// A synthetic fleet as two sources might push it: some records corrected (other hours, another aircraft, another kind), some taken
/// back, some taken back and sent again, some with codes in place of our words, some about aircraft that are taken back or never
/// registered, some at locations that their aircraft gets, or loses, with another type group. Everything about it is drawn from one seed.
/// </summary>
internal sealed class TwistedHistory
{
    public const string ShopSource = "synthetic-shop-cards";
    public const string LogSource = "synthetic-flight-log";

    private const string Ghost = "ZZ-G01";
    private const string Never = "ZZ-Q99";
    private const string CodedAircraft = "ZZ-B04";
    private const string Four = "synthetic-trainer-four";
    private const string Six = "synthetic-tourer-six";
    private const string AnyWeld = "exhaust/cyl-1/flange-weld";
    private const string SixOnlyWeld = "exhaust/cyl-5/flange-weld";
    private const string NoWeld = "exhaust/cyl-9/flange-weld";

    // A replaced meter, a planted crack that comes back, a misread meter, a planted shroud: see SyntheticSchool.
    private static readonly string[][] Groups = [["ZZ-A05", "ZZ-A07", "ZZ-A10"], ["ZZ-B01", CodedAircraft]];

    private readonly Random random;
    private readonly List<IMessage> steps = [];
    private readonly Dictionary<string, Record> final = new(StringComparer.Ordinal);
    private readonly HashSet<string> waiting = new(StringComparer.Ordinal);
    private readonly List<Record> superseded = [];
    private readonly Dictionary<string, SourceCode> codes = new(StringComparer.Ordinal);

    public TwistedHistory(SyntheticFleet fleet, int seed)
    {
        random = new Random(seed);
        foreach (var record in fleet.Records.Where(r => Groups.Any(g => g.Contains(RegistrationOf(r)))))
            Add(record);
        AddGhost(fleet.Records[0]);
        AddRegrouped("ZZ-G02", [(0, Four)], [(0, Four), (200, Six)]);
        AddRegrouped("ZZ-G03", [(0, Six)], [(0, Four)]);
        steps.AddRange(codes.Values);
        steps.Add(new Record { Key = new RecordKey { Source = LogSource, SourceRecordId = "never came", Revision = 2 }, Retraction = new Retraction() });
    }

    /// <summary>What is sent: records, and the meanings of codes; in any order.</summary>
    public IReadOnlyList<IMessage> Steps => steps;

    /// <summary>What counts in the end, by source and identifier; in our own words, aircraft first.</summary>
    public IReadOnlyDictionary<string, Record> Final => final;

    /// <summary>Revisions of aircraft that do not count in the end, and that let in records at locations which the newest lacks.</summary>
    public IReadOnlyList<Record> Superseded => superseded;

    /// <summary>Those of <see cref="Final"/> that may wait for ever: their aircraft is not registered, or never had the location.</summary>
    public IReadOnlySet<string> Waiting => waiting;

    public static string NameOf(RecordKey key) => $"{key.Source}/{key.SourceRecordId}";

    public static string SourceOf(IMessage step) => step is SourceCode code ? code.Source : ((Record)step).Key.Source;

    private void Add(Record synthetic)
    {
        var last = synthetic.Clone();
        last.Key.Source = last.MeterReading is not null || last.MeterChange is not null || (RegistrationOf(last) == CodedAircraft && last.Aircraft is null)
            ? LogSource
            : ShopSource;
        var draw = random.Next(100);
        Record[] earlier = draw switch
        {
            < 76 => [],
            < 84 => [Wrong(last)],
            < 90 => [Wrong(last), Retraction()],
            < 95 => [Retraction()], // the first revision never comes
            _ => [Wrong(last), Wrong(last)],
        };
        var isTakenBack = last.Aircraft is null && draw is >= 84 and < 87;
        Record[] revisions = isTakenBack ? [last, Retraction()] : [.. earlier, last];
        if (revisions[0].Retraction is not null)
            revisions = [Wrong(last), .. revisions];
        for (var i = 0; i < revisions.Length; i++)
        {
            revisions[i].Key = new RecordKey { Source = last.Key.Source, SourceRecordId = last.Key.SourceRecordId, Revision = i + 1 };
            if (!(draw is >= 90 and < 95 && i == 0))
                steps.Add(Coded(revisions[i]));
        }

        if (!isTakenBack)
            final.Add(NameOf(last.Key), last);
    }

    private void AddGhost(Record aircraft)
    {
        var ghost = aircraft.Clone();
        ghost.Key = new RecordKey { Source = ShopSource, SourceRecordId = "ghost", Revision = 1 };
        ghost.Aircraft.Registration = Ghost;
        var retraction = Retraction();
        retraction.Key = new RecordKey { Source = ShopSource, SourceRecordId = "ghost", Revision = 2 };
        steps.AddRange([ghost, retraction]);
        foreach (var registration in new[] { Ghost, Never })
        {
            for (var i = 0; i < 5; i++)
            {
                var record = new Record
                {
                    Key = new RecordKey { Source = LogSource, SourceRecordId = $"{registration} {i}", Revision = 1 },
                    MeterReading = new MeterReading { Registration = registration, ReadingDate = aircraft.Aircraft.WatchStartDate, MeterHours = i },
                };
                steps.Add(record);
                final.Add(NameOf(record.Key), record);
                waiting.Add(NameOf(record.Key));
            }
        }
    }

    /// <summary>An aircraft whose second revision has other type groups, with looks at a location of both, of the larger layout, and of none.</summary>
    private void AddRegrouped(string registration, (int Day, string Group)[] first, (int Day, string Group)[] second)
    {
        var start = new DateOnly(2024, 1, 1);
        foreach (var (revision, groups) in new[] { (1, first), (2, second) })
        {
            var record = new Record
            {
                Key = new RecordKey { Source = ShopSource, SourceRecordId = registration, Revision = revision },
                Aircraft = new Aircraft
                {
                    Registration = registration,
                    WatchStartDate = ShopCards.ToWire(start),
                    Assignments =
                    {
                        groups.Select(g => new Assignment { FromDate = ShopCards.ToWire(start.AddDays(g.Day)), Base = "North", TypeGroup = g.Group }),
                    },
                },
            };
            steps.Add(record);
            if (revision == 1)
                superseded.Add(record);
            else
                final.Add(NameOf(record.Key), record);
        }

        foreach (var (location, day) in new[] { AnyWeld, SixOnlyWeld, NoWeld }.SelectMany(l => new[] { 20, 120, 220, 320 }, (l, d) => (l, d)))
        {
            var record = new Record
            {
                Key = new RecordKey { Source = LogSource, SourceRecordId = $"{registration} {location} {day}", Revision = 1 },
                Inspection = new Inspection
                {
                    Registration = registration,
                    InspectionDate = ShopCards.ToWire(start.AddDays(day)),
                    TimeInServiceHours = 2 * day,
                    Occasion = Occasion.HundredHour,
                    Looks = { new LocationLook { Location = location, State = LookState.Examined } },
                },
            };
            steps.Add(record);
            final.Add(NameOf(record.Key), record);
            if (location == NoWeld)
                waiting.Add(NameOf(record.Key));
        }
    }

    private Record Wrong(Record record)
    {
        var wrong = record.Clone();
        var content = ContentOf(wrong);
        var registration = content.Descriptor.FindFieldByName("registration").Accessor;
        var hours = content.Descriptor.FindFieldByName("time_in_service_hours")?.Accessor;
        var group = Groups.First(g => g.Contains(RegistrationOf(record)));
        switch (record.Aircraft is null ? random.Next(4) : 4)
        {
            case 0:
                registration.SetValue(content, group[random.Next(group.Length)].ToLowerInvariant());
                break;
            case 1:
                registration.SetValue(content, Never);
                break;
            case 2 when hours is not null:
                hours.SetValue(content, (double)random.Next(100_000) / 10);
                break;
            case 4:
                wrong.Aircraft.Assignments[0].Base = "Elsewhere";
                wrong.Aircraft.Assignments[0].TypeGroup = random.Next(2) == 0 ? Four : Six;
                wrong.Aircraft.MeterOffsetHours = random.Next(100);
                break;
            default:
                wrong.MeterChange = new MeterChange
                {
                    Registration = RegistrationOf(record),
                    ChangeDate = new Google.Type.Date { Year = 2024, Month = 5, Day = 1 + random.Next(28) },
                    OldMeterHours = 5,
                    NewMeterHours = 0,
                };
                break;
        }

        return wrong;
    }

    private static Record Retraction() => new() { Retraction = new Retraction { Reason = "synthetic" } };

    /// <summary>The second source writes the locations, conditions and actions of one aircraft in codes of its own.</summary>
    private Record Coded(Record record)
    {
        if (record.Key.Source != LogSource || record.Retraction is not null || RegistrationOf(record) != CodedAircraft)
            return record;
        var coded = record.Clone();
        var content = ContentOf(coded);
        foreach (var message in coded.Inspection is { } inspection ? inspection.Looks.ToList<IMessage>() : [content])
        {
            if (message.Descriptor.FindFieldByName("location") is { } location)
            {
                var path = (string)location.Accessor.GetValue(message);
                location.Accessor.Clear(message);
                message.Descriptor.FindFieldByName("location_code").Accessor.SetValue(message, Code(new SourceCode { Code = path.ToUpperInvariant(), Location = path }));
            }
        }

        if (coded.Finding is { } finding)
        {
            finding.ConditionCode = Code(new SourceCode { Code = $"F{(int)finding.Condition}", Condition = finding.Condition });
            finding.Condition = Condition.Unspecified;
        }

        if (coded.Action is { } action)
        {
            action.KindCode = Code(new SourceCode { Code = $"A{(int)action.Kind}", Action = action.Kind });
            action.Kind = ActionKind.Unspecified;
        }

        return coded;
    }

    private string Code(SourceCode code)
    {
        code.Source = LogSource;
        codes.TryAdd(code.Code, code);
        return code.Code;
    }

    private static IMessage ContentOf(Record record) =>
        (IMessage)Record.Descriptor.Oneofs.Single(o => o.Name == "content").Accessor.GetCaseFieldDescriptor(record).Accessor.GetValue(record);

    private static string RegistrationOf(Record record)
    {
        var content = ContentOf(record);
        return ((string?)content.Descriptor.FindFieldByName("registration")?.Accessor.GetValue(content) ?? "").ToUpperInvariant(); // what belongs to no aircraft has none
    }
}
