using FleetTrend.Records.Flags;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>Reads what people had settled about the subjects of flags at a moment, from the steps known then.</summary>
internal static class FlagClosingRows
{
    /// <summary>What was settled of each subject then, ordered by subject: by a closing that was not taken back, or by an action.</summary>
    public static async Task<IReadOnlyList<FlagClosing>> ReadAsync(NpgsqlConnection connection, DateTimeOffset asOf, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            """
            select flag.subject, max(step.step_time), max(case
                when step.state = 5 then step.action_date
                when step.state = 3 and not exists (
                    select from flag_steps later
                    where later.flag_id = step.flag_id and later.state = 8 and later.id > step.id and later.step_time <= $1)
                then (step.step_time at time zone 'UTC')::date
            end), (array_agg(step.action_date order by step.id desc) filter (where step.state = 5))[1]
            from flag_steps step join flags flag on flag.id = step.flag_id
            where step.state in (3, 5, 8) and step.step_time <= $1
            group by flag.subject
            """, connection)
        {
            Parameters = { new NpgsqlParameter<DateTimeOffset> { TypedValue = asOf.ToUniversalTime() } },
        };
        var closings = new List<FlagClosing>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            closings.Add(new FlagClosing(
                reader.GetString(0), reader.GetFieldValue<DateTimeOffset>(1), await reader.IsDBNullAsync(2, ct) ? null : reader.GetFieldValue<DateOnly>(2))
            {
                ActionDate = await reader.IsDBNullAsync(3, ct) ? null : reader.GetFieldValue<DateOnly>(3),
            });
        }

        return [.. closings.OrderBy(c => c.Subject, StringComparer.Ordinal)];
    }
}
