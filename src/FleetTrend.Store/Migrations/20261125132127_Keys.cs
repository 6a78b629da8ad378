using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class Keys : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "api_keys",
                columns: table => new
                {
                    id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    number = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityAlwaysColumn),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    source_id = table.Column<int>(type: "integer", nullable: true),
                    scopes = table.Column<int[]>(type: "integer[]", nullable: false),
                    secret_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    create_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false, defaultValueSql: "clock_timestamp()"),
                    last_used_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    revoke_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_api_keys", x => x.id);
                    table.CheckConstraint("ck_api_keys_id", "id ~ '^[a-z2-7]{12}$'");
                    table.CheckConstraint("ck_api_keys_name", "char_length(name) between 1 and 60");
                    table.CheckConstraint("ck_api_keys_scopes", "cardinality(scopes) > 0 and scopes <@ array[1, 2, 3]");
                    table.CheckConstraint("ck_api_keys_secret_hash", "octet_length(secret_hash) = 32");
                    table.CheckConstraint("ck_api_keys_source_id", "source_id is not null or not scopes @> array[1]");
                    table.ForeignKey(
                        name: "fk_api_keys_sources_source_id",
                        column: x => x.source_id,
                        principalTable: "sources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_api_keys_number",
                table: "api_keys",
                column: "number",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "api_keys");
        }
    }
}
