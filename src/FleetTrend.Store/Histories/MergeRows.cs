using FleetTrend.Records.Findings;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>Reads which findings were merged at a moment.</summary>
internal static class MergeRows
{
    /// <summary>Merges that held then, by source and identifier of the merged finding.</summary>
    public static async Task<IReadOnlyDictionary<(string Source, string Id), FindingMerge>> ReadAsync(
        NpgsqlConnection connection, DateTimeOffset asOf, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            """
            select kept.name, held.kept_record_id, merged.name, held.merged_record_id
            from (
                select distinct on (merged_source_id, merged_record_id) *
                from finding_merges where decide_time <= $1
                order by merged_source_id, merged_record_id, id desc) held
            join sources kept on kept.id = held.kept_source_id
            join sources merged on merged.id = held.merged_source_id
            where held.is_merged
            """,
            connection)
        {
            Parameters = { new NpgsqlParameter<DateTimeOffset> { TypedValue = asOf.ToUniversalTime() } },
        };
        var merges = new Dictionary<(string, string), FindingMerge>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            var merge = new FindingMerge(reader.GetString(0), reader.GetString(1), reader.GetString(2), reader.GetString(3));
            merges.Add((merge.MergedSource, merge.MergedRecordId), merge);
        }

        return merges;
    }
}
