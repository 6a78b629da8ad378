namespace FleetTrend.Trends.PartNumbers;

/// <summary>By what two part numbers are compared.</summary>
public enum PartNumberMeasure
{
    /// <summary>How long they last.</summary>
    Life = 1,

    /// <summary>How many fail within the look interval after they went in.</summary>
    EarlyFailures = 2,
}
