using FleetTrend.Records.Flags;

namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>flags</c>.</summary>
internal sealed class FlagRow
{
    public long Id { get; set; }

    public string Subject { get; set; } = "";

    public string Kind { get; set; } = "";

    public FlagState State { get; set; }

    public DateTimeOffset StateTime { get; set; }

    public FlagTier Tier { get; set; }

    public int Version { get; set; }

    public string? Assignee { get; set; }

    public DateOnly? ActionDate { get; set; }

    public string? Registration { get; set; }

    public string Base { get; set; } = "";

    public string TypeGroup { get; set; } = "";

    public int EventCount { get; set; }

    public string BodyJson { get; set; } = "";

    public DateTimeOffset RaiseTime { get; set; }

    public DateTimeOffset LastSeenTime { get; set; }

    public string? AnsweredBy { get; set; }

    public string? Answer { get; set; }

    public DateTimeOffset? AnswerTime { get; set; }
}
