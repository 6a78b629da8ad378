using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;
using Npgsql;

namespace FleetTrend.Store.Codes;

/// <summary>What the codes of each source mean. A meaning can change; what was accepted before stays as it was read then.</summary>
public sealed class CodeStore(NpgsqlDataSource dataSource)
{
    private const string Columns = "sources.name, known.kind, known.code, known.location, known.condition, known.action, known.set_time";

    /// <summary>Gives a code its meaning, in place of one that it has. The very same one again changes nothing.</summary>
    /// <param name="code">The code; its kind is that of the meaning.</param>
    /// <param name="meaning">The meaning.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>What became of it; the code as stored where it is; and as it was where it meant something else.</returns>
    /// <exception cref="ArgumentException">The code stands for something else than the meaning.</exception>
    public async Task<(SetCodeState State, KnownCode? Stored, KnownCode? Replaced)> SetAsync(
        SourceCode code, CodeMeaning meaning, bool write, CancellationToken ct)
    {
        if (code.Kind != meaning.Kind)
            throw new ArgumentException($"A code for a {code.Kind} cannot mean a {meaning.Kind}.", nameof(meaning));
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        if (!await ExistsAsync(connection, "select from sources where name = $1", code.Source, ct))
            return (SetCodeState.SourceUnknown, null, null);
        if (meaning is CodeMeaning.Location { Path: var path } && !await ExistsAsync(connection, "select from locations where path = $1", path, ct))
            return (SetCodeState.LocationUnknown, null, null);
        const string This = "sources.name = @source and known.kind = @kind and known.code = @code";
        await using var standing = new NpgsqlCommand(
            $"select {Columns} from source_codes known join sources on sources.id = known.source_id where {This} for update of known", connection);
        AddKey(standing, code);
        var replaced = (await ReadAsync(standing, ct)).SingleOrDefault(known => known.Meaning != meaning);
        await using var command = new NpgsqlCommand(
            $"""
            insert into source_codes as known (source_id, kind, code, location, condition, action)
            select id, @kind, @code, @location, @condition, @action from sources where name = @source
            on conflict (source_id, kind, code) do update
            set location = excluded.location, condition = excluded.condition, action = excluded.action, set_time = clock_timestamp()
            where (known.location, known.condition, known.action) is distinct from (excluded.location, excluded.condition, excluded.action);
            select {Columns} from source_codes known join sources on sources.id = known.source_id where {This}
            """,
            connection);
        AddKey(command, code);
        command.Parameters.Add(new NpgsqlParameter("location", NpgsqlTypes.NpgsqlDbType.Text)
        {
            Value = meaning is CodeMeaning.Location location ? location.Path : DBNull.Value,
        });
        command.Parameters.Add(new NpgsqlParameter("condition", NpgsqlTypes.NpgsqlDbType.Smallint)
        {
            Value = meaning is CodeMeaning.Condition condition ? (short)condition.Value : DBNull.Value,
        });
        command.Parameters.Add(new NpgsqlParameter("action", NpgsqlTypes.NpgsqlDbType.Smallint)
        {
            Value = meaning is CodeMeaning.Action action ? (short)action.Value : DBNull.Value,
        });
        var stored = (await ReadAsync(command, ct))[0];
        if (write)
            await transaction.CommitAsync(ct);
        return (SetCodeState.Stored, stored, replaced);
    }

    /// <summary>Removes the meaning of a code.</summary>
    /// <param name="code">The code.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>False where the code has no meaning.</returns>
    public async Task<bool> DeleteAsync(SourceCode code, bool write, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await using var command = new NpgsqlCommand(
            """
            delete from source_codes known using sources
            where sources.id = known.source_id and sources.name = @source and known.kind = @kind and known.code = @code
            """,
            connection);
        AddKey(command, code);
        var deleted = await command.ExecuteNonQueryAsync(ct) > 0;
        if (write)
            await transaction.CommitAsync(ct);
        return deleted;
    }

    /// <summary>Those of the codes that have a meaning now.</summary>
    public async Task<IReadOnlyDictionary<SourceCode, CodeMeaning>> ReadAsync(IReadOnlyCollection<SourceCode> codes, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            $"""
            select {Columns}
            from unnest(@sources, @kinds, @codes) as sent(source, kind, code)
            join sources on sources.name = sent.source
            join source_codes known on known.source_id = sources.id and known.kind = sent.kind and known.code = sent.code
            """);
        command.Parameters.AddWithValue("sources", codes.Select(code => code.Source).ToArray());
        command.Parameters.AddWithValue("kinds", codes.Select(code => (short)code.Kind).ToArray());
        command.Parameters.AddWithValue("codes", codes.Select(code => code.Code).ToArray());
        return (await ReadAsync(command, ct)).ToDictionary(known => known.Code, known => known.Meaning);
    }

    /// <summary>The codes of a source that have a meaning of that kind, up to 10,000 of them.</summary>
    public async Task<IReadOnlyList<string>> ReadNamesAsync(string source, CodeKind kind, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            select known.code from source_codes known join sources on sources.id = known.source_id
            where sources.name = @source and known.kind = @kind order by known.code limit 10000
            """);
        command.Parameters.AddWithValue("source", source);
        command.Parameters.AddWithValue("kind", (short)kind);
        var names = new List<string>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            names.Add(reader.GetString(0));
        return names;
    }

    /// <summary>Codes of a source that have a meaning, by kind and code.</summary>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<KnownCode>> ListAsync(string source, int pageSize, string? pageToken, CancellationToken ct)
    {
        var (_, kind, code) = ReadToken(pageToken);
        await using var command = dataSource.CreateCommand(
            $"""
            select {Columns} from source_codes known join sources on sources.id = known.source_id
            where sources.name = @source and (known.kind, known.code) > (@kind, @code)
            order by known.kind, known.code limit @count
            """);
        AddKey(command, new SourceCode(source, kind, code));
        command.Parameters.AddWithValue("count", pageSize + 1);
        return PageToken.Cut(await ReadAsync(command, ct), pageSize, known => TokenOf(known.Code));
    }

    /// <summary>Codes without a meaning that records wait for, by source, kind and code.</summary>
    /// <param name="source">Name of a source; null for all.</param>
    /// <param name="pageSize">Most to return.</param>
    /// <param name="pageToken">From the page before; null or empty for the first.</param>
    /// <param name="ct">Cancels.</param>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<UnmappedCode>> ListUnmappedAsync(string? source, int pageSize, string? pageToken, CancellationToken ct)
    {
        var after = ReadToken(pageToken);
        await using var command = dataSource.CreateCommand(
            """
            select sources.name, carried.kind, carried.code, count(*)::integer, min(held.hold_time)
            from held_records held
            join sources on sources.id = held.source_id
            join held_codes carried on carried.held_record_id = held.id
            where held.release_time is null
              and not exists (
                select from source_codes known
                where known.source_id = held.source_id and known.kind = carried.kind and known.code = carried.code)
              and not exists (
                select from records later
                where later.source_id = held.source_id and later.source_record_id = held.source_record_id
                  and later.revision > held.revision and later.revision > 1)
              and (@only::text is null or sources.name = @only) and (sources.name, carried.kind, carried.code) > (@source, @kind, @code)
            group by sources.name, carried.kind, carried.code
            order by sources.name, carried.kind, carried.code limit @count
            """);
        AddKey(command, new SourceCode(after.Source, after.Kind, after.Code));
        command.Parameters.AddWithValue("only", (object?)source ?? DBNull.Value);
        command.Parameters.AddWithValue("count", pageSize + 1);
        var codes = new List<UnmappedCode>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            codes.Add(new UnmappedCode(
                new SourceCode(reader.GetString(0), (CodeKind)reader.GetInt16(1), reader.GetString(2)),
                reader.GetInt32(3), reader.GetFieldValue<DateTimeOffset>(4)));
        }

        return PageToken.Cut(codes, pageSize, unmapped => TokenOf(unmapped.Code));
    }

    private static void AddKey(NpgsqlCommand command, SourceCode code)
    {
        command.Parameters.AddWithValue("source", code.Source);
        command.Parameters.AddWithValue("kind", (short)code.Kind);
        command.Parameters.AddWithValue("code", code.Code);
    }

    private static async Task<bool> ExistsAsync(NpgsqlConnection connection, string rows, string name, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand($"select exists ({rows})", connection) { Parameters = { new NpgsqlParameter { Value = name } } };
        return (bool)(await command.ExecuteScalarAsync(ct))!;
    }

    private static async Task<IReadOnlyList<KnownCode>> ReadAsync(NpgsqlCommand command, CancellationToken ct)
    {
        var codes = new List<KnownCode>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            var kind = (CodeKind)reader.GetInt16(1);
            CodeMeaning meaning = kind switch
            {
                CodeKind.Location => new CodeMeaning.Location(reader.GetString(3)),
                CodeKind.Condition => new CodeMeaning.Condition((Condition)reader.GetInt16(4)),
                _ => new CodeMeaning.Action((ActionKind)reader.GetInt16(5)),
            };
            codes.Add(new KnownCode(
                new SourceCode(reader.GetString(0), kind, reader.GetString(2)), meaning, reader.GetFieldValue<DateTimeOffset>(6)));
        }

        return codes;
    }

    // Neither a source nor a code has a line break in it.
    private static string TokenOf(SourceCode code) => PageToken.Write($"{code.Source}\n{(int)code.Kind}\n{code.Code}");

    private static (string Source, CodeKind Kind, string Code) ReadToken(string? token) =>
        PageToken.ReadKey(token) is not { } key ? ("", default, "")
        : key.Split('\n') is [var source, [>= '1' and <= '3' and var kind], var code] ? (source, (CodeKind)(kind - '0'), code)
        : throw new FormatException("Not a page token.");
}
