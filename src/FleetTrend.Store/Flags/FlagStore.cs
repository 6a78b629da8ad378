using FleetTrend.Store.Mapping;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Store.Flags;

/// <summary>Flags and what people answered. A subject has at most one flag that is not closed.</summary>
public sealed class FlagStore(IDbContextFactory<FleetDbContext> contexts)
{
    /// <summary>
    /// Takes the flags that a refresh asks for. A subject with a flag that is not closed gets fresh evidence on it. A subject whose last
    /// flag was closed is raised again, if the refresh knew of the closing: then it has counted only what came after.
    /// </summary>
    /// <returns>The flags raised as of this moment, also when the same refresh is repeated.</returns>
    public async Task<IReadOnlyList<StoredFlag>> RaiseAsync(
        DateTimeOffset asOf, IReadOnlyList<FlagProposal> proposals, CancellationToken ct)
    {
        var moment = asOf.ToUniversalTime().AddTicks(-(asOf.Ticks % TimeSpan.TicksPerMicrosecond)); // as the database keeps it
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        await LockAsync(context, ct);
        var subjects = proposals.Select(proposal => proposal.Subject).Distinct(StringComparer.Ordinal).ToList();
        var latest = await context.Flags.Where(row => subjects.Contains(row.Subject))
            .GroupBy(row => row.Subject)
            .Select(group => group.OrderByDescending(row => row.Id).First())
            .ToDictionaryAsync(row => row.Subject, StringComparer.Ordinal, ct);
        foreach (var proposal in proposals)
        {
            if (!latest.TryGetValue(proposal.Subject, out var row)
                || (row.State == FlagState.Closed && row.AnswerTime <= moment))
            {
                row = new FlagRow { Subject = proposal.Subject, State = FlagState.Open, RaiseTime = moment };
                latest[proposal.Subject] = row;
                context.Add(row);
            }

            // A refresh that started earlier and ends later must not put older evidence over newer.
            if (row.State != FlagState.Closed && moment >= row.LastSeenTime)
                Refresh(row, proposal, moment);
        }

        await context.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return [.. latest.Values.Where(row => row.RaiseTime == moment).OrderBy(row => row.Id).Select(ToFlag)];
    }

    /// <summary>Flags, newest first.</summary>
    /// <param name="state">The state; null for open and acknowledged ones.</param>
    /// <param name="registration">The aircraft; null for all.</param>
    /// <param name="pageSize">Most to return, at least 1.</param>
    /// <param name="pageToken">From the page before; null for the first.</param>
    /// <param name="ct">Cancels.</param>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<StoredFlag>> ListAsync(
        FlagState? state, string? registration, int pageSize, string? pageToken, CancellationToken ct)
    {
        var before = PageToken.ReadId(pageToken) ?? long.MaxValue;
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await context.Flags.AsNoTracking()
            .Where(row => row.Id < before)
            .Where(row => state == null ? row.State != FlagState.Closed : row.State == state)
            .Where(row => registration == null || row.Registration == registration)
            .OrderByDescending(row => row.Id)
            .Take(pageSize + 1)
            .ToListAsync(ct);
        return PageToken.Cut([.. rows.Select(ToFlag)], pageSize, flag => PageToken.Write(flag.FlagId));
    }

    /// <summary>The flag, or null.</summary>
    public async Task<StoredFlag?> GetAsync(long flagId, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await context.Flags.AsNoTracking().SingleOrDefaultAsync(row => row.Id == flagId, ct) is { } row ? ToFlag(row) : null;
    }

    /// <summary>Says that somebody has seen a flag. The same words again change nothing; a closed flag stays as it is.</summary>
    /// <param name="flagId">The flag.</param>
    /// <param name="by">Who.</param>
    /// <param name="comment">What is being done; may be empty.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>The flag as it is then, or null where there is none.</returns>
    public Task<StoredFlag?> AcknowledgeAsync(long flagId, string by, string comment, bool write, CancellationToken ct) =>
        AnswerAsync(flagId, FlagState.Acknowledged, by, comment, write, ct);

    /// <summary>Closes a flag. A flag that is closed stays as it is.</summary>
    /// <param name="flagId">The flag.</param>
    /// <param name="by">Who.</param>
    /// <param name="comment">What was done.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>The flag as it is then, or null where there is none.</returns>
    public Task<StoredFlag?> CloseAsync(long flagId, string by, string comment, bool write, CancellationToken ct) =>
        AnswerAsync(flagId, FlagState.Closed, by, comment, write, ct);

    private async Task<StoredFlag?> AnswerAsync(long flagId, FlagState state, string by, string comment, bool write, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        await LockAsync(context, ct);
        await context.Database.ExecuteSqlRawAsync($"select pg_advisory_xact_lock_shared({AdvisoryLock.Knowledge})", ct);
        if (await context.Flags.SingleOrDefaultAsync(flag => flag.Id == flagId, ct) is not { } row)
            return null;
        var isSame = row.State == state && row.AnsweredBy == by && row.Answer == comment;
        if (row.State != FlagState.Closed && !isSame)
        {
            row.State = state;
            row.AnsweredBy = by;
            row.Answer = comment;
            // A closing is knowledge, as a record is: later than every moment fixed before, also where the clock was set back.
            row.AnswerTime = (await context.Database.SqlQuery<DateTimeOffset>(
                $"select greatest(clock_timestamp(), (select last_as_of + interval '1 microsecond' from knowledge)) as \"Value\"").ToListAsync(ct))[0];
            await context.SaveChangesAsync(ct);
            if (write)
                await transaction.CommitAsync(ct);
        }

        return ToFlag(row);
    }

    private static Task<int> LockAsync(FleetDbContext context, CancellationToken ct) =>
        context.Database.ExecuteSqlRawAsync($"select pg_advisory_xact_lock({AdvisoryLock.Flags})", ct);

    private static void Refresh(FlagRow row, FlagProposal proposal, DateTimeOffset moment)
    {
        row.Kind = proposal.Kind;
        row.Registration = proposal.Registration;
        row.Base = proposal.Base;
        row.TypeGroup = proposal.TypeGroup;
        row.EventCount = proposal.EventCount;
        row.BodyJson = proposal.BodyJson;
        row.LastSeenTime = moment;
    }

    private static StoredFlag ToFlag(FlagRow row) => new()
    {
        FlagId = row.Id,
        Proposal = new FlagProposal
        {
            Subject = row.Subject,
            Kind = row.Kind,
            Registration = row.Registration,
            Base = row.Base,
            TypeGroup = row.TypeGroup,
            EventCount = row.EventCount,
            BodyJson = row.BodyJson,
        },
        State = row.State,
        RaiseTime = row.RaiseTime,
        LastSeenTime = row.LastSeenTime,
        AnsweredBy = row.AnsweredBy,
        Answer = row.Answer,
        AnswerTime = row.AnswerTime,
    };
}
