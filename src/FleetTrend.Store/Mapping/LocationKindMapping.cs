using System.Text.Json;
using System.Text.Json.Serialization;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class LocationKindMapping : IEntityTypeConfiguration<LocationKindRow>
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(namingPolicy: null, allowIntegerValues: false) },
    };

    private static readonly ValueComparer<List<ConditionChecks>> SameChecks =
        new((a, b) => a!.SequenceEqual(b!), checks => checks.Count, checks => checks.ToList());

    public void Configure(EntityTypeBuilder<LocationKindRow> builder)
    {
        var all = string.Join(", ", Enum.GetValues<Condition>().Select(c => (int)c));
        builder.ToTable("location_kinds", table =>
        {
            table.Form("name", "[a-z0-9-]{2,60}");
            table.Length("title", 1, 120);
            table.Length("look_for", 0, 400);
            table.Form("jasc_code", "[0-9]{4}");
            table.HasCheckConstraint(
                "ck_location_kinds_conditions",
                $"cardinality(conditions) > 0 and conditions <@ array[{all}]");
            table.HasCheckConstraint("ck_location_kinds_failures", "failures <@ conditions and watched <@ conditions");
        });
        builder.HasKey(row => row.Name);
        builder.Property(row => row.Checks).HasColumnType("jsonb").HasConversion(
            checks => JsonSerializer.Serialize(checks, Json),
            json => JsonSerializer.Deserialize<List<ConditionChecks>>(json, Json)!,
            SameChecks);
    }
}
