using FleetTrend.Records.Flags;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>Reads which flags were closed at a moment. A closed flag stays as it is, so that its row tells the past.</summary>
internal static class FlagClosingRows
{
    /// <summary>The newest closing of each subject then, ordered by subject.</summary>
    public static async Task<IReadOnlyList<FlagClosing>> ReadAsync(NpgsqlConnection connection, DateTimeOffset asOf, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            "select subject, max(answer_time) from flags where state = 3 and answer_time <= $1 group by subject", connection)
        {
            Parameters = { new NpgsqlParameter<DateTimeOffset> { TypedValue = asOf.ToUniversalTime() } },
        };
        var closings = new List<FlagClosing>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            closings.Add(new FlagClosing(reader.GetString(0), reader.GetFieldValue<DateTimeOffset>(1)));
        return [.. closings.OrderBy(c => c.Subject, StringComparer.Ordinal)];
    }
}
