using System.Text.Json;
using FleetTrend.Store.Flags;
using FleetTrend.Trends;
using FleetTrend.Trends.Flags;

namespace FleetTrend.Results;

/// <summary>What a flag says, in the form in which the store keeps it: as JSON, with the columns that are searched beside it.</summary>
public static class FlagBodies
{
    /// <summary>A flag to raise.</summary>
    public static FlagProposal ToProposal(ProposedFlag flag)
    {
        ArgumentNullException.ThrowIfNull(flag);
        return new FlagProposal
        {
            Subject = flag.Subject,
            Kind = flag.Kind.ToString(),
            Tier = flag.Tier,
            Registration = flag.Registration,
            Base = flag.Base,
            TypeGroup = flag.TypeGroup,
            EventCount = flag.Observed,
            BodyJson = JsonSerializer.Serialize(flag, TrendJson.Options),
        };
    }

    /// <summary>What a stored flag says, with its evidence.</summary>
    /// <exception cref="JsonException">What is stored is no flag.</exception>
    public static ProposedFlag Said(this StoredFlag flag)
    {
        ArgumentNullException.ThrowIfNull(flag);
        return JsonSerializer.Deserialize<ProposedFlag>(flag.Proposal.BodyJson, TrendJson.Options)
            ?? throw new JsonException($"Flag {flag.FlagId} holds no statement.");
    }
}
