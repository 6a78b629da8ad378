using FleetTrend.Records.Flags;

namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>flag_steps</c>: rows are added and never changed.</summary>
internal sealed class FlagStepRow
{
    public long Id { get; set; }

    public long FlagId { get; set; }

    public FlagState State { get; set; }

    public DateTimeOffset StepTime { get; set; }

    public string? StepBy { get; set; }

    public string Note { get; set; } = "";

    public DateOnly? ActionDate { get; set; }

    public decimal? ActionTimeInServiceHours { get; set; }

    public string? Assignee { get; set; }
}
