using FleetTrend.Records.Layouts;
using FleetTrend.Trends.Changes;
using FleetTrend.Trends.Restarts;
using FleetTrend.Trends.Words;

namespace FleetTrend.Trends.Flags;

/// <summary>The flag of an aircraft or a base that gets worse.</summary>
internal static class ChangeFlag
{
    /// <summary>The flag.</summary>
    /// <param name="change">The change, with a call that stands.</param>
    /// <param name="kinds">Kinds by name.</param>
    public static ProposedFlag Propose(Change change, IReadOnlyDictionary<string, LocationKind> kinds)
    {
        var title = change.Kind is { } kind ? kinds[kind].Title : null;
        return new ProposedFlag
        {
            Subject = Subject(change),
            Kind = Kind(change),
            Tier = change.Tier!.Value,
            Registration = change.Registration,
            Base = change.Base,
            TypeGroup = change.TypeGroup,
            Condition = change.Condition,
            PartKind = change.Kind,
            PartKindTitle = title,
            Locations = [.. change.Locations.Select(l => l.Location)],
            Change = change,
            Ratio = change.RatioSince,
            Observed = change.FoundSince,
            Expected = change.ExpectedSince,
            SinceDate = change.SinceDate,
            Statement = ChangeWords.Statement(change, title),
            WhatToCheck = change.Registration is null && change.Kind is { } part
                ? WhatToCheck.ForBase(kinds[part])
                : WhatToCheck.ForChange(change, kinds),
        };
    }

    private static string Subject(Change change) => change switch
    {
        { Registration: { } registration, Condition: { } condition } => FlagSubjects.Drift(registration, condition),
        { Registration: { } registration, Kind: { } kind } => FlagSubjects.PartDrift(registration, kind),
        { Condition: { } condition } => FlagSubjects.BaseDrift(change.TypeGroup, change.Base, condition),
        _ => FlagSubjects.BaseLife(change.TypeGroup, change.Base, change.Kind!),
    };

    private static FlagKind Kind(Change change) => change switch
    {
        { Registration: not null, Condition: not null } => FlagKind.AirframeDrift,
        { Registration: not null } => FlagKind.AirframePartDrift,
        { Condition: not null } => FlagKind.BaseDrift,
        _ => FlagKind.BasePartLife,
    };
}
