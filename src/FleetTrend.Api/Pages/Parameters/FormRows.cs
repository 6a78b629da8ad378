using System.Globalization;

namespace FleetTrend.Api.Pages.Parameters;

/// <summary>Rows of a list in the form: those that are in force or were typed, and a few empty ones behind them.</summary>
/// <param name="List">Name of the list in the contract.</param>
/// <param name="InForce">How many are in force; null where the form comes back.</param>
/// <param name="Typed">The rows that were filled in: those that were left empty fall out when the form comes back.</param>
internal sealed record FormRows(string List, int? InForce, List<int> Typed)
{
    private const int Empty = 2;

    /// <summary>How many rows the form has.</summary>
    public int Count => (InForce ?? Typed.Count) + Empty;

    /// <summary>What the names of a row's fields begin with.</summary>
    public string NameOf(int row) => string.Create(CultureInfo.InvariantCulture, $"parameters.{List}[{row}].");

    /// <summary>The row under which it was typed; null for an empty one.</summary>
    public int? TypedAs(int row) => row < Typed.Count ? Typed[row] : null;
}
