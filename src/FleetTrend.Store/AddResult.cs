namespace FleetTrend.Store;

/// <summary>What became of a layout, type group or source that was to be added.</summary>
/// <param name="State">Added, unchanged, or why it was refused.</param>
/// <param name="Value">The value that was refused: the name, path, kind or layout; null where it was not refused.</param>
/// <param name="Stored">For <see cref="AddState.PathHasOtherKind"/>, the kind that the path has; else null.</param>
public sealed record AddResult(AddState State, string? Value = null, string? Stored = null)
{
    /// <summary>True where it is stored, now or from before.</summary>
    public bool IsStored => State is AddState.Added or AddState.Unchanged;
}
