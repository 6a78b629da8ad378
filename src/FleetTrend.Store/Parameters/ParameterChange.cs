namespace FleetTrend.Store.Parameters;

/// <summary>What came of a change of the parameters.</summary>
/// <param name="State">Whether it was stored.</param>
/// <param name="InForce">What is in force then.</param>
public sealed record ParameterChange(ParameterChangeState State, ParameterRevision InForce);
