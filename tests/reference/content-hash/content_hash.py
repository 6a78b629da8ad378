#!/usr/bin/env python3
"""Hashes of contents, from the definition in src/FleetTrend.Intake/ContentHash.cs alone: no protobuf, no code of the product.

Prints one line per record: name and SHA-256. With --check FILE it fails where FILE lacks one of them.
The records are those of tests/FleetTrend.Intake.Tests/ContentHashFixedTests.cs.
"""
import hashlib
import struct
import sys


def count(value):
    low = bytearray()
    while value >= 0x80:
        low.append(value & 0x7F | 0x80)
        value >>= 7
    return bytes(low + bytes([value]))


def field(number, form, value):
    return count(8 * number + form) + value


def whole(number, value):
    return field(number, 0, count(value)) if value else b""


def group(number, *fields):
    inner = b"".join(fields)
    return field(number, 2, count(len(inner)) + inner)


def text(number, value):
    return group(number, value.encode("utf-8")) if value else b""


def number(n, value):
    return field(n, 1, struct.pack("<d", value))


def hours(n, value):
    return number(n, value) if value else b""


def day(n, year, month, date):
    return group(n, whole(1, year), whole(2, month), whole(3, date))


def looks(lines):
    order = sorted(lines, key=lambda line: (line[0].encode("utf-16-be"), line[3].encode("utf-16-be")))
    return [group(5, text(1, place), whole(2, state), whole(3, method), text(4, code)) for place, state, method, code in order]


MARK, GASKET, WELD = "ZZ-A01", "exhaust/cyl-3/gasket", "exhaust/cyl-3/flange-weld"
RECORDS = {
    "aircraft": group(
        2, text(1, MARK), day(2, 2024, 1, 1),
        group(3, day(1, 2024, 1, 1), text(2, "Nordfeld \u00dc"), text(3, "trainer-four")),
        group(3, day(1, 2025, 12, 31), text(2, "South"), text(3, "trainer-four")),
        hours(4, -120.5), day(5, 2026, 2, 3)),
    "meter reading": group(3, text(1, MARK), day(2, 2026, 2, 3), hours(3, 812.4)),
    "meter change": group(4, text(1, MARK), day(2, 2026, 2, 3), hours(3, 812.4), hours(4, 0)),
    "installation": group(
        5, text(1, MARK), text(2, GASKET), day(3, 2026, 2, 3), hours(4, 812.4), number(5, 0.0), text(6, "S-1"), text(7, "gasket, two layers")),
    "removal": group(
        6, text(1, MARK), text(2, GASKET), day(3, 2026, 2, 3), hours(4, 812.4), whole(5, 3), whole(6, 1), text(7, "S-0")),
    "inspection": group(
        7, text(1, MARK), day(2, 2026, 2, 3), hours(3, 812.4), whole(4, 2),
        *looks([(GASKET, 3, 0, ""), ("", 1, 1, "\uff21"), ("", 2, 0, "\U0001F527"), (WELD, 1, 3, "")])),
    "finding": group(
        8, text(1, MARK), text(2, GASKET), day(3, 2026, 2, 3), hours(4, 0.3), whole(5, 2), whole(6, 1), number(7, 4.25), whole(8, 2),
        whole(9, 4), text(10, "card 16"), text(11, "\u00dcbergang, grau\n" + "x" * 200)),
    "finding by codes": group(
        8, text(1, MARK), day(3, 2026, 2, 3), hours(4, 812.4), whole(6, 2), text(12, "EX3"), text(13, "CRK")),
    "action": group(
        9, text(1, MARK), text(2, GASKET), day(3, 2026, 2, 3), hours(4, 812.4), whole(5, 3), number(6, 0.0), text(7, "set of four")),
    "action of a kind that came later": group(
        9, text(1, MARK), text(2, WELD), day(3, 2026, 2, 3), hours(4, 812.4), whole(5, 10)),
    "action by codes": group(
        9, text(1, MARK), day(3, 2026, 2, 3), hours(4, 812.4), number(6, 3.5), text(8, "EX3"), text(9, "RPL")),
    "practice change": group(
        11, day(1, 2026, 2, 3), text(2, "North"), text(3, "trainer-four"), group(4, text(1, WELD)), group(4, text(1, GASKET)),
        text(5, "gasket, two layers"), text(6, "torque in two passes"), text(7, "gaskets leaked early")),
    "stock count": group(12, day(1, 2026, 2, 3), text(2, "North"), text(3, "gasket, two layers"), whole(4, 4), whole(5, 21)),
    "retraction": group(10, text(1, "entered for the wrong aircraft")),
}

if __name__ == "__main__":
    hashes = {name: hashlib.sha256(content).hexdigest().upper() for name, content in RECORDS.items()}
    for name, value in hashes.items():
        print(f"{name}: {value}")
    if sys.argv[1:2] == ["--check"]:
        with open(sys.argv[2], encoding="utf-8") as file:
            held = file.read()
        missing = [name for name, value in hashes.items() if value not in held]
        sys.exit(f"Not in {sys.argv[2]}: {', '.join(missing)}" if missing else 0)
