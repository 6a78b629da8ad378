using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.DataProblems;

/// <summary>Something in the records of an aircraft that does not add up.</summary>
/// <param name="Kind">What kind of problem.</param>
/// <param name="Registration">The aircraft.</param>
/// <param name="Date">The day it concerns.</param>
/// <param name="Description">One sentence with the values, for people.</param>
/// <param name="Evidence">The records it concerns.</param>
public sealed record DataProblem(
    DataProblemKind Kind,
    string Registration,
    DateOnly Date,
    string Description,
    IReadOnlyList<RecordKey> Evidence);
