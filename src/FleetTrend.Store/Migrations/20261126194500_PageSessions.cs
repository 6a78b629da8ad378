using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class PageSessions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "page_sessions",
                columns: table => new
                {
                    id_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    key_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    create_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false, defaultValueSql: "clock_timestamp()"),
                    last_used_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false, defaultValueSql: "clock_timestamp()")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_page_sessions", x => x.id_hash);
                    table.CheckConstraint("ck_page_sessions_id_hash", "octet_length(id_hash) = 32");
                    table.ForeignKey(
                        name: "fk_page_sessions_api_keys_key_id",
                        column: x => x.key_id,
                        principalTable: "api_keys",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "page_sessions");
        }
    }
}
