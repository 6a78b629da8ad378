using FleetTrend.Intake;
using FleetTrend.Records.Schedules;
using FleetTrend.Store.Fleet;
using FleetTrend.Store.Layouts;
using Google.Protobuf;
using Google.Protobuf.Reflection;

namespace FleetTrend.Api;

/// <summary>What a list is filtered by: a name that nothing has is told so, with the nearest that something has. An empty list would say
/// that nothing is wrong with what nobody knows.</summary>
internal sealed class NameFilters(FleetNames names, LayoutStore layouts)
{
    private sealed record Filter(NameKind Kind, Reason Reason, string Rule);

    // The fields of every list, by the names that the contract gives them.
    private static readonly Dictionary<string, Filter> ByField = new(StringComparer.Ordinal)
    {
        ["registration"] = new(NameKind.Aircraft, Reasons.AircraftNotFound, "must be the registration mark of a registered aircraft"),
        ["type_group"] = new(NameKind.TypeGroup, Reasons.TypeGroupNotFound, "must be a registered type group"),
        ["location"] = new(NameKind.Location, Reasons.LocationNotFound, "must be a location path of a layout"),
        ["kind"] = new(NameKind.LocationKind, Reasons.LocationKindNotFound, "must be a location kind"),
        ["base"] = new(NameKind.Base, Reasons.BaseNotFound, "must be the base of an aircraft, or * for the whole fleet"),
        ["source"] = new(NameKind.Source, Reasons.SourceNotFound, "must be a registered source"),
    };

    /// <summary>Refuses a question with a name that nothing has, or an enum value that the contract does not have.</summary>
    /// <param name="request">The request of a list.</param>
    /// <param name="ct">Cancels.</param>
    /// <param name="registrations">Where a registration mark is looked for.</param>
    /// <exception cref="Grpc.Core.RpcException">NOT_FOUND, or ENUM_UNKNOWN.</exception>
    public async Task RefuseUnknownAsync(IMessage request, CancellationToken ct, NameKind registrations = NameKind.Aircraft)
    {
        foreach (var field in request.Descriptor.Fields.InDeclarationOrder())
        {
            var refusal = field.FieldType switch
            {
                FieldType.Enum => OfEnum(field, (int)field.Accessor.GetValue(request)),
                FieldType.String when ByField.TryGetValue(field.Name, out var filter) => await OfNameAsync(
                    field.Name, filter.Kind == NameKind.Aircraft ? filter with { Kind = registrations } : filter,
                    (string)field.Accessor.GetValue(request), TypeGroupOf(request), ct),
                _ => null,
            };
            if (refusal is not null)
                throw refusal.ToException();
        }
    }

    /// <summary>What a registration mark that no aircraft has is refused with; null where one has it.</summary>
    public Task<Refusal?> OfRegistrationAsync(string registration, CancellationToken ct) =>
        OfNameAsync("registration", ByField["registration"], registration, "", ct);

    private static Refusal? OfEnum(FieldDescriptor field, int value) => field.EnumType.FindValueByNumber(value) is not null ? null
        : new Refusal(
            field.Name, $"{value}", Reasons.EnumUnknown,
            $"must be one of {string.Join(", ", field.EnumType.Values.Where(v => v.Number != 0).Select(v => v.Name))}, or absent")
        { IsBare = true };

    private static string TypeGroupOf(IMessage request) =>
        request.Descriptor.FindFieldByName("type_group")?.Accessor.GetValue(request) as string ?? "";

    private async Task<Refusal?> OfNameAsync(string field, Filter filter, string given, string typeGroup, CancellationToken ct)
    {
        if (given.Length == 0)
            return null;
        if (field == "location" && typeGroup.Length > 0)
            return await OfLocationInAsync(typeGroup, given, filter, ct);
        var name = field == "registration" ? given.ToUpperInvariant() : given;
        return (filter.Kind == NameKind.Base && name == ReportScope.AllBases) || await names.HasAsync(filter.Kind, name, ct)
            ? null
            : Unknown(field, given, filter.Reason, filter.Rule, await names.ReadAsync(filter.Kind, ct));
    }

    /// <summary>A path that other type groups have is as unknown to this one as any.</summary>
    private async Task<Refusal?> OfLocationInAsync(string typeGroup, string path, Filter filter, CancellationToken ct)
    {
        if (!(await layouts.ReadByTypeGroupAsync(ct)).TryGetValue(typeGroup, out var layout))
            return Unknown("type_group", typeGroup, Reasons.TypeGroupNotFound, ByField["type_group"].Rule, await names.ReadAsync(NameKind.TypeGroup, ct));
        var paths = layout.Locations.Select(location => location.Path).ToList();
        return paths.Contains(path, StringComparer.Ordinal) ? null
            : Unknown("location", path, filter.Reason, $"must be a location path of the layout of {typeGroup}", paths);
    }

    private static Refusal Unknown(string field, string given, Reason reason, string rule, IEnumerable<string> known) =>
        new(field, given, reason, rule) { Nearest = NearestName.Find(given, known) };
}
