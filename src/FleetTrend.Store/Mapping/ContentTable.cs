using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

/// <summary>What the tables of record contents have in common.</summary>
internal static class ContentTable
{
    /// <summary>The content is told by its envelope: one row per record, with the record's key.</summary>
    public static void KeyedByRecord<T>(this EntityTypeBuilder<T> builder, Expression<Func<T, object?>> recordId)
        where T : class
    {
        builder.HasKey(recordId);
        builder.Property(((MemberExpression)((UnaryExpression)recordId.Body).Operand).Member.Name).ValueGeneratedNever();
        builder.HasOne<RecordRow>().WithOne().HasForeignKey<T>(recordId).OnDelete(DeleteBehavior.Restrict)
            .HasConstraintName($"fk_{builder.Metadata.GetTableName()}_records_record_id");
    }

    /// <summary>The content stands at a location that some layout has.</summary>
    public static void AtLocation<T>(this EntityTypeBuilder<T> builder, Expression<Func<T, object?>> location)
        where T : class =>
        builder.HasOne<LocationRow>().WithMany().HasForeignKey(location).OnDelete(DeleteBehavior.Restrict);
}
