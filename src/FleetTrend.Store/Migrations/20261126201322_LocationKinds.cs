using System.Collections.Generic;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class LocationKinds : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_locations_kind",
                table: "locations");

            migrationBuilder.CreateTable(
                name: "location_kinds",
                columns: table => new
                {
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    title = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    look_for = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    jasc_code = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    conditions = table.Column<int[]>(type: "integer[]", nullable: false),
                    failures = table.Column<int[]>(type: "integer[]", nullable: false),
                    watched = table.Column<int[]>(type: "integer[]", nullable: false),
                    checks = table.Column<string>(type: "jsonb", nullable: false),
                    base_checks = table.Column<List<string>>(type: "text[]", nullable: false),
                    is_shipped = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_location_kinds", x => x.name);
                    table.CheckConstraint("ck_location_kinds_conditions", "cardinality(conditions) > 0 and conditions <@ array[1, 2, 3, 4, 5, 6, 7, 8, 9, 10]");
                    table.CheckConstraint("ck_location_kinds_failures", "failures <@ conditions and watched <@ conditions");
                    table.CheckConstraint("ck_location_kinds_jasc_code", "jasc_code ~ '^[0-9]{4}$'");
                    table.CheckConstraint("ck_location_kinds_look_for", "char_length(look_for) between 0 and 400");
                    table.CheckConstraint("ck_location_kinds_name", "name ~ '^[a-z0-9-]{2,60}$'");
                    table.CheckConstraint("ck_location_kinds_title", "char_length(title) between 1 and 120");
                });

            // Kinds that stand in layouts already, by name only: the same start brings the shipped ones to their full form.
            migrationBuilder.Sql(
                """
                insert into location_kinds (name, title, look_for, conditions, failures, watched, checks, base_checks, is_shipped)
                select distinct kind, kind, '', array[1], '{}'::int[], '{}'::int[], '[]'::jsonb, '{}'::text[], true from locations
                """);

            migrationBuilder.AddForeignKey(
                name: "fk_locations_location_kinds_kind",
                table: "locations",
                column: "kind",
                principalTable: "location_kinds",
                principalColumn: "name",
                onDelete: ReferentialAction.Restrict);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_locations_location_kinds_kind",
                table: "locations");

            migrationBuilder.DropTable(
                name: "location_kinds");

            migrationBuilder.AddCheckConstraint(
                name: "ck_locations_kind",
                table: "locations",
                sql: "kind in ('flange-weld', 'y-weld', 'stack-weld', 'tailpipe-weld', 'port-face', 'slip-joint', 'muffler-shell', 'hanger', 'probe', 'shroud-edge', 'gasket', 'clamp', 'clamp-bolt', 'muffler-baffle', 'tube-flange', 'tube', 'intake-gasket', 'coupling', 'hose-clamp', 'part', 'place')");
        }
    }
}
