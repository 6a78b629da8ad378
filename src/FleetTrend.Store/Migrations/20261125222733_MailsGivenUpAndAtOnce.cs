using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class MailsGivenUpAndAtOnce : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_outbox_mails_next_attempt_time",
                table: "outbox_mails");

            migrationBuilder.AddColumn<bool>(
                name: "at_once",
                table: "refresh_requests",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<DateTimeOffset>(
                name: "given_up_time",
                table: "outbox_mails",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<DateTimeOffset>(
                name: "owed_time",
                table: "outbox_mails",
                type: "timestamp with time zone",
                nullable: false,
                defaultValueSql: "clock_timestamp()");

            migrationBuilder.CreateIndex(
                name: "ix_outbox_mails_next_attempt_time",
                table: "outbox_mails",
                column: "next_attempt_time",
                filter: "sent_time is null and given_up_time is null");

            migrationBuilder.AddCheckConstraint(
                name: "ck_outbox_mails_given_up_time",
                table: "outbox_mails",
                sql: "given_up_time is null or (sent_time is null and last_error is not null)");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_outbox_mails_next_attempt_time",
                table: "outbox_mails");

            migrationBuilder.DropCheckConstraint(
                name: "ck_outbox_mails_given_up_time",
                table: "outbox_mails");

            migrationBuilder.DropColumn(
                name: "at_once",
                table: "refresh_requests");

            migrationBuilder.DropColumn(
                name: "given_up_time",
                table: "outbox_mails");

            migrationBuilder.DropColumn(
                name: "owed_time",
                table: "outbox_mails");

            migrationBuilder.CreateIndex(
                name: "ix_outbox_mails_next_attempt_time",
                table: "outbox_mails",
                column: "next_attempt_time",
                filter: "sent_time is null");
        }
    }
}
