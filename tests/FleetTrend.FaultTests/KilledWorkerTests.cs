using FleetTrend.IntegrationTests;

namespace FleetTrend.FaultTests;

[Collection(SharedPostgres.Name)]
public class KilledWorkerTests(PostgresFixture server)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    [Fact]
    public async Task A_killed_workers_report_job_is_taken_over_and_makes_one_report_and_one_mail_per_scope()
    {
        await using var product = await ProductUnderTest.CreateAsync(server);
        await product.StartApiAsync();
        var scopes = await product.PushFleetAsync();
        var worker = await product.StartWorkerAsync();
        await UntilAsync(product, "SELECT count(*) FROM trends", count => count > 0, worker);

        // A lock on the reports table, which lets readers pass, holds the job between its computing and its writing, and there the worker dies.
        await using (var connection = await product.Database.DataSource.OpenConnectionAsync())
        await using (var held = await connection.BeginTransactionAsync())
        {
            await using var hold = new Npgsql.NpgsqlCommand("LOCK TABLE reports IN SHARE ROW EXCLUSIVE MODE", connection, held);
            await hold.ExecuteNonQueryAsync();
            await product.MakeReportsDueAsync();
            await UntilAsync(
                product,
                "SELECT count(*) FROM pg_stat_activity WHERE wait_event_type = 'Lock' AND query ILIKE '%reports%' AND datname = current_database()",
                count => count > 0,
                worker);
            worker.Kill();
            await held.RollbackAsync();
        }

        Assert.Equal(0, await product.CountAsync("SELECT count(*) FROM reports"));
        await product.StartWorkerAsync();
        var second = await product.StartWorkerAsync(secondOfTwo: true);
        await UntilAsync(product, "SELECT count(*) FROM report_schedules WHERE next_due_time <= clock_timestamp()", count => count == 0, second);
        await UntilAsync(product, "SELECT count(*) FROM outbox_mails WHERE sent_time IS NULL", count => count == 0, second);
        Assert.Equal(scopes, await product.CountAsync("SELECT count(*) FROM reports"));
        Assert.Equal(scopes, await product.CountAsync("SELECT count(*) FROM outbox_mails"));
        Assert.Equal(scopes, product.Mails.Count);
    }

    private static Task UntilAsync(ProductUnderTest product, string sql, Func<long, bool> holds, ProductProcess worker) =>
        Eventually.TrueAsync(async () => holds(await product.CountAsync(sql)), Patience, () => $"{sql}\n{worker.Output}");
}
