using FleetTrend.Store.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

internal sealed class PersonMapping : IEntityTypeConfiguration<Person>
{
    public void Configure(EntityTypeBuilder<Person> builder)
    {
        builder.ToTable("people", table =>
        {
            table.Length("name", 1, 60);
            table.Code("role", (int)PersonRole.Reader, (int)PersonRole.Administrator);
        });
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Id).UseIdentityAlwaysColumn();
        builder.Property(row => row.UserName).HasColumnName("name").IsRequired();
        builder.Property(row => row.NormalizedUserName).HasColumnName("normalized_name").IsRequired();
        builder.HasIndex(row => row.NormalizedUserName).IsUnique();
        builder.Property(row => row.Email).HasColumnName("mail_address").IsRequired();
        builder.Property(row => row.NormalizedEmail).HasColumnName("normalized_mail_address").IsRequired();
        builder.HasIndex(row => row.NormalizedEmail).IsUnique();
        builder.Property(row => row.SecurityStamp).IsRequired();
        builder.Property(row => row.ConcurrencyStamp).IsRequired().IsConcurrencyToken();
        builder.Property(row => row.LockoutEnd).HasColumnName("locked_until_time");
        builder.Property(row => row.AccessFailedCount).HasColumnName("wrong_password_count");
        builder.Property(row => row.CreateTime).HasDefaultValueSql("clock_timestamp()");
        builder.Ignore(row => row.EmailConfirmed);
        builder.Ignore(row => row.PhoneNumber);
        builder.Ignore(row => row.PhoneNumberConfirmed);
        builder.Ignore(row => row.TwoFactorEnabled);
        builder.Ignore(row => row.LockoutEnabled);
    }
}
