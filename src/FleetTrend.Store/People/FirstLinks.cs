using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Store.People;

/// <summary>
/// One-time links with which somebody becomes the administrator where there is none who may sign in: at the first start, or where the
/// last one was disabled in the database. Only hashes are stored. Servers that share no folder may each have one; the first that
/// is used ends all.
/// </summary>
public sealed class FirstLinks(IDbContextFactory<FleetDbContext> contexts)
{
    /// <summary>How long a link is good.</summary>
    public static readonly TimeSpan Lasts = TimeSpan.FromHours(24);

    /// <summary>Makes a link where one is needed.</summary>
    /// <param name="atHand">The token of a link that was handed over before; null where there is none.</param>
    /// <param name="handOver">Gives the token of a new link to somebody before it is stored; when that fails there is no link.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>False where there is an administrator.</returns>
    public async Task<bool> OfferAsync(string? atHand, Func<string, Task> handOver, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(handOver);
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var change = await PeopleChange.BeginAsync(context, ct);
        if (await HasAdministratorAsync(context, ct))
        {
            await context.FirstLinks.ExecuteDeleteAsync(ct);
            await change.CommitAsync(ct);
            return false;
        }

        await context.Database.ExecuteSqlAsync($"delete from first_links where create_time < clock_timestamp() - {Lasts}", ct);
        if (atHand is null || !await IsGoodAsync(context, atHand, ct))
        {
            var token = SecretText.Create();
            await handOver(token);
            await context.Database.ExecuteSqlAsync($"insert into first_links (token_hash) values ({SecretText.HashOf(token)})", ct);
        }

        await change.CommitAsync(ct);
        return true;
    }

    /// <summary>Whether a link can still be used.</summary>
    public async Task<bool> IsGoodAsync(string token, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await IsGoodAsync(context, token, ct) && !await HasAdministratorAsync(context, ct);
    }

    /// <summary>Uses a link up, and all others with it, within a change that the caller then fills and commits.</summary>
    /// <returns>False where it is not good; nothing has happened then.</returns>
    public static async Task<bool> UseAsync(FleetDbContext context, string token, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (!await IsGoodAsync(context, token, ct) || await HasAdministratorAsync(context, ct))
            return false;
        await context.FirstLinks.ExecuteDeleteAsync(ct);
        return true;
    }

    private static Task<bool> IsGoodAsync(FleetDbContext context, string token, CancellationToken ct)
    {
        var hash = SecretText.HashOf(token);
        return context.Database.SqlQuery<bool>(
            $"select exists (select from first_links where token_hash = {hash} and create_time >= clock_timestamp() - {Lasts}) as \"Value\"").SingleAsync(ct);
    }

    private static Task<bool> HasAdministratorAsync(FleetDbContext context, CancellationToken ct) =>
        context.People.AnyAsync(person => person.Role == PersonRole.Administrator && person.DisableTime == null, ct);
}
