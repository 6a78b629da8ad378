using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class HandedOutRefreshes : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "is_handed_out",
                table: "started_refreshes",
                type: "boolean",
                nullable: false,
                defaultValue: false);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "is_handed_out",
                table: "started_refreshes");
        }
    }
}
