using System.Globalization;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Reports.Words;
using FleetTrend.Store.DataProblems;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.DataProblems;

/// <summary>Data problems and merges as the contract writes them.</summary>
internal static class DataProblemMessages
{
    public static Wire.DataCheck ToWire(this StoredDataProblem problem) => new()
    {
        CheckId = problem.ProblemId.ToString(CultureInfo.InvariantCulture),
        Kind = (Wire.DataCheckKind)Enum.Parse<DataProblemKind>(problem.Found.Kind),
        State = (Wire.DataCheckState)problem.State,
        Registration = problem.Found.Registration ?? "",
        OtherRegistration = problem.Found.OtherRegistration ?? "",
        ProblemDate = problem.Found.ProblemDate.ToWire(),
        Rule = problem.Found.Rule,
        Description = DataProblemWords.Description(
            Enum.Parse<DataProblemKind>(problem.Found.Kind), problem.Found.Evidence, problem.Found.Description),
        RecordKeys =
        {
            problem.Found.Evidence.Select(k => new Wire.RecordKey { Source = k.Source, SourceRecordId = k.SourceRecordId, Revision = k.Revision }),
        },
        SinceTime = problem.SinceTime.ToWire(),
        LastSeenTime = problem.LastSeenTime.ToWire(),
        GoneTime = problem.GoneTime?.ToWire(),
        ClosedBy = problem.ClosedBy ?? "",
        CloseNote = problem.CloseNote ?? "",
        CloseTime = problem.CloseTime?.ToWire(),
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
