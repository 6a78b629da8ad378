using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class LubricatedActions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_source_codes_action",
                table: "source_codes");

            migrationBuilder.DropCheckConstraint(
                name: "ck_actions_kind",
                table: "actions");

            migrationBuilder.AddCheckConstraint(
                name: "ck_source_codes_action",
                table: "source_codes",
                sql: "action between 1 and 10");

            migrationBuilder.AddCheckConstraint(
                name: "ck_actions_kind",
                table: "actions",
                sql: "kind between 1 and 10");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_source_codes_action",
                table: "source_codes");

            migrationBuilder.DropCheckConstraint(
                name: "ck_actions_kind",
                table: "actions");

            migrationBuilder.AddCheckConstraint(
                name: "ck_source_codes_action",
                table: "source_codes",
                sql: "action between 1 and 9");

            migrationBuilder.AddCheckConstraint(
                name: "ck_actions_kind",
                table: "actions",
                sql: "kind between 1 and 9");
        }
    }
}
