using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class CodesAndHeldRecords : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "held_records",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    source_id = table.Column<int>(type: "integer", nullable: false),
                    source_record_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    registration = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    record = table.Column<byte[]>(type: "bytea", nullable: false),
                    content_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    hold_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    release_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    attempt_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_held_records", x => x.id);
                    table.CheckConstraint("ck_held_records_content_hash", "octet_length(content_hash) = 32");
                    table.CheckConstraint("ck_held_records_registration", "registration ~ '^[A-Z0-9-]{2,10}$'");
                    table.CheckConstraint("ck_held_records_revision", "revision >= 1");
                    table.CheckConstraint("ck_held_records_source_record_id", "char_length(source_record_id) between 1 and 120");
                    table.ForeignKey(
                        name: "fk_held_records_sources_source_id",
                        column: x => x.source_id,
                        principalTable: "sources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "source_codes",
                columns: table => new
                {
                    source_id = table.Column<int>(type: "integer", nullable: false),
                    kind = table.Column<short>(type: "smallint", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    location = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    condition = table.Column<short>(type: "smallint", nullable: true),
                    action = table.Column<short>(type: "smallint", nullable: true),
                    set_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false, defaultValueSql: "clock_timestamp()")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_source_codes", x => new { x.source_id, x.kind, x.code });
                    table.CheckConstraint("ck_source_codes_action", "action between 1 and 9");
                    table.CheckConstraint("ck_source_codes_code", "char_length(code) between 1 and 120");
                    table.CheckConstraint("ck_source_codes_condition", "condition between 1 and 10");
                    table.CheckConstraint("ck_source_codes_kind", "kind between 1 and 3");
                    table.CheckConstraint("ck_source_codes_meaning", "(kind = 1) = (location is not null) and (kind = 2) = (condition is not null) and (kind = 3) = (action is not null)");
                    table.ForeignKey(
                        name: "fk_source_codes_locations_location",
                        column: x => x.location,
                        principalTable: "locations",
                        principalColumn: "path",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_source_codes_sources_source_id",
                        column: x => x.source_id,
                        principalTable: "sources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "held_codes",
                columns: table => new
                {
                    held_record_id = table.Column<long>(type: "bigint", nullable: false),
                    kind = table.Column<short>(type: "smallint", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_held_codes", x => new { x.held_record_id, x.kind, x.code });
                    table.CheckConstraint("ck_held_codes_code", "char_length(code) between 1 and 120");
                    table.CheckConstraint("ck_held_codes_kind", "kind between 1 and 3");
                    table.ForeignKey(
                        name: "fk_held_codes_held_records_held_record_id",
                        column: x => x.held_record_id,
                        principalTable: "held_records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_held_records_registration",
                table: "held_records",
                column: "registration",
                filter: "release_time is null");

            migrationBuilder.CreateIndex(
                name: "ix_held_records_source_id_source_record_id_revision",
                table: "held_records",
                columns: new[] { "source_id", "source_record_id", "revision" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_held_records_waiting",
                table: "held_records",
                column: "id",
                filter: "release_time is null");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "held_codes");

            migrationBuilder.DropTable(
                name: "source_codes");

            migrationBuilder.DropTable(
                name: "held_records");
        }
    }
}
