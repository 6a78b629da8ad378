using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class PracticeChanges : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_records_aircraft_id",
                table: "records");

            migrationBuilder.DropCheckConstraint(
                name: "ck_records_kind",
                table: "records");

            migrationBuilder.CreateTable(
                name: "practice_changes",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    change_date = table.Column<DateOnly>(type: "date", nullable: false),
                    @base = table.Column<string>(name: "base", type: "text", nullable: true, collation: "C"),
                    type_group = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    locations = table.Column<string[]>(type: "text[]", nullable: false),
                    part_number = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    what = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    why = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_practice_changes", x => x.record_id);
                    table.CheckConstraint("ck_practice_changes_base", "char_length(base) between 1 and 60");
                    table.CheckConstraint("ck_practice_changes_change_date", "change_date between date '1900-01-01' and date '2199-12-31'");
                    table.CheckConstraint("ck_practice_changes_locations", "cardinality(locations) <= 500");
                    table.CheckConstraint("ck_practice_changes_part_number", "char_length(part_number) between 1 and 120");
                    table.CheckConstraint("ck_practice_changes_type_group", "char_length(type_group) between 2 and 60");
                    table.CheckConstraint("ck_practice_changes_what", "char_length(what) between 1 and 200");
                    table.CheckConstraint("ck_practice_changes_why", "char_length(why) between 1 and 2000");
                    table.ForeignKey(
                        name: "fk_practice_changes_records_record_id",
                        column: x => x.record_id,
                        principalTable: "records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.AddCheckConstraint(
                name: "ck_records_aircraft_id",
                table: "records",
                sql: "(kind in (9, 10)) = (aircraft_id is null)");

            migrationBuilder.AddCheckConstraint(
                name: "ck_records_kind",
                table: "records",
                sql: "kind between 1 and 10");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "practice_changes");

            migrationBuilder.DropCheckConstraint(
                name: "ck_records_aircraft_id",
                table: "records");

            migrationBuilder.DropCheckConstraint(
                name: "ck_records_kind",
                table: "records");

            migrationBuilder.AddCheckConstraint(
                name: "ck_records_aircraft_id",
                table: "records",
                sql: "(kind = 9) = (aircraft_id is null)");

            migrationBuilder.AddCheckConstraint(
                name: "ck_records_kind",
                table: "records",
                sql: "kind between 1 and 9");
        }
    }
}
