using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class People : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // Sessions were of keys; people sign in anew.
            migrationBuilder.Sql("delete from page_sessions");

            migrationBuilder.DropForeignKey(
                name: "fk_page_sessions_api_keys_key_id",
                table: "page_sessions");

            migrationBuilder.DropCheckConstraint(
                name: "ck_api_keys_scopes",
                table: "api_keys");

            migrationBuilder.RenameColumn(
                name: "key_id",
                table: "page_sessions",
                newName: "security_stamp");

            migrationBuilder.AddColumn<long>(
                name: "person_id",
                table: "page_sessions",
                type: "bigint",
                nullable: false);

            migrationBuilder.CreateTable(
                name: "first_links",
                columns: table => new
                {
                    token_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    create_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false, defaultValueSql: "clock_timestamp()")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_first_links", x => x.token_hash);
                    table.CheckConstraint("ck_first_links_token_hash", "octet_length(token_hash) = 32");
                });

            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityAlwaysColumn),
                    role = table.Column<int>(type: "integer", nullable: false),
                    create_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false, defaultValueSql: "clock_timestamp()"),
                    disable_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    normalized_name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    mail_address = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    normalized_mail_address = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    password_hash = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    security_stamp = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    concurrency_stamp = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    locked_until_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    wrong_password_count = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_people", x => x.id);
                    table.CheckConstraint("ck_people_name", "char_length(name) between 1 and 60");
                    table.CheckConstraint("ck_people_role", "role between 1 and 3");
                });

            migrationBuilder.AddCheckConstraint(
                name: "ck_api_keys_scopes",
                table: "api_keys",
                sql: "cardinality(scopes) > 0 and scopes <@ array[1, 2, 3, 4]");

            migrationBuilder.CreateIndex(
                name: "ix_people_normalized_mail_address",
                table: "people",
                column: "normalized_mail_address",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_people_normalized_name",
                table: "people",
                column: "normalized_name",
                unique: true);

            migrationBuilder.AddForeignKey(
                name: "fk_page_sessions_people_person_id",
                table: "page_sessions",
                column: "person_id",
                principalTable: "people",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("delete from page_sessions");

            migrationBuilder.DropForeignKey(
                name: "fk_page_sessions_people_person_id",
                table: "page_sessions");

            migrationBuilder.DropTable(
                name: "first_links");

            migrationBuilder.DropTable(
                name: "people");

            migrationBuilder.DropCheckConstraint(
                name: "ck_api_keys_scopes",
                table: "api_keys");

            migrationBuilder.DropColumn(
                name: "person_id",
                table: "page_sessions");

            migrationBuilder.RenameColumn(
                name: "security_stamp",
                table: "page_sessions",
                newName: "key_id");

            migrationBuilder.AddCheckConstraint(
                name: "ck_api_keys_scopes",
                table: "api_keys",
                sql: "cardinality(scopes) > 0 and scopes <@ array[1, 2, 3]");

            migrationBuilder.AddForeignKey(
                name: "fk_page_sessions_api_keys_key_id",
                table: "page_sessions",
                column: "key_id",
                principalTable: "api_keys",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);
        }
    }
}
