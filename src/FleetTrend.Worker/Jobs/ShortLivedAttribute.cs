using Hangfire.Common;
using Hangfire.States;
using Hangfire.Storage;

namespace FleetTrend.Worker.Jobs;

/// <summary>A finished run of a job that ticks every few seconds is forgotten after minutes, so that the job store stays small.</summary>
[AttributeUsage(AttributeTargets.Method | AttributeTargets.Class)]
public sealed class ShortLivedAttribute : JobFilterAttribute, IApplyStateFilter
{
    private static readonly TimeSpan KeptFor = TimeSpan.FromMinutes(10);

    /// <inheritdoc/>
    public void OnStateApplied(ApplyStateContext context, IWriteOnlyTransaction transaction)
    {
        ArgumentNullException.ThrowIfNull(context);
        context.JobExpirationTimeout = KeptFor;
    }

    /// <inheritdoc/>
    public void OnStateUnapplied(ApplyStateContext context, IWriteOnlyTransaction transaction)
    {
        ArgumentNullException.ThrowIfNull(context);
        context.JobExpirationTimeout = KeptFor;
    }
}
