namespace FleetTrend.Store.People;

/// <summary>What a person may do. The numbers are stored.</summary>
public enum PersonRole
{
    /// <summary>Reads everything.</summary>
    Reader = 1,

    /// <summary>Reads, and answers: flags, data problems, merges, held records, codes, parameters, report schedules.</summary>
    Director = 2,

    /// <summary>Does what a director does, and decides who signs in.</summary>
    Administrator = 3,
}
