using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class DataChecks : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "data_checks",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    identity = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    fingerprint = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    registration = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    other_registration = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    problem_date = table.Column<DateOnly>(type: "date", nullable: false),
                    rule = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    description = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    evidence_json = table.Column<string>(type: "json", nullable: false),
                    state = table.Column<short>(type: "smallint", nullable: false),
                    since_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    last_seen_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    gone_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    closed_by = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    close_note = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    close_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_data_checks", x => x.id);
                    table.CheckConstraint("ck_data_checks_closed_by", "(state <> 2 or closed_by is not null) and (state <> 1 or closed_by is null)");
                    table.CheckConstraint("ck_data_checks_closing", "(closed_by is null) = (close_time is null) and (closed_by is null) = (close_note is null)");
                    table.CheckConstraint("ck_data_checks_gone_time", "(state <> 1 or gone_time is null) and (state <> 3 or gone_time is not null)");
                    table.CheckConstraint("ck_data_checks_last_seen_time", "last_seen_time >= since_time");
                    table.CheckConstraint("ck_data_checks_state", "state between 1 and 3");
                });

            migrationBuilder.CreateTable(
                name: "finding_merges",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    merged_source_id = table.Column<int>(type: "integer", nullable: false),
                    merged_record_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    kept_source_id = table.Column<int>(type: "integer", nullable: false),
                    kept_record_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    is_merged = table.Column<bool>(type: "boolean", nullable: false),
                    decided_by = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    note = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    decide_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_finding_merges", x => x.id);
                    table.CheckConstraint("ck_finding_merges_kept_record_id", "char_length(kept_record_id) between 1 and 120");
                    table.CheckConstraint("ck_finding_merges_merged_record_id", "char_length(merged_record_id) between 1 and 120");
                    table.CheckConstraint("ck_finding_merges_two_sources", "merged_source_id <> kept_source_id");
                    table.ForeignKey(
                        name: "fk_finding_merges_sources_kept_source_id",
                        column: x => x.kept_source_id,
                        principalTable: "sources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_finding_merges_sources_merged_source_id",
                        column: x => x.merged_source_id,
                        principalTable: "sources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_data_checks_identity",
                table: "data_checks",
                column: "identity",
                unique: true,
                filter: "state = 1");

            migrationBuilder.CreateIndex(
                name: "ix_data_checks_identity_id",
                table: "data_checks",
                columns: new[] { "identity", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_data_checks_state_id",
                table: "data_checks",
                columns: new[] { "state", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_finding_merges_merged_source_id_merged_record_id_id",
                table: "finding_merges",
                columns: new[] { "merged_source_id", "merged_record_id", "id" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "data_checks");

            migrationBuilder.DropTable(
                name: "finding_merges");
        }
    }
}
