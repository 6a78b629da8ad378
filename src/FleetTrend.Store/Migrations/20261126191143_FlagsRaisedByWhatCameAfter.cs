using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class FlagsRaisedByWhatCameAfter : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_flags_closed_event_count",
                table: "flags");

            migrationBuilder.DropColumn(
                name: "closed_event_count",
                table: "flags");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "closed_event_count",
                table: "flags",
                type: "integer",
                nullable: true);

            migrationBuilder.Sql("update flags set closed_event_count = event_count where state = 3");

            migrationBuilder.AddCheckConstraint(
                name: "ck_flags_closed_event_count",
                table: "flags",
                sql: "(state = 3) = (closed_event_count is not null)");
        }
    }
}
