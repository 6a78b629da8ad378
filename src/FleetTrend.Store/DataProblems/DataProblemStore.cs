using FleetTrend.Store.Mapping;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace FleetTrend.Store.DataProblems;

/// <summary>Data problems and what people answered. Of rows with one identity at most one is open.</summary>
public sealed class DataProblemStore(IDbContextFactory<FleetDbContext> contexts, NpgsqlDataSource dataSource)
{
    /// <summary>
    /// Takes all that a refresh found. What is new opens; what was closed stays closed while its fingerprint is the same, and
    /// opens as a new row when it is not; what was not found any more is gone. The same refresh again changes nothing, and a
    /// refresh of an earlier moment than the latest taken is passed over.
    /// </summary>
    /// <param name="asOf">Moment of knowledge of the refresh.</param>
    /// <param name="found">Everything it found; of several with one identity the first counts.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>How many opened.</returns>
    public async Task<int> SaveAsync(DateTimeOffset asOf, IReadOnlyList<FoundDataProblem> found, CancellationToken ct)
    {
        var rows = found.DistinctBy(problem => problem.Identity, StringComparer.Ordinal).ToList();
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await ExecuteAsync(connection, $"select pg_advisory_xact_lock({AdvisoryLock.DataProblems})", ct);
        await using (var latest = new NpgsqlCommand("select max(greatest(last_seen_time, gone_time)) > $1 from data_checks", connection))
        {
            latest.Parameters.Add(new NpgsqlParameter<DateTimeOffset> { TypedValue = asOf.ToUniversalTime() });
            if (await latest.ExecuteScalarAsync(ct) is true)
                return 0;
        }

        await StageAsync(connection, rows, ct);
        await ExecuteAsync(connection, SeenAgain, ct, asOf);
        var opened = await ExecuteAsync(connection, Opened, ct, asOf);
        await ExecuteAsync(connection, Gone, ct, asOf);
        await transaction.CommitAsync(ct);
        return opened;
    }

    /// <summary>Data problems, newest first.</summary>
    /// <param name="filter">Which.</param>
    /// <param name="pageSize">Most to return, at least 1.</param>
    /// <param name="pageToken">From the page before; null for the first.</param>
    /// <param name="ct">Cancels.</param>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<StoredDataProblem>> ListAsync(DataProblemFilter filter, int pageSize, string? pageToken, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(filter);
        var before = PageToken.ReadId(pageToken) ?? long.MaxValue;
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await context.DataProblems.AsNoTracking()
            .Where(row => row.Id < before)
            .Where(row => filter.State == null || row.State == filter.State)
            .Where(row => filter.Kind == null || row.Kind == filter.Kind)
            .Where(row => filter.Registration == null || row.Registration == filter.Registration || row.OtherRegistration == filter.Registration)
            .OrderByDescending(row => row.Id)
            .Take(pageSize + 1)
            .ToListAsync(ct);
        return PageToken.Cut([.. rows.Select(Read)], pageSize, problem => PageToken.Write(problem.ProblemId));
    }

    /// <summary>Every problem that the latest refresh saw: open ones, and closed ones that the records still ask for.</summary>
    public async Task<IReadOnlyList<StoredDataProblem>> ListPresentAsync(CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await context.DataProblems.AsNoTracking().Where(row => row.GoneTime == null).OrderBy(row => row.Id).ToListAsync(ct);
        return [.. rows.Select(Read)];
    }

    /// <summary>How many there are in each state.</summary>
    public async Task<IReadOnlyDictionary<DataProblemState, int>> CountAsync(CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await context.DataProblems.GroupBy(row => row.State).ToDictionaryAsync(group => group.Key, group => group.Count(), ct);
    }

    /// <summary>The problem, or null.</summary>
    public async Task<StoredDataProblem?> GetAsync(long problemId, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await context.DataProblems.AsNoTracking().SingleOrDefaultAsync(problem => problem.Id == problemId, ct) is { } row ? Read(row) : null;
    }

    /// <summary>Closes an open problem. One that is not open stays as it is.</summary>
    /// <param name="problemId">The problem.</param>
    /// <param name="by">Who.</param>
    /// <param name="note">How it was settled.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>The problem as it is then, or null where there is none.</returns>
    public async Task<StoredDataProblem?> CloseAsync(long problemId, string by, string note, bool write, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        await LockAsync(context, ct);
        await context.Database.ExecuteSqlAsync(
            $"""
            update data_checks set state = 2, closed_by = {by}, close_note = {note}, close_time = clock_timestamp()
            where id = {problemId} and state = 1
            """,
            ct);
        var row = await context.DataProblems.AsNoTracking().SingleOrDefaultAsync(problem => problem.Id == problemId, ct);
        if (write)
            await transaction.CommitAsync(ct);
        return row is null ? null : Read(row);
    }

    /// <summary>Closes the open problem of that identity, where there is one: a decision elsewhere has answered it.</summary>
    public async Task CloseProblemAsync(string identity, string by, string note, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        await context.Database.ExecuteSqlAsync(
            $"""
            update data_checks set state = 2, closed_by = {by}, close_note = {note}, close_time = clock_timestamp()
            where identity = {identity} and state = 1
            """,
            ct);
    }

    /// <summary>Ends the closed problems of that identity, so that the next refresh that sees it opens a new one: the decision was taken back.</summary>
    public async Task OfferAgainAsync(string identity, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        await context.Database.ExecuteSqlAsync(
            $"update data_checks set state = 3, gone_time = coalesce(gone_time, last_seen_time) where identity = {identity} and state = 2", ct);
    }

    private static async Task StageAsync(NpgsqlConnection connection, List<FoundDataProblem> rows, CancellationToken ct)
    {
        await using var stage = new NpgsqlCommand(
            """
            create temporary table found on commit drop as
            select * from unnest($1, $2, $3, $4, $5, $6, $7, $8, $9)
                as found(identity, fingerprint, kind, registration, other_registration, problem_date, rule, description, evidence)
            """,
            connection);
        Add(row => row.Identity);
        Add(row => row.Fingerprint);
        Add(row => row.Kind);
        Add(row => row.Registration);
        Add(row => row.OtherRegistration);
        stage.Parameters.Add(new NpgsqlParameter<DateOnly[]> { TypedValue = [.. rows.Select(row => row.ProblemDate)] });
        Add(row => row.Rule);
        Add(row => row.Description);
        Add(row => EvidenceJson.Write(row.Evidence));
        await stage.ExecuteNonQueryAsync(ct);

        void Add(Func<FoundDataProblem, string?> column) =>
            stage.Parameters.Add(new NpgsqlParameter<string?[]> { TypedValue = [.. rows.Select(column)] });
    }

    private const string Latest =
        "(select distinct on (identity) id, identity, fingerprint, state from data_checks order by identity, id desc) latest";

    /// <summary>The newest row of a problem goes on where it is open, or closed on the same evidence.</summary>
    private const string SeenAgain =
        $"""
        update data_checks seen
        set last_seen_time = $1, gone_time = null, fingerprint = found.fingerprint, problem_date = found.problem_date,
            rule = found.rule, description = found.description, evidence_json = found.evidence::json
        from found join {Latest} on latest.identity = found.identity collate "C"
        where seen.id = latest.id and (latest.state = 1 or latest.state = 2 and latest.fingerprint = found.fingerprint collate "C")
        """;

    private const string Opened =
        $"""
        insert into data_checks (identity, fingerprint, kind, registration, other_registration, problem_date, rule, description,
                                 evidence_json, state, since_time, last_seen_time)
        select found.identity, found.fingerprint, found.kind, found.registration, found.other_registration, found.problem_date,
               found.rule, found.description, found.evidence::json, 1, $1, $1
        from found left join {Latest} on latest.identity = found.identity collate "C"
        where latest.id is null or latest.state = 3 or (latest.state = 2 and latest.fingerprint <> found.fingerprint collate "C")
        order by found.kind collate "C", found.registration collate "C", found.problem_date, found.identity collate "C"
        """;

    /// <summary>What no refresh sees any more has ended; a closed one keeps its state and its answer.</summary>
    private const string Gone =
        """
        update data_checks set gone_time = $1, state = case state when 1 then 3 else state end
        where gone_time is null and last_seen_time < $1
        """;

    private static async Task<int> ExecuteAsync(NpgsqlConnection connection, string statement, CancellationToken ct, DateTimeOffset? asOf = null)
    {
        await using var command = new NpgsqlCommand(statement, connection);
        if (asOf is { } moment)
            command.Parameters.Add(new NpgsqlParameter<DateTimeOffset> { TypedValue = moment.ToUniversalTime() });
        return await command.ExecuteNonQueryAsync(ct);
    }

    private static Task<int> LockAsync(FleetDbContext context, CancellationToken ct) =>
        context.Database.ExecuteSqlRawAsync($"select pg_advisory_xact_lock({AdvisoryLock.DataProblems})", ct);

    private static StoredDataProblem Read(DataProblemRow row) => new()
    {
        ProblemId = row.Id,
        Found = new FoundDataProblem
        {
            Identity = row.Identity,
            Fingerprint = row.Fingerprint,
            Kind = row.Kind,
            Registration = row.Registration,
            OtherRegistration = row.OtherRegistration,
            ProblemDate = row.ProblemDate,
            Rule = row.Rule,
            Description = row.Description,
            Evidence = EvidenceJson.Read(row.EvidenceJson),
        },
        State = row.State,
        SinceTime = row.SinceTime,
        LastSeenTime = row.LastSeenTime,
        GoneTime = row.GoneTime,
        ClosedBy = row.ClosedBy,
        CloseNote = row.CloseNote,
        CloseTime = row.CloseTime,
    };
}
