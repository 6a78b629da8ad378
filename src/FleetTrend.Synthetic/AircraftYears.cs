using FleetTrend.Contracts.V1;
using Google.Type;

namespace FleetTrend.Synthetic;

/// <summary>Flies one synthetic aircraft through its years and writes down what a shop would.</summary>
internal sealed class AircraftYears
{
    private const double MostHoursAtStart = 500;

    private readonly Tail tail;
    private readonly string source;
    private readonly Random random;
    private readonly List<Spot> spots;
    private readonly DateOnly meterChange;
    private List<DatedRecord> recorded = [];
    private DateOnly misread;
    private DateOnly nextReading;
    private double hours;
    private double nextInspection;
    private int number;
    private int inspectionCount;
    private double meterOffset;

    public AircraftYears(Tail tail, string source, Random random)
    {
        this.tail = tail;
        this.source = source;
        this.random = random;
        spots = [.. tail.Layout.Locations.Select(CreateSpot)];
        meterChange = tail.MeterReplaced ? tail.WatchStart.AddDays(500) : System.DateOnly.MaxValue;
        misread = tail.MisreadOnce ? tail.WatchStart.AddDays(640) : System.DateOnly.MaxValue;
        nextReading = tail.WatchStart;
        hours = tail.HoursAtStart;
    }

    /// <summary>All records up to a day; the aircraft itself is the first.</summary>
    public IReadOnlyList<DatedRecord> Fly(DateOnly lastDate)
    {
        var records = new List<DatedRecord>(Join());
        for (var date = tail.WatchStart; date <= lastDate; date = date.AddDays(1))
        {
            records.AddRange(FlyDay(date));
        }

        return records;
    }

    /// <summary>Comes before the first day. The records with which the aircraft joins: itself, and what is known of the parts
    /// in it.</summary>
    public IReadOnlyList<DatedRecord> Join()
    {
        Register();
        InstallWhatIsThere();
        nextInspection = hours + (20 * random.NextDouble());
        return Take();
    }

    /// <summary>The records of the next day; none before the watch starts.</summary>
    public IReadOnlyList<DatedRecord> FlyDay(DateOnly date)
    {
        if (date < tail.WatchStart)
        {
            return [];
        }

        Change(date);
        if (date == meterChange)
        {
            ReplaceMeter(date, hours);
        }

        hours += random.NextDouble() < 0.28 ? 0 : Math.Round(tail.HoursPerDay / 0.72 * (0.4 + (1.2 * random.NextDouble())), 1);
        hours = Math.Round(hours, 1);
        if (date >= nextReading)
        {
            var error = date >= misread ? 1000 : 0;
            misread = error > 0 ? System.DateOnly.MaxValue : misread;
            Read(date, hours - error);
            nextReading = date.AddDays(7);
        }

        if (hours >= nextInspection)
        {
            Inspect(date, hours);
            nextInspection = hours + 92 + (10 * random.NextDouble());
        }

        return Take();
    }

    private List<DatedRecord> Take()
    {
        if (recorded.Count == 0)
        {
            return [];
        }

        var taken = recorded;
        recorded = [];
        return taken;
    }

    private Spot CreateSpot(Location location)
    {
        var part = Wear.Part(location.Kind);
        var place = Wear.Place(location.Kind);
        return new Spot(location, part?.Condition ?? place?.Condition ?? Condition.Other, part)
        {
            RatePer1000Hours = Rate(location.Kind, location.Path, isTroubled: tail.TroubledFrom is null),
            LifeFactor = location.Kind == "gasket" ? tail.GasketLifeFactor : 1,
        };
    }

    private double Rate(string kind, string path, bool isTroubled)
    {
        if (isTroubled && path == tail.TroubledLocation)
            return tail.TroubledRatePer1000Hours;
        var place = Wear.Place(kind);
        return (place?.RatePer1000Hours ?? 0) * (isTroubled && place?.Condition == Condition.Crack ? tail.CrackFactor : 1);
    }

    /// <summary>What changes on a day: trouble begins or ends, gaskets are fitted in another way.</summary>
    private void Change(DateOnly date)
    {
        if (date == tail.TroubledFrom || date == tail.TroubledUntil)
        {
            foreach (var spot in spots.Where(s => !s.HasLife && s.Condition == Condition.Crack))
            {
                spot.RatePer1000Hours = Rate(spot.Kind, spot.Path, isTroubled: date == tail.TroubledFrom);
                if (date == tail.TroubledUntil || (spot.BadAt > hours && !spot.IsLeft))
                    spot.Draw(hours, 0, random);
            }
        }

        if (date == tail.GasketsBetterFrom)
        {
            foreach (var spot in spots.Where(s => s.Kind == "gasket"))
                spot.LifeFactor = 1;
        }
    }

    private void Register() => Add(tail.WatchStart, "aircraft", r => r.Aircraft = new Aircraft
    {
        Registration = tail.Registration,
        WatchStartDate = Day(tail.WatchStart),
        Assignments = { new Assignment { FromDate = Day(tail.WatchStart), Base = tail.Base, TypeGroup = tail.TypeGroup.Name } },
    });

    /// <summary>Parts that were in before the watch began: their ages are drawn as survivors, and told where they are known.</summary>
    private void InstallWhatIsThere()
    {
        foreach (var spot in spots)
        {
            var days = 1 + (int)(random.NextDouble() * MostHoursAtStart / tail.HoursPerDay);
            var age = Math.Round(days * tail.HoursPerDay, 1);
            spot.Draw(tail.HoursAtStart, spot.HasLife ? age : 0, random);
            if (spot.HasLife && tail.AgesKnown)
            {
                Install(spot, tail.WatchStart.AddDays(-days), Math.Round(tail.HoursAtStart - age, 1));
            }
        }
    }

    private void Inspect(DateOnly date, double hours)
    {
        var isAnnual = ++inspectionCount % 7 == 0;
        var inspection = new Inspection
        {
            Registration = tail.Registration,
            InspectionDate = Day(date),
            TimeInServiceHours = hours,
            Occasion = isAnnual ? Occasion.Annual : Occasion.HundredHour,
        };
        var examined = new List<Spot>();
        foreach (var spot in spots)
        {
            var state = LookAt(spot);
            inspection.Looks.Add(new LocationLook
            {
                Location = spot.Path,
                State = state,
                Method = state == LookState.Examined ? LookMethod.Visual : LookMethod.Unspecified,
            });
            if (state == LookState.Examined)
            {
                examined.Add(spot);
            }
        }

        Add(date, "inspection", r => r.Inspection = inspection);
        foreach (var spot in examined.Where(s => (s.IsLeft || s.BadAt <= hours) && (tail.WrittenShare >= 1 || random.NextDouble() < tail.WrittenShare)))
        {
            Find(spot, date, hours);
        }
    }

    private LookState LookAt(Spot spot) => spot.Kind switch
    {
        "muffler-baffle" when random.NextDouble() < 0.15 => LookState.CouldNotExamine,
        "muffler-shell" when random.NextDouble() < 0.10 => LookState.CouldNotExamine,
        _ when random.NextDouble() < 0.02 => LookState.NotExamined,
        _ => LookState.Examined,
    };

    private void Find(Spot spot, DateOnly date, double hours)
    {
        var finding = new Finding
        {
            Registration = tail.Registration,
            Location = spot.Path,
            FoundDate = Day(date),
            TimeInServiceHours = hours,
            Condition = spot.Condition,
            Grade = FindingGrade.Defect,
            Method = LookMethod.Visual,
        };
        if (spot.Condition == Condition.Crack)
        {
            finding.SizeMm = Math.Round(4 + (20 * random.NextDouble()));
        }

        if (spot.Condition == Condition.LeakTrace)
        {
            finding.TraceColour = spot.Path.StartsWith("induction", StringComparison.Ordinal) ? TraceColour.Blue : TraceColour.Grey;
        }

        Add(date, "finding", r => r.Finding = finding);
        Act(spot, ChooseAction(spot), date, hours);
    }

    private ActionKind ChooseAction(Spot spot)
    {
        if (spot.Path == tail.TroubledLocation)
        {
            return tail.TroubledAction;
        }

        var draw = random.NextDouble();
        return spot switch
        {
            { HasLife: true } => draw < 0.04 && !spot.IsLeft ? ActionKind.Deferred : ActionKind.Replaced,
            { Condition: Condition.Crack, Kind: "shroud-edge" } => draw < 0.45 ? ActionKind.StopDrilled : ActionKind.Replaced,
            { Condition: Condition.Crack } => draw < 0.10 && !spot.IsLeft ? ActionKind.Monitored : draw < 0.55 ? ActionKind.WeldRepaired : ActionKind.Replaced,
            { Condition: Condition.Looseness } => ActionKind.Retorqued,
            { Condition: Condition.Erosion } => ActionKind.Resurfaced,
            _ => ActionKind.Adjusted,
        };
    }

    private void Act(Spot spot, ActionKind kind, DateOnly date, double hours)
    {
        Add(date, "action", r => r.Action = new Contracts.V1.Action
        {
            Registration = tail.Registration,
            Location = spot.Path,
            ActionDate = Day(date),
            TimeInServiceHours = hours,
            Kind = kind,
        });
        if (kind is ActionKind.Deferred or ActionKind.Monitored)
        {
            spot.IsLeft = true;
            return;
        }

        spot.Draw(hours, 0, random);
        if (kind == ActionKind.Replaced && spot.Kind is "gasket" or "coupling" && random.NextDouble() < 0.3)
        {
            RenewSisters(spot, date, hours);
        }
    }

    /// <summary>The sound sisters come out with the failed one: right-censored lives, not failures. What went in at this visit stays.</summary>
    private void RenewSisters(Spot failed, DateOnly date, double hours)
    {
        foreach (var sister in spots.Where(s => s.Kind == failed.Kind && s != failed && s.BadAt > hours && s.SinceHours < hours && !s.IsLeft))
        {
            Add(date, "removal", r => r.Removal = new Removal
            {
                Registration = tail.Registration,
                Location = sister.Path,
                RemovalDate = Day(date),
                TimeInServiceHours = hours,
                Reason = RemovalReason.WithSisters,
                ExaminedGood = true,
            });
            Install(sister, date, hours);
            sister.Draw(hours, 0, random);
        }
    }

    private void Install(Spot spot, DateOnly date, double hours) => Add(date, "installation", r => r.Installation = new Installation
    {
        Registration = tail.Registration,
        Location = spot.Path,
        InstallationDate = Day(date),
        TimeInServiceHours = hours,
        PartHours = 0,
        PartNumber = SyntheticSchool.PartNumberOf(spot.Kind),
    });

    private void Read(DateOnly date, double hours) => Add(date, "reading", r => r.MeterReading = new MeterReading
    {
        Registration = tail.Registration,
        ReadingDate = Day(date),
        MeterHours = Math.Round(hours - meterOffset, 1),
    });

    private void ReplaceMeter(DateOnly date, double hours)
    {
        Add(date, "meter-change", r => r.MeterChange = new MeterChange
        {
            Registration = tail.Registration,
            ChangeDate = Day(date),
            OldMeterHours = Math.Round(hours - meterOffset, 1),
            NewMeterHours = 0,
        });
        meterOffset = hours;
    }

    private void Add(DateOnly date, string what, System.Action<Record> fill)
    {
        var record = new Record
        {
            Key = new RecordKey { Source = source, SourceRecordId = $"{tail.Registration}/{what}/{number++:00000}", Revision = 1 },
        };
        fill(record);
        recorded.Add(new DatedRecord(date, record));
    }

    private static Date Day(DateOnly date) => new() { Year = date.Year, Month = date.Month, Day = date.Day };
}
