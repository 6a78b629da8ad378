using FleetTrend.Trends.AuthorityDrafts;
using FleetTrend.Trends.OpenFindings;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Open findings as the contract writes them.</summary>
internal static class OpenFindingMessages
{
    public static Wire.OpenFinding ToWire(this OpenFinding finding)
    {
        var wire = new Wire.OpenFinding
        {
            Registration = finding.Registration,
            Base = finding.Base,
            TypeGroup = finding.TypeGroup,
            Location = finding.Location,
            Kind = finding.Kind,
            Condition = (Wire.Condition)finding.Condition,
            FoundDate = finding.FoundDate.ToWire(),
            FoundHours = finding.FoundHours,
            PresentAtEntry = finding.PresentAtEntry,
            HoursSinceFound = finding.HoursSinceFound,
            LastLookDate = finding.LastLookDate.ToWire(),
            HoursSinceLook = finding.HoursSinceLook,
            LeftBy = finding.LeftBy is { } action ? (Wire.ActionKind)action : Wire.ActionKind.Unspecified,
            LeftDate = finding.LeftDate.ToWire(),
            Caution = OpenFindingWords.Caution(finding) is { } caution ? $"{caution} {OpenFindingWords.WhoDecides}" : "",
            RecordKeys = { finding.Evidence.Select(EvidenceMessages.ToWire) },
            Citations = { ReportingParagraphs.For(finding.Location, finding.JascCode, finding.Condition).Select(p => p.Citation) },
        };
        if (finding.FirstMillimetres is { } first)
            wire.FirstSizeMm = first;
        if (finding.LastMillimetres is { } last)
            wire.LastSizeMm = last;
        if (finding.GrowthHours is { } hours)
            wire.GrowthHours = hours;
        return wire;
    }
}
