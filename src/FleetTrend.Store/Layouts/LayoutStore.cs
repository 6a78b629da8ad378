using FleetTrend.Records.Layouts;
using FleetTrend.Store.Mapping;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Store.Layouts;

/// <summary>Location kinds, layouts and type groups. They are added and never changed, so that old numbers keep their meaning.</summary>
public sealed class LayoutStore(IDbContextFactory<FleetDbContext> contexts)
{
    /// <summary>Adds a kind of location. The very same one again changes nothing; another one under its name is refused.</summary>
    public Task<AddResult> AddKindAsync(LocationKind kind, CancellationToken ct) => AddKindAsync(kind, write: true, ct);

    /// <summary>What <see cref="AddKindAsync(LocationKind, CancellationToken)"/> would say now; nothing is written.</summary>
    public Task<AddResult> CheckKindAsync(LocationKind kind, CancellationToken ct) => AddKindAsync(kind, write: false, ct);

    private async Task<AddResult> AddKindAsync(LocationKind kind, bool write, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        await context.Database.ExecuteSqlRawAsync($"select pg_advisory_xact_lock({AdvisoryLock.Layouts})", ct);
        if (await context.LocationKinds.AsNoTracking().SingleOrDefaultAsync(row => row.Name == kind.Name, ct) is { } stored)
            return ToKind(stored).Equals(kind) ? new AddResult(AddState.Unchanged) : new AddResult(AddState.NameInUse, kind.Name);
        if (!write)
            return new AddResult(AddState.Added);
        var row = new LocationKindRow { Name = kind.Name };
        Fill(row, kind);
        context.Add(row);
        await context.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return new AddResult(AddState.Added);
    }

    /// <summary>
    /// Brings the shipped kinds to the form of this version. A kind that an operator added earlier under a name that is shipped now
    /// stays as he has it.
    /// </summary>
    public async Task ShipKindsAsync(IReadOnlyList<LocationKind> kinds, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        var stored = await context.LocationKinds.ToDictionaryAsync(row => row.Name, StringComparer.Ordinal, ct);
        foreach (var kind in kinds)
        {
            if (!stored.TryGetValue(kind.Name, out var row))
                context.Add(row = new LocationKindRow { Name = kind.Name, IsShipped = true });
            if (row.IsShipped)
                Fill(row, kind);
        }

        await context.SaveChangesAsync(ct);
    }

    /// <summary>Every kind of location, by name.</summary>
    public async Task<IReadOnlyDictionary<string, LocationKind>> ReadKindsAsync(CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await context.LocationKinds.AsNoTracking().ToListAsync(ct);
        return rows.ToDictionary(row => row.Name, ToKind, StringComparer.Ordinal);
    }

    /// <summary>Kinds of location by name.</summary>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<LocationKind>> ListKindsAsync(int pageSize, string? pageToken, CancellationToken ct)
    {
        var after = PageToken.ReadKey(pageToken) ?? "";
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await context.LocationKinds.AsNoTracking()
            .Where(row => string.Compare(row.Name, after) > 0)
            .OrderBy(row => row.Name)
            .Take(pageSize + 1)
            .ToListAsync(ct);
        return PageToken.Cut([.. rows.Select(ToKind)], pageSize, kind => PageToken.Write(kind.Name));
    }

    /// <summary>Adds a layout. The very same one again changes nothing; another one under its name is refused, and so is a
    /// path that has another kind in an earlier layout.</summary>
    /// <exception cref="ArgumentException">A path stands twice.</exception>
    public Task<AddResult> AddLayoutAsync(Layout layout, CancellationToken ct) => AddLayoutAsync(layout, write: true, ct);

    /// <summary>What <see cref="AddLayoutAsync(Layout, CancellationToken)"/> would say now; nothing is written.</summary>
    /// <exception cref="ArgumentException">A path stands twice.</exception>
    public Task<AddResult> CheckLayoutAsync(Layout layout, CancellationToken ct) => AddLayoutAsync(layout, write: false, ct);

    private async Task<AddResult> AddLayoutAsync(Layout layout, bool write, CancellationToken ct)
    {
        if (layout.Locations.DistinctBy(location => location.Path, StringComparer.Ordinal).Count() != layout.Locations.Count)
            throw new ArgumentException("A path stands twice.", nameof(layout));
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        await context.Database.ExecuteSqlRawAsync($"select pg_advisory_xact_lock({AdvisoryLock.Layouts})", ct);
        if (await FindAsync(context, layout.Name, ct) is { } stored)
        {
            var same = stored.Title == layout.Title && stored.Locations.SequenceEqual(layout.Locations);
            return same ? new AddResult(AddState.Unchanged) : new AddResult(AddState.NameInUse, layout.Name);
        }

        var paths = layout.Locations.Select(location => location.Path).ToList();
        var known = await context.Locations.Where(row => paths.Contains(row.Path))
            .ToDictionaryAsync(row => row.Path, row => row.Kind, StringComparer.Ordinal, ct);
        foreach (var location in layout.Locations)
        {
            if (!known.TryGetValue(location.Path, out var kind))
                context.Add(new LocationRow { Path = location.Path, Kind = location.Kind.Name });
            else if (kind != location.Kind.Name)
                return new AddResult(AddState.PathHasOtherKind, location.Path, kind);
        }

        context.Add(ToRow(layout));
        if (!write)
            return new AddResult(AddState.Added);
        await context.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return new AddResult(AddState.Added);
    }

    /// <summary>The layout of that name, or null.</summary>
    public async Task<Layout?> GetAsync(string name, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await FindAsync(context, name, ct);
    }

    /// <summary>Layouts by name.</summary>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<Layout>> ListAsync(int pageSize, string? pageToken, CancellationToken ct)
    {
        var after = PageToken.ReadKey(pageToken) ?? "";
        await using var context = await contexts.CreateDbContextAsync(ct);
        var rows = await WithLocations(context)
            .Where(layout => string.Compare(layout.Name, after) > 0)
            .OrderBy(layout => layout.Name)
            .Take(pageSize + 1)
            .ToListAsync(ct);
        return PageToken.Cut([.. rows.Select(ToLayout)], pageSize, layout => PageToken.Write(layout.Name));
    }

    /// <summary>Adds a type group. The very same one again changes nothing; another one under its name is refused.</summary>
    public Task<AddResult> AddTypeGroupAsync(TypeGroup typeGroup, CancellationToken ct) => AddTypeGroupAsync(typeGroup, write: true, ct);

    /// <summary>What <see cref="AddTypeGroupAsync(TypeGroup, CancellationToken)"/> would say now; nothing is written.</summary>
    public Task<AddResult> CheckTypeGroupAsync(TypeGroup typeGroup, CancellationToken ct) => AddTypeGroupAsync(typeGroup, write: false, ct);

    private async Task<AddResult> AddTypeGroupAsync(TypeGroup typeGroup, bool write, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        var added = await context.Database.ExecuteSqlAsync(
            $"""
            insert into type_groups (name, title, layout_id)
            select {typeGroup.Name}, {typeGroup.Title}, id from layouts where name = {typeGroup.Layout}
            on conflict (name) do nothing
            """,
            ct);
        if (write)
            await transaction.CommitAsync(ct);
        if (added == 1)
            return new AddResult(AddState.Added);
        var stored = await context.TypeGroups.Where(row => row.Name == typeGroup.Name)
            .Select(row => new TypeGroup(row.Name, row.Title, row.Layout!.Name))
            .SingleOrDefaultAsync(ct);
        return stored is null ? new AddResult(AddState.LayoutUnknown, typeGroup.Layout)
            : stored == typeGroup ? new AddResult(AddState.Unchanged)
            : new AddResult(AddState.NameInUse, typeGroup.Name);
    }

    /// <summary>Type groups by name.</summary>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<TypeGroup>> ListTypeGroupsAsync(int pageSize, string? pageToken, CancellationToken ct)
    {
        var after = PageToken.ReadKey(pageToken) ?? "";
        await using var context = await contexts.CreateDbContextAsync(ct);
        var groups = await context.TypeGroups
            .Where(row => string.Compare(row.Name, after) > 0)
            .OrderBy(row => row.Name)
            .Take(pageSize + 1)
            .Select(row => new TypeGroup(row.Name, row.Title, row.Layout!.Name))
            .ToListAsync(ct);
        return PageToken.Cut(groups, pageSize, group => PageToken.Write(group.Name));
    }

    /// <summary>The layout of every type group, by name of the group.</summary>
    public async Task<IReadOnlyDictionary<string, Layout>> ReadByTypeGroupAsync(CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        var groups = await context.TypeGroups.Select(row => new { row.Name, row.LayoutId }).ToListAsync(ct);
        var used = groups.Select(group => group.LayoutId).Distinct().ToList();
        var rows = await WithLocations(context).Where(layout => used.Contains(layout.Id)).ToListAsync(ct);
        var layouts = rows.ToDictionary(row => row.Id, ToLayout);
        return groups.ToDictionary(group => group.Name, group => layouts[group.LayoutId], StringComparer.Ordinal);
    }

    private static async Task<Layout?> FindAsync(FleetDbContext context, string name, CancellationToken ct) =>
        await WithLocations(context).SingleOrDefaultAsync(layout => layout.Name == name, ct) is { } row ? ToLayout(row) : null;

    private static IQueryable<LayoutRow> WithLocations(FleetDbContext context) =>
        context.Layouts.AsNoTrackingWithIdentityResolution()
            .Include(layout => layout.Locations.OrderBy(line => line.Position))
            .ThenInclude(line => line.Location!.KindRow);

    private static Layout ToLayout(LayoutRow row) =>
        new(row.Name, row.Title, [.. row.Locations.Select(line => new Location(line.Path, ToKind(line.Location!.KindRow!), line.LookFor, line.JascCode))]);

    private static LocationKind ToKind(LocationKindRow row) => new(
        row.Name, row.Title, row.LookFor, row.JascCode, row.Conditions, row.Failures, row.Watched, row.Checks, row.BaseChecks);

    private static void Fill(LocationKindRow row, LocationKind kind)
    {
        (row.Title, row.LookFor, row.JascCode) = (kind.Title, kind.LookFor, kind.JascCode);
        (row.Conditions, row.Failures, row.Watched) = ([.. kind.Conditions], [.. kind.Failures], [.. kind.Watched]);
        (row.Checks, row.BaseChecks) = ([.. kind.Checks], [.. kind.BaseChecks]);
    }

    private static LayoutRow ToRow(Layout layout)
    {
        var row = new LayoutRow { Name = layout.Name, Title = layout.Title };
        row.Locations.AddRange(layout.Locations.Select((location, position) => new LayoutLocationRow
        {
            Path = location.Path,
            Position = position,
            LookFor = location.LookFor,
            JascCode = location.JascCode,
        }));
        return row;
    }
}
