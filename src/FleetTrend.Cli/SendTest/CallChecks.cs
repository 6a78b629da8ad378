using System.Globalization;
using FleetTrend.Client;
using FleetTrend.Contracts.V1;
using Grpc.Core;

namespace FleetTrend.Cli.SendTest;

/// <summary>Key, scope, source, clock, and one record that is checked and not stored.</summary>
internal sealed class CallChecks(ChannelBase channel, bool hasKey, TimeProvider clock)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);
    private static readonly TimeSpan ClockTolerance = TimeSpan.FromMinutes(1);

    /// <summary>Runs them; ends with the first that makes the next senseless.</summary>
    /// <param name="source">The source that records will name; empty where only the key says.</param>
    public async IAsyncEnumerable<Check> RunAsync(string source)
    {
        var asked = clock.GetUtcNow();
        var call = new AccessService.AccessServiceClient(channel).GetOwnKeyAsync(new GetOwnKeyRequest(), Options());
        ApiKey? key = null;
        Check? failure = null;
        ClockReading? server = null;
        try
        {
            var headers = await call.ResponseHeadersAsync;
            server = ServerClock(headers, asked);
            key = (await call).Key;
        }
        catch (RpcException refusal)
        {
            failure = KeyFailure(refusal);
        }

        if (key is null)
        {
            yield return failure!;
            yield break;
        }

        yield return Check.Passed("key", $"{key.KeyId} \"{key.Name}\"");
        yield return Scope(key);
        yield return SourceOf(key, source);
        yield return Clock(server, await DatabaseClockAsync(key));
        if (key.Scopes.Contains(Contracts.V1.Scope.RecordsWrite) && key.Source.Length > 0)
            yield return await RecordAsync(key.Source);
    }

    private static CallOptions Options() => new(deadline: DateTime.UtcNow + Patience);

    private Check KeyFailure(RpcException refusal) => (refusal.StatusCode, CallError.Reason(refusal)) switch
    {
        (StatusCode.Unauthenticated, var reason) => Check.Failed("key", $"{reason}: {refusal.Status.Detail}", hasKey
            ? "Whoever runs the server makes keys (fleettrend keys create) and sees which are revoked. A key is shown once; check that the file holds all of it."
            : $"Give the key with {Commands.CallerSettings.KeyVariable} or --key-file."),
        (StatusCode.ResourceExhausted, _) => Check.Failed("key", refusal.Status.Detail, "Too many calls, or too many with a wrong key: wait and try again."),
        (StatusCode.Unimplemented, _) => Check.Failed("gRPC", "what listens there is no FleetTrend of this version", "Check the address."),
        _ => Check.Failed("gRPC", $"{refusal.StatusCode}: {refusal.Status.Detail}", "What listens there does not speak gRPC: pages and JSON have a port of their own. Without TLS use http://, with TLS https://."),
    };

    private static Check Scope(ApiKey key)
    {
        var scopes = string.Join(", ", key.Scopes);
        return key.Scopes.Contains(Contracts.V1.Scope.RecordsWrite)
            ? Check.Passed("scope", scopes)
            : Check.Failed("scope", scopes, "This key may not push records: ask for one with the scope records write.");
    }

    private static Check SourceOf(ApiKey key, string source)
    {
        if (key.Source.Length == 0)
            return Check.Failed("source", "the key belongs to none", "Ask for a key that belongs to your source: it pushes records of that one only.");
        return source.Length == 0 || source == key.Source
            ? Check.Passed("source", key.Source)
            : Check.Failed("source", $"the key belongs to {key.Source}", $"It cannot push records of {source}: name {key.Source} in your records, or ask for another key.");
    }

    /// <summary>The clock of the machine that answers, which says the second (RFC 9110, 6.6.1); null where the answer has no date.</summary>
    private ClockReading? ServerClock(Metadata headers, DateTimeOffset asked) =>
        DateTimeOffset.TryParse(headers.GetValue("date"), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var theirs)
            ? new ClockReading(asked, clock.GetUtcNow(), theirs, TimeSpan.FromSeconds(1))
            : null;

    /// <summary>The clock that dates records: the database's, which may be another machine's. Null where the key may not ask.</summary>
    private async Task<ClockReading?> DatabaseClockAsync(ApiKey key)
    {
        try
        {
            var asked = clock.GetUtcNow();
            var page = await new RecordService.RecordServiceClient(channel).ListRecordsAsync(
                new ListRecordsRequest { Source = key.Source, PageSize = 1 }, Options());
            return new ClockReading(asked, clock.GetUtcNow(), page.AsOfTime.ToDateTimeOffset(), TimeSpan.Zero);
        }
        catch (RpcException)
        {
            return null; // what is wrong with the key has been said
        }
    }

    private static Check Clock(ClockReading? server, ClockReading? database)
    {
        (string Whose, ClockReading Reading)[] readings =
            [.. new[] { ("the server's", server), ("its database's", database) }.Where(r => r.Item2 is not null).Select(r => (r.Item1, r.Item2!))];
        if (readings.Length == 0)
            return new Check("clock", Verdict.Warned, "the server does not tell its time", "Compare the clocks by hand.");
        var found = string.Join("; ", readings.Select(r => $"{r.Reading.Words} {r.Whose}"));
        return readings.All(r => r.Reading.Ahead.Duration() <= ClockTolerance)
            ? Check.Passed("clock", found)
            : new Check("clock", Verdict.Warned, found, "Set the clock that is wrong: records dated ahead of the database's day are listed as data problems.");
    }

    private async Task<Check> RecordAsync(string source)
    {
        try
        {
            var groups = await new LayoutService.LayoutServiceClient(channel).ListTypeGroupsAsync(new ListTypeGroupsRequest { PageSize = 1 }, Options());
            if (groups.TypeGroups.Count == 0)
                return new Check("record", Verdict.Warned, "not tried: no type group is registered", "Register layouts and type groups first (CreateTypeGroup, or type_groups.csv).");
            var answer = await new IntakeService.IntakeServiceClient(channel).PushRecordAsync(
                new PushRecordRequest { Record = Example(source, groups.TypeGroups[0].Name), ValidateOnly = true }, Options());
            return Check.Passed("record", $"an invented aircraft would be accepted ({answer.Outcome.State}); nothing was stored");
        }
        catch (RpcException refusal)
        {
            return Check.Failed("record", $"{CallError.Reason(refusal)} {refusal.Status.Detail}".Trim(), "protos/README.md lists every reason and what to do.");
        }
    }

    private Record Example(string source, string typeGroup)
    {
        var today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);
        var date = new Google.Type.Date { Year = today.Year, Month = today.Month, Day = today.Day };
        return new Record
        {
            Key = new RecordKey { Source = source, SourceRecordId = "send-test", Revision = 1 },
            Aircraft = new Aircraft
            {
                Registration = "ZZ-TEST",
                WatchStartDate = date,
                Assignments = { new Assignment { FromDate = date, Base = "Nowhere", TypeGroup = typeGroup } },
            },
        };
    }
}
