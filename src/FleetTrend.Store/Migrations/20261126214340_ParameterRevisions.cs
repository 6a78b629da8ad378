using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class ParameterRevisions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "parameter_revisions",
                columns: table => new
                {
                    revision = table.Column<int>(type: "integer", nullable: false),
                    values_json = table.Column<string>(type: "json", nullable: false),
                    changed_by = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    note = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    change_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_parameter_revisions", x => x.revision);
                    table.CheckConstraint("ck_parameter_revisions_changed_by", "char_length(changed_by) between 1 and 200");
                    table.CheckConstraint("ck_parameter_revisions_note", "char_length(note) between 1 and 2000");
                    table.CheckConstraint("ck_parameter_revisions_revision", "revision >= 1");
                });

            migrationBuilder.CreateIndex(
                name: "ix_parameter_revisions_change_time",
                table: "parameter_revisions",
                column: "change_time",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "parameter_revisions");
        }
    }
}
