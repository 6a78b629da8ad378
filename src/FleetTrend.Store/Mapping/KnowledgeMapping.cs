using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class KnowledgeMapping : IEntityTypeConfiguration<KnowledgeRow>
{
    public void Configure(EntityTypeBuilder<KnowledgeRow> builder)
    {
        builder.ToTable("knowledge", table => table.HasCheckConstraint("ck_knowledge_id", "id = 1"));
        builder.Property(row => row.Id).ValueGeneratedNever();
    }
}
