using System.Text.Json;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Store.DataProblems;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Snapshots;
using FleetTrend.Trends;
using FleetTrend.Trends.Flags;

namespace FleetTrend.Worker.Trends;

/// <summary>Trends in the form in which the store keeps them: as JSON, with the columns that are searched beside it.</summary>
public static class StoredTrends
{
    /// <summary>A snapshot to store.</summary>
    public static StoredSnapshot From(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        return new StoredSnapshot
        {
            AsOf = snapshot.AsOf,
            CodeVersion = snapshot.CodeVersion,
            ParametersJson = JsonSerializer.Serialize(snapshot.Parameters, TrendSnapshotJson.Options),
            TrendsJson = TrendSnapshotJson.Write(snapshot),
        };
    }

    /// <summary>The flags that a snapshot asks for.</summary>
    public static IReadOnlyList<FlagProposal> FlagsOf(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        return [.. snapshot.Flags.Select(flag => new FlagProposal
        {
            Subject = flag.Subject,
            Kind = flag.Kind.ToString(),
            Registration = flag.Registration,
            Base = flag.Base,
            TypeGroup = flag.TypeGroup,
            EventCount = flag.Observed,
            BodyJson = JsonSerializer.Serialize(flag, TrendSnapshotJson.Options),
        })];
    }

    /// <summary>What of a snapshot does not add up, with the rules that it breaks.</summary>
    public static IReadOnlyList<FoundDataProblem> ChecksOf(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        return [.. snapshot.Problems.Select(problem => new FoundDataProblem
        {
            Identity = problem.Identity,
            Fingerprint = problem.Fingerprint,
            Kind = problem.Kind.ToString(),
            Registration = problem.Registration.Length == 0 ? null : problem.Registration,
            OtherRegistration = problem.OtherRegistration,
            ProblemDate = problem.Date,
            Rule = ProblemRules.Find(problem.Kind),
            Description = problem.Description,
            Evidence = problem.Evidence,
        })];
    }

    /// <summary>A stored flag's statement and evidence.</summary>
    /// <exception cref="JsonException">What is stored is no flag.</exception>
    public static ProposedFlag Read(StoredFlag flag)
    {
        ArgumentNullException.ThrowIfNull(flag);
        return JsonSerializer.Deserialize<ProposedFlag>(flag.Proposal.BodyJson, TrendSnapshotJson.Options)
            ?? throw new JsonException($"Flag {flag.FlagId} holds no statement.");
    }
}
