using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class StockCounts : Migration
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
                name: "stock_counts",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    count_date = table.Column<DateOnly>(type: "date", nullable: false),
                    @base = table.Column<string>(name: "base", type: "text", nullable: false, collation: "C"),
                    part_number = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    quantity = table.Column<int>(type: "integer", nullable: false),
                    lead_time_days = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stock_counts", x => x.record_id);
                    table.CheckConstraint("ck_stock_counts_base", "char_length(base) between 1 and 60");
                    table.CheckConstraint("ck_stock_counts_count_date", "count_date between date '1900-01-01' and date '2199-12-31'");
                    table.CheckConstraint("ck_stock_counts_lead_time_days", "lead_time_days between 0 and 1000");
                    table.CheckConstraint("ck_stock_counts_part_number", "char_length(part_number) between 1 and 120");
                    table.CheckConstraint("ck_stock_counts_quantity", "quantity between 0 and 100000");
                    table.ForeignKey(
                        name: "fk_stock_counts_records_record_id",
                        column: x => x.record_id,
                        principalTable: "records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.AddCheckConstraint(
                name: "ck_records_aircraft_id",
                table: "records",
                sql: "(kind in (9, 10, 11)) = (aircraft_id is null)");

            migrationBuilder.AddCheckConstraint(
                name: "ck_records_kind",
                table: "records",
                sql: "kind between 1 and 11");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "stock_counts");

            migrationBuilder.DropCheckConstraint(
                name: "ck_records_aircraft_id",
                table: "records");

            migrationBuilder.DropCheckConstraint(
                name: "ck_records_kind",
                table: "records");

            migrationBuilder.AddCheckConstraint(
                name: "ck_records_aircraft_id",
                table: "records",
                sql: "(kind in (9, 10)) = (aircraft_id is null)");

            migrationBuilder.AddCheckConstraint(
                name: "ck_records_kind",
                table: "records",
                sql: "kind between 1 and 10");
        }
    }
}
