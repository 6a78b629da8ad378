namespace FleetTrend.Records.Inspections;

/// <summary>What an inspection says of a location. Only an examined location adds exposure.</summary>
public enum LookState
{
    /// <summary>It was looked at; good unless a finding of that day says otherwise.</summary>
    Examined = 1,

    /// <summary>It was not looked at.</summary>
    NotExamined = 2,

    /// <summary>It was meant to be looked at and could not be, such as behind a shroud that stayed on.</summary>
    CouldNotExamine = 3,
}
