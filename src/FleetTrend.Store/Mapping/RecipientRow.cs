namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>recipients</c>.</summary>
internal sealed class RecipientRow
{
    public string Base { get; set; } = "";

    public string Address { get; set; } = "";
}
