using FleetTrend.Records.Flags;

namespace FleetTrend.Records.Tests.Flags;

/// <summary>The whole table of steps: a row per state, a column per state that may follow. Expected values: the life as the contract tells it
/// (protos/fleettrend/v1/flag_service.proto, FlagState).</summary>
public sealed class FlagLifeTests
{
    private static readonly FlagState[] Columns =
    [
        FlagState.Open, FlagState.Acknowledged, FlagState.Closed, FlagState.Watch, FlagState.ActedOn, FlagState.Helped, FlagState.NoBetter, FlagState.Reopened,
    ];

    [Theory] // p: a person takes it; n: the numbers do; .: nobody. Columns as the states are numbered.
    [InlineData(FlagState.Open, ".pp.p...")]
    [InlineData(FlagState.Acknowledged, "npp.p...")]
    [InlineData(FlagState.Closed, ".......p")]
    [InlineData(FlagState.Watch, "npp.p...")]
    [InlineData(FlagState.ActedOn, "..p.pnn.")]
    [InlineData(FlagState.Helped, ".......p")]
    [InlineData(FlagState.NoBetter, ".pp.p...")]
    [InlineData(FlagState.Reopened, ".pp.p...")]
    public void A_step_leads_on_from_where_the_flag_stands(FlagState from, string row) => Assert.Equal(row, string.Concat(Columns.Select(to =>
        (FlagLife.PersonMay(from, to), FlagLife.ProductMay(from, to)) switch { (true, false) => 'p', (false, true) => 'n', (false, false) => '.', _ => '!' })));

    [Fact]
    public void Every_state_has_a_column() => Assert.Equal(Enum.GetValues<FlagState>(), Columns);

    [Fact]
    public void A_flag_begins_as_strong_as_its_evidence() => Assert.Equal(
        [FlagState.Open, FlagState.Watch], Columns.Where(to => FlagLife.ProductMay(null, to)));
}
