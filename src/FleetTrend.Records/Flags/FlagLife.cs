namespace FleetTrend.Records.Flags;

/// <summary>Which step of a flag's life may follow which: some are for people, the others for the product.</summary>
public static class FlagLife
{
    /// <summary>Whether a person may take a flag from one state to the other; the same state again is another answer of that kind.</summary>
    /// <param name="from">Where it stands.</param>
    /// <param name="to">Where it would stand.</param>
    public static bool PersonMay(FlagState from, FlagState to) => to switch
    {
        FlagState.Acknowledged => IsUnsettled(from) && from != FlagState.ActedOn, // what was done stays said
        FlagState.ActedOn or FlagState.Closed => IsUnsettled(from),
        FlagState.Reopened => !IsUnsettled(from),
        FlagState.Open or FlagState.Watch or FlagState.Helped or FlagState.NoBetter => false,
    };

    /// <summary>Whether the numbers may take a flag from one state to the other. No step leads back to nothing: a flag that goes quiet stays
    /// where it stands.</summary>
    /// <param name="from">Where it stands; null before it is raised.</param>
    /// <param name="to">Where it would stand.</param>
    public static bool ProductMay(FlagState? from, FlagState to) => to switch
    {
        FlagState.Watch => from is null,
        FlagState.Open => from is null or FlagState.Watch or FlagState.Acknowledged, // what was acknowledged as a watch and became strong
        FlagState.Helped or FlagState.NoBetter => from == FlagState.ActedOn,
        FlagState.Acknowledged or FlagState.Closed or FlagState.ActedOn or FlagState.Reopened => false,
    };

    /// <summary>Whether a flag still asks for something: its subject gets no other. A settled one is raised again by what comes after.</summary>
    public static bool IsUnsettled(FlagState state) => state is not (FlagState.Closed or FlagState.Helped);

    /// <summary>The state in which a statement of that strength is raised.</summary>
    public static FlagState Raised(FlagTier tier) => tier == FlagTier.Watch ? FlagState.Watch : FlagState.Open;
}
