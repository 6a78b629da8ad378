using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class ResultsAsRows : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "observed_aircraft",
                columns: table => new
                {
                    aircraft_id = table.Column<int>(type: "integer", nullable: false),
                    as_of = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    code = table.Column<Guid>(type: "uuid", nullable: false),
                    next_date = table.Column<DateOnly>(type: "date", nullable: true),
                    content = table.Column<byte[]>(type: "bytea", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_observed_aircraft", x => x.aircraft_id);
                    table.ForeignKey(
                        name: "fk_observed_aircraft_aircraft_aircraft_id",
                        column: x => x.aircraft_id,
                        principalTable: "aircraft",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "result_sets",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    as_of = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    type_group = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    summary_json = table.Column<string>(type: "json", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_result_sets", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "started_refreshes",
                columns: table => new
                {
                    as_of = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    type_group = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    set_id = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_started_refreshes", x => new { x.as_of, x.type_group });
                });

            migrationBuilder.CreateTable(
                name: "trends",
                columns: table => new
                {
                    as_of = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    code_version = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    parameters_json = table.Column<string>(type: "json", nullable: false),
                    set_ids = table.Column<long[]>(type: "bigint[]", nullable: false),
                    fleet_json = table.Column<string>(type: "json", nullable: false),
                    is_whole = table.Column<bool>(type: "boolean", nullable: false, defaultValue: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_trends", x => x.as_of);
                });

            migrationBuilder.CreateTable(
                name: "results",
                columns: table => new
                {
                    set_id = table.Column<long>(type: "bigint", nullable: false),
                    analysis = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    ordinal = table.Column<int>(type: "integer", nullable: false),
                    registration = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    location = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    kind = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    @base = table.Column<string>(name: "base", type: "text", nullable: true, collation: "C"),
                    item_count = table.Column<int>(type: "integer", nullable: false),
                    labels = table.Column<string[]>(type: "text[]", nullable: true),
                    headline_values = table.Column<float?[]>(type: "real[]", nullable: true),
                    lowers = table.Column<float?[]>(type: "real[]", nullable: true),
                    uppers = table.Column<float?[]>(type: "real[]", nullable: true),
                    event_counts = table.Column<int[]>(type: "integer[]", nullable: true),
                    detail = table.Column<string>(type: "json", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_results", x => new { x.set_id, x.analysis, x.ordinal });
                    table.ForeignKey(
                        name: "fk_results_result_set_row_set_id",
                        column: x => x.set_id,
                        principalTable: "result_sets",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_records_accept_time",
                table: "records",
                column: "accept_time")
                .Annotation("Npgsql:IndexMethod", "brin");

            migrationBuilder.CreateIndex(
                name: "ix_result_sets_as_of_type_group",
                table: "result_sets",
                columns: new[] { "as_of", "type_group" },
                unique: true);

            // A report is made again with the parameters of its moment.
            migrationBuilder.Sql(
                """
                insert into trends (as_of, code_version, parameters_json, set_ids, fleet_json, is_whole)
                select as_of, code_version, parameters_json, '{}', '{}', false from snapshots
                where exists (select from reports where reports.as_of = snapshots.as_of)
                """);

            migrationBuilder.DropTable(
                name: "snapshots");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "observed_aircraft");

            migrationBuilder.DropTable(
                name: "results");

            migrationBuilder.DropTable(
                name: "started_refreshes");

            migrationBuilder.DropTable(
                name: "trends");

            migrationBuilder.DropTable(
                name: "result_sets");

            migrationBuilder.DropIndex(
                name: "ix_records_accept_time",
                table: "records");

            migrationBuilder.CreateTable(
                name: "snapshots",
                columns: table => new
                {
                    as_of = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    code_version = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    parameters_json = table.Column<string>(type: "json", nullable: false),
                    trends_json = table.Column<string>(type: "json", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_snapshots", x => x.as_of);
                });
        }
    }
}
