using FleetTrend.Statistics.Monitoring;
using FleetTrend.Trends.Expectations;

namespace FleetTrend.Trends.BackTests;

/// <summary>Replays a type group and counts.</summary>
public static class BackTestReplay
{
    private const string CallsSource = "METHODS.md, Changes";

    /// <summary>Replays it.</summary>
    /// <param name="inputs">The type group as known today.</param>
    /// <param name="since">Only calls from this day on are kept; what came before is replayed all the same. Null for all.</param>
    /// <param name="until">Only calls up to this day are kept; null for all.</param>
    /// <param name="keepAlertCalls">Whether to keep the calls of the alert levels, and not their numbers alone.</param>
    public static BackTest Run(TypeGroupInputs inputs, DateOnly? since = null, DateOnly? until = null, bool keepAlertCalls = true)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        var hours = new WatchedHours(inputs);
        var last = until is { } end && end < inputs.AsOfDate ? end : inputs.AsOfDate;
        var begun = hours.FirstDate ?? last;
        var first = since is { } start && start > begun ? start : begun;
        var years = hours.AircraftYears(first, last);
        bool IsCounted(BackTestCall call) => call.Date >= first && call.Date <= last;
        var calls = new List<BackTestCall>();
        var months = new MonthlyReplay(inputs, hours);
        foreach (var (of, looks) in GroupExpectations.FindClasses(inputs))
        {
            calls.AddRange(WeeklyReplay.Find(inputs, of, looks));
            months.Add(of, looks);
        }

        var called = new CallsByUnit(calls.Where(IsCounted), calls);
        var methods = new List<BackTestMethod>
        {
            Count(BackTestMethod.Watch, "Watch", OfScore("Worth watching", inputs.Parameters.WatchesPer50AircraftYears), CallsSource, calls),
            Count(BackTestMethod.Flag, "Flag", OfScore("Worth a look at the aircraft", inputs.Parameters.FlagsPer50AircraftYears), CallsSource, calls),
        };
        var kept = new List<BackTestCall>();
        foreach (var practice in AlertPractice.All)
        {
            var alerts = months.Find(practice).ToList();
            var (also, flags, watches) = called.Share(alerts.Where(IsCounted));
            methods.Add(Count(practice.Name, practice.Title, practice.Description, practice.Source, alerts) with
            {
                AlsoWatchedOrFlagged = also,
                FlagsNamed = flags,
                WatchesNamed = watches,
            });
            if (keepAlertCalls)
                kept.AddRange(alerts.Where(IsCounted));
        }

        return new BackTest
        {
            TypeGroup = inputs.TypeGroup,
            FirstDate = first,
            LastDate = last,
            AircraftYears = years,
            Methods = methods,
            Calls = [.. NewestFirst(calls.Where(IsCounted))],
            AlertCalls = [.. NewestFirst(kept)],
        };

        BackTestMethod Count(string name, string title, string description, string source, List<BackTestCall> all)
        {
            var counted = all.Where(c => c.Method == name && IsCounted(c)).ToList();
            var byMonth = new int[Math.Max(1, WatchedHours.MonthsBetween(first, last) + 1)];
            foreach (var call in counted)
                byMonth[WatchedHours.MonthsBetween(first, call.Date)]++;
            return new BackTestMethod
            {
                Name = name,
                Title = title,
                Description = description,
                Source = source,
                AircraftCalls = counted.Count(c => c.Registration is not null),
                BaseCalls = counted.Count(c => c.Registration is null),
                Per50AircraftYears = years > 0 ? counted.Count * 50 / years : null,
                CallsByMonth = byMonth,
            };
        }
    }

    private static string OfScore(string meaning, double per50) =>
        $"{meaning}: the score of changes reaches the limit that an ordinary fleet reaches at most {BackTestWords.Allowed(per50)} times in 50 aircraft-years.";

    private static IEnumerable<BackTestCall> NewestFirst(IEnumerable<BackTestCall> calls) => calls
        .OrderByDescending(c => c.Date).ThenBy(c => c.Method, StringComparer.Ordinal)
        .ThenBy(c => c.Registration, StringComparer.Ordinal).ThenBy(c => c.Base, StringComparer.Ordinal)
        .ThenBy(c => c.Condition).ThenBy(c => c.Kind, StringComparer.Ordinal);
}
