using FleetTrend.Records;
using FleetTrend.Records.Flags;
using FleetTrend.Store.Mapping;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Store.Flags;

/// <summary>Flags, and each step of their lives. A subject has at most one flag that is not settled: neither closed nor helped.</summary>
public sealed class FlagStore(IDbContextFactory<FleetDbContext> contexts)
{
    /// <summary>
    /// Takes the flags that a refresh asks for. A subject with a flag that is not settled gets fresh evidence on it: a watch that became strong
    /// becomes a flag. What stands out again after an action stays acted on: <see cref="JudgeAsync"/> says whether it helped. A subject whose
    /// last flag was settled is raised again, if the refresh knew of that: then it has counted only what came after.
    /// </summary>
    /// <returns>The flags raised as of this moment, also when the same refresh is repeated.</returns>
    public async Task<IReadOnlyList<StoredFlag>> RaiseAsync(
        DateTimeOffset asOf, IReadOnlyList<FlagProposal> proposals, CancellationToken ct)
    {
        var moment = AsKept(asOf);
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        await LockAsync(context, ct);
        var subjects = proposals.Select(proposal => proposal.Subject).Distinct(StringComparer.Ordinal).ToList();
        var latest = await context.Flags.Where(row => subjects.Contains(row.Subject))
            .GroupBy(row => row.Subject)
            .Select(group => group.OrderByDescending(row => row.Id).First())
            .ToDictionaryAsync(row => row.Subject, StringComparer.Ordinal, ct);
        var steps = new List<(FlagRow Flag, FlagStepRow Step)>();
        foreach (var proposal in proposals)
        {
            if (!latest.TryGetValue(proposal.Subject, out var row) || IsSettledBefore(row, moment))
            {
                row = new FlagRow { Subject = proposal.Subject, RaiseTime = moment, Tier = proposal.Tier };
                latest[proposal.Subject] = row;
                context.Add(row);
                steps.Add((row, Step(row, FlagLife.Raised(proposal.Tier), moment, "")));
            }

            // A refresh that started earlier and ends later must not put older evidence over newer, nor one that did not know of an action.
            if (FlagLife.IsUnsettled(row.State) && moment >= row.LastSeenTime && (row.State != FlagState.ActedOn || moment >= row.StateTime))
            {
                steps.AddRange([.. StepsOf(row, proposal, moment).Select(step => (row, step))]);
                Refresh(row, proposal, moment);
            }
        }

        await context.SaveChangesAsync(ct);
        foreach (var (flag, step) in steps)
            step.FlagId = flag.Id;
        context.AddRange(steps.Select(step => step.Step));
        await context.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return [.. latest.Values.Where(row => row.RaiseTime == moment).OrderBy(row => row.Id).Select(ToFlag)];
    }

    /// <summary>
    /// Says of flags about which something was done whether it helped. A verdict of a refresh that did not know of the newest action, or about a
    /// flag that stands elsewhere, changes nothing; nor does the same verdict again.
    /// </summary>
    /// <param name="asOf">The moment of the refresh.</param>
    /// <param name="verdicts">What it found.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>The flags that took a step.</returns>
    public async Task<IReadOnlyList<StoredFlag>> JudgeAsync(DateTimeOffset asOf, IReadOnlyList<FlagVerdict> verdicts, CancellationToken ct)
    {
        var moment = AsKept(asOf);
        var bySubject = verdicts.ToDictionary(verdict => verdict.Subject, StringComparer.Ordinal);
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        await LockAsync(context, ct);
        var rows = await context.Flags
            .Where(row => bySubject.Keys.Contains(row.Subject) && row.State == FlagState.ActedOn && row.StateTime <= moment)
            .OrderBy(row => row.Id)
            .ToListAsync(ct);
        foreach (var row in rows)
        {
            var verdict = bySubject[row.Subject];
            context.Add(Step(row, verdict.Helped ? FlagState.Helped : FlagState.NoBetter, moment, verdict.Note));
        }

        await context.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return [.. rows.Select(ToFlag)];
    }

    /// <summary>Flags, newest first.</summary>
    /// <param name="state">The state; null for all that are not settled.</param>
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
            .Where(row => state == null ? row.State != FlagState.Closed && row.State != FlagState.Helped : row.State == state)
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

    /// <summary>The steps of a flag, earliest first.</summary>
    /// <param name="flagId">The flag.</param>
    /// <param name="pageSize">Most to return, at least 1.</param>
    /// <param name="pageToken">From the page before; null or empty for the first.</param>
    /// <param name="ct">Cancels.</param>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<StoredStep>> ListStepsAsync(long flagId, int pageSize, string? pageToken, CancellationToken ct)
    {
        var after = PageToken.ReadId(pageToken) ?? 0;
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await context.FlagSteps.AsNoTracking()
            .Where(row => row.FlagId == flagId && row.Id > after)
            .OrderBy(row => row.Id)
            .Take(pageSize + 1)
            .ToListAsync(ct);
        return PageToken.Cut([.. rows.Select(ToStep)], pageSize, step => PageToken.Write(step.StepId));
    }

    /// <summary>The steps of the flags of a type group before a moment, in the order in which they came.</summary>
    public async Task<IReadOnlyList<FlagStep>> ReadStepsAsync(string typeGroup, DateTimeOffset asOf, CancellationToken ct)
    {
        var moment = AsKept(asOf);
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await (from step in context.FlagSteps.AsNoTracking()
                      join flag in context.Flags on step.FlagId equals flag.Id
                      where flag.TypeGroup == typeGroup && step.StepTime < moment
                      orderby step.Id
                      select new FlagStep(flag.Id, flag.Subject, flag.RaiseTime, step.State, step.StepTime)).ToListAsync(ct);
    }

    /// <summary>Takes what a person answers. The same answer again changes nothing, whichever version it names.</summary>
    /// <param name="flagId">The flag.</param>
    /// <param name="answer">The answer.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>What became of it, or null where there is no such flag.</returns>
    public async Task<AnsweredFlag?> AnswerAsync(long flagId, FlagAnswer answer, bool write, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        await LockAsync(context, ct);
        await context.Database.ExecuteSqlRawAsync($"select pg_advisory_xact_lock_shared({AdvisoryLock.Knowledge})", ct);
        if (await context.Flags.SingleOrDefaultAsync(flag => flag.Id == flagId, ct) is not { } row)
            return null;
        if (IsSame(row, answer))
            return new AnsweredFlag(AnswerState.Unchanged, ToFlag(row));
        if (answer.Version is { } seen && seen != row.Version)
            return new AnsweredFlag(AnswerState.StepBetween, ToFlag(row));
        if (answer.State is { } to ? !FlagLife.PersonMay(row.State, to) : !FlagLife.IsUnsettled(row.State))
            return new AnsweredFlag(AnswerState.NotFrom, ToFlag(row));
        if (answer.State == FlagState.Reopened && await context.Flags.AnyAsync(flag => flag.Subject == row.Subject && flag.Id > row.Id, ct))
            return new AnsweredFlag(AnswerState.NewerIsOpen, ToFlag(row));
        // An answer is knowledge, as a record is: later than every moment fixed before, also where the clock was set back.
        var time = (await context.Database.SqlQuery<DateTimeOffset>(
            $"select greatest(clock_timestamp(), (select last_as_of + interval '1 microsecond' from knowledge)) as \"Value\"").ToListAsync(ct))[0];
        context.Add(Step(row, answer, time));
        await context.SaveChangesAsync(ct);
        if (write)
            await transaction.CommitAsync(ct);
        return new AnsweredFlag(AnswerState.Taken, ToFlag(row));
    }

    private static bool IsSame(FlagRow row, FlagAnswer answer) => answer.State is { } state
        ? row.State == state && row.AnsweredBy == answer.By && row.Answer == answer.Note
            && (state != FlagState.ActedOn || row.ActionDate == answer.ActionDate)
        : (row.Assignee ?? "") == answer.Assignee;

    /// <summary>Takes a person's step.</summary>
    private static FlagStepRow Step(FlagRow row, FlagAnswer answer, DateTimeOffset time)
    {
        if (answer.Assignee is { } assignee)
            row.Assignee = assignee.Length == 0 ? null : assignee;
        if (answer.State is not null)
            (row.AnsweredBy, row.Answer, row.AnswerTime) = (answer.By, answer.Note, time);
        if (answer.State == FlagState.ActedOn)
            row.ActionDate = answer.ActionDate;
        var step = Step(row, answer.State ?? row.State, answer.State is null ? row.StateTime : time, answer.Note);
        step.StepTime = time;
        step.StepBy = answer.By;
        step.ActionDate = answer.ActionDate;
        step.ActionTimeInServiceHours = answer.ActionTimeInService is { } hours ? hours.Tenths / 10m : null;
        return step;
    }

    /// <summary>Takes a step; without a person it is one of the numbers.</summary>
    private static FlagStepRow Step(FlagRow row, FlagState state, DateTimeOffset time, string note)
    {
        (row.State, row.StateTime) = (state, time);
        row.Version++;
        return new FlagStepRow { FlagId = row.Id, State = state, StepTime = time, Note = note, Assignee = row.Assignee };
    }

    /// <summary>The steps that fresh evidence asks for.</summary>
    private static IEnumerable<FlagStepRow> StepsOf(FlagRow row, FlagProposal proposal, DateTimeOffset moment)
    {
        if (row.Tier == FlagTier.Flag || proposal.Tier == FlagTier.Watch)
            yield break;
        row.Tier = FlagTier.Flag;
        if (FlagLife.ProductMay(row.State, FlagState.Open))
            yield return Step(row, FlagState.Open, moment, "The evidence grew as strong as that of a flag.");
    }

    /// <summary>Whether a refresh of a moment knew that a flag was settled. One that said so itself has looked at nothing that came after.</summary>
    private static bool IsSettledBefore(FlagRow row, DateTimeOffset moment) =>
        row.State == FlagState.Closed ? row.StateTime <= moment : row.State == FlagState.Helped && row.StateTime < moment;

    private static DateTimeOffset AsKept(DateTimeOffset asOf) =>
        asOf.ToUniversalTime().AddTicks(-(asOf.Ticks % TimeSpan.TicksPerMicrosecond)); // as the database keeps it

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
            Tier = row.Tier,
            Registration = row.Registration,
            Base = row.Base,
            TypeGroup = row.TypeGroup,
            EventCount = row.EventCount,
            BodyJson = row.BodyJson,
        },
        State = row.State,
        StateTime = row.StateTime,
        Version = row.Version,
        Assignee = row.Assignee,
        ActionDate = row.ActionDate,
        RaiseTime = row.RaiseTime,
        LastSeenTime = row.LastSeenTime,
        AnsweredBy = row.AnsweredBy,
        Answer = row.Answer,
        AnswerTime = row.AnswerTime,
    };

    private static StoredStep ToStep(FlagStepRow row) => new()
    {
        StepId = row.Id,
        State = row.State,
        StepTime = row.StepTime,
        By = row.StepBy,
        Note = row.Note,
        ActionDate = row.ActionDate,
        ActionTimeInService = row.ActionTimeInServiceHours is { } hours ? Hours.FromTenths((long)(hours * 10)) : null,
        Assignee = row.Assignee,
    };
}
