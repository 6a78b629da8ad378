using System.Globalization;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Reports.Words;
using FleetTrend.Store.DataChecks;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.DataChecks;

/// <summary>Data checks and merges as the contract writes them.</summary>
internal static class CheckMessages
{
    public static Wire.DataCheck ToWire(this StoredDataCheck check) => new()
    {
        CheckId = check.CheckId.ToString(CultureInfo.InvariantCulture),
        Kind = (Wire.DataCheckKind)Enum.Parse<DataProblemKind>(check.Problem.Kind),
        State = (Wire.DataCheckState)check.State,
        Registration = check.Problem.Registration ?? "",
        OtherRegistration = check.Problem.OtherRegistration ?? "",
        ProblemDate = check.Problem.ProblemDate.ToWire(),
        Rule = check.Problem.Rule,
        Description = ProblemWords.Description(
            Enum.Parse<DataProblemKind>(check.Problem.Kind), check.Problem.Evidence, check.Problem.Description),
        RecordKeys =
        {
            check.Problem.Evidence.Select(k => new Wire.RecordKey { Source = k.Source, SourceRecordId = k.SourceRecordId, Revision = k.Revision }),
        },
        SinceTime = check.SinceTime.ToWire(),
        LastSeenTime = check.LastSeenTime.ToWire(),
        GoneTime = check.GoneTime?.ToWire(),
        ClosedBy = check.ClosedBy ?? "",
        CloseNote = check.CloseNote ?? "",
        CloseTime = check.CloseTime?.ToWire(),
    };

    public static Wire.FindingMerge ToWire(this StoredMerge merge) => new()
    {
        MergeId = merge.MergeId == 0 ? "" : merge.MergeId.ToString(CultureInfo.InvariantCulture),
        Kept = merge.Kept.ToWire(),
        Merged = merge.Merged.ToWire(),
        IsMerged = merge.IsMerged,
        DecidedBy = merge.DecidedBy,
        Note = merge.Note,
        DecideTime = merge.DecideTime.ToWire(),
    };

    public static FindingName ToStore(this Wire.FindingName name) => new(name.Source, name.SourceRecordId);

    private static Wire.FindingName ToWire(this FindingName name) => new() { Source = name.Source, SourceRecordId = name.SourceRecordId };
}
