using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class KeptForecasts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "kept_forecasts",
                columns: table => new
                {
                    quarter_date = table.Column<DateOnly>(type: "date", nullable: false),
                    type_group = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    analysis = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    as_of = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    detail_json = table.Column<string>(type: "json", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_kept_forecasts", x => new { x.type_group, x.analysis, x.quarter_date });
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "kept_forecasts");
        }
    }
}
